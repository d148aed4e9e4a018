/** What stands behind the field: plain sky, a low skyline, open ground. No real place. */
import type { Point } from '../geometry/point';
import type { Camera } from './camera';
import { paintOver, type Canvas } from './canvas';
import { colourMix, PALETTE } from './colour';

/** Heights above the horizon and lengths along it are in shares of the picture plane's distance. */
const HILLS = { base: 0.045, swing: 0.012, period: 0.34, shift: 0.7 } as const;
const TREES = { base: 0.026, swing: 0.006, period: 0.061, shift: 2.1 } as const;
const SKY_SPAN = 0.3;

export function paintBackdrop(canvas: Canvas, camera: Camera): void {
  paintSky(canvas, camera);
  paintOver(canvas, [skyline(camera, HILLS)], PALETTE.hills);
  paintOver(canvas, [skyline(camera, TREES)], PALETTE.trees);
  paintOver(canvas, [belowHorizon(camera)], PALETTE.beyond);
}

function paintSky({ width, height, light }: Canvas, camera: Camera): void {
  for (let y = 0; y < height; y++) {
    const up = (camera.horizonY - y) / (camera.focal * SKY_SPAN);
    const colour = colourMix(PALETTE.skyLow, PALETTE.skyHigh, Math.min(1, Math.max(0, up)));
    for (let x = 0; x < width; x++) light.set(colour, 3 * (y * width + x));
  }
}

/** An uneven line above the horizon, fixed to compass directions, so that it turns with the seat. */
function skyline(camera: Camera, shape: typeof HILLS | typeof TREES): Point[] {
  const heading = Math.atan2(camera.forward.x, camera.forward.y);
  const top: Point[] = [];
  for (let x = 0; x <= camera.width; x += 2) {
    const t = (heading + Math.atan((x - camera.centreX) / camera.focal)) / shape.period;
    const wave = Math.sin(t * 6.3 + shape.shift) + 0.6 * Math.sin(t * 14.9) + 0.4 * Math.sin(t * 31);
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
