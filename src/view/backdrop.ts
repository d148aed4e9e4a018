/** What stands behind the field: plain sky, a low skyline, open ground. No real place. */
import type { Point } from '../geometry/point';
import { polylineResample } from '../geometry/polyline';
import { regionOffset, type Region } from '../geometry/region';
import { facesSeat, seeRing, type Camera } from './camera';
import { paintOver, type Canvas } from './canvas';
import { colourMix, PALETTE } from './colour';

/** Heights above the horizon and lengths along it are in shares of the picture plane's distance. */
const HILLS = { base: 0.034, swing: 0.008, period: 0.34, shift: 0.7 } as const;
const SKY_SPAN = 0.16;
/** Rows of trees: how far behind the fence, how tall, and the width of a crown. All assumptions. */
const TREE_ROWS = [
  { behindFt: 95, heightFt: 46, swingFt: 6, crownFt: 26, colour: PALETTE.farTrees },
  { behindFt: 40, heightFt: 28, swingFt: 5, crownFt: 19, colour: PALETTE.trees },
] as const;
const TREE_STEP_FT = 3;

/** Sky, hills, open ground and trees, before anything of the field. */
export function paintBackdrop(canvas: Canvas, camera: Camera, ground: Region): void {
  paintSky(canvas, camera);
  paintOver(canvas, [skyline(camera)], PALETTE.hills);
  paintOver(canvas, [belowHorizon(camera)], PALETTE.beyond);
  for (const row of TREE_ROWS) paintTrees(canvas, camera, ground, row);
}

/** A row of round crowns along the line `behindFt` outside the ground, where it faces the seat. */
function paintTrees(
  canvas: Canvas,
  camera: Camera,
  ground: Region,
  row: (typeof TREE_ROWS)[number],
): void {
  const outer = regionOffset(ground, row.behindFt, 'round', row.behindFt / 50)[0] ?? [];
  const line = polylineResample(outer, TREE_STEP_FT, true);
  const faces = line.flatMap((to, i) => {
    const from = line[(i === 0 ? line.length : i) - 1]!;
    if (!facesSeat(camera, from, to)) return [];
    const face = [
      { ...from, up: 0 },
      { ...to, up: 0 },
      { ...to, up: crownHeight(i, row) },
      { ...from, up: crownHeight(i - 1, row) },
    ];
    return [seeRing(camera, face)];
  });
  paintOver(canvas, faces, row.colour);
}

function crownHeight(step: number, row: (typeof TREE_ROWS)[number]): number {
  const along = (step * TREE_STEP_FT) / row.crownFt;
  const crown = Math.abs(Math.sin(Math.PI * along + 0.4 * Math.sin(along * 1.7)));
  const tallness = Math.sin(along * 0.83) + 0.7 * Math.sin(along * 0.31 + 1);
  return row.heightFt + row.swingFt * (0.55 * tallness + 0.8 * Math.sqrt(crown) - 1);
}

function paintSky({ width, height, light }: Canvas, camera: Camera): void {
  for (let y = 0; y < height; y++) {
    const up = (camera.horizonY - y) / (camera.focal * SKY_SPAN);
    const colour = colourMix(PALETTE.skyLow, PALETTE.skyHigh, Math.min(1, Math.max(0, up)));
    for (let x = 0; x < width; x++) light.set(colour, 3 * (y * width + x));
  }
}

/** An uneven line above the horizon, fixed to compass directions, so that it turns with the seat. */
function skyline(camera: Camera): Point[] {
  const shape = HILLS;
  const heading = Math.atan2(camera.forward.x, camera.forward.y);
  const top: Point[] = [];
  for (let x = 0; x <= camera.width; x += 2) {
    const t = (heading + Math.atan((x - camera.centreX) / camera.focal)) / shape.period;
    const wave =
      Math.sin(t * 6.3 + shape.shift) + 0.6 * Math.sin(t * 14.9) + 0.4 * Math.sin(t * 31);
    const up = shape.base + shape.swing * wave;
    top.push({ x, y: camera.horizonY - up * camera.focal });
  }
  const floor = camera.horizonY + 1;
  return [...top, { x: camera.width, y: floor }, { x: 0, y: floor }];
}

function belowHorizon({ width, height, horizonY }: Camera): Point[] {
  const bottom = Math.max(height, horizonY);
  return [
    { x: 0, y: horizonY },
    { x: width, y: horizonY },
    { x: width, y: bottom },
    { x: 0, y: bottom },
  ];
}
