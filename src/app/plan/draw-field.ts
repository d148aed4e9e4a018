/** Draws paper, ground and grass. Paths are in field feet; the context is set to them here. */
import type { Point } from '../../geometry/point';
import { COLOUR } from './colours';
import type { Scene } from './scene';
import { toField, type Size, type Viewport } from './viewport';

export interface GrassStyle {
  /** Calm colours, for the stakes. */
  readonly calm: boolean;
  readonly arrows: boolean;
  /** 0 to 1: how much of the grass shows, the rest is paper. */
  readonly strength: number;
}

/** Sets the context so that one unit is one foot, y up. */
export function toFeet(ctx: CanvasRenderingContext2D, v: Viewport, size: Size, dpr: number): void {
  const s = v.scale * dpr;
  ctx.setTransform(
    s,
    0,
    0,
    -s,
    (size.width / 2) * dpr - v.cx * s,
    (size.height / 2) * dpr + v.cy * s,
  );
}

export function toPixels(ctx: CanvasRenderingContext2D, dpr: number): void {
  ctx.setTransform(dpr, 0, 0, dpr, 0, 0);
}

export function drawPaper(ctx: CanvasRenderingContext2D, v: Viewport, size: Size): void {
  ctx.fillStyle = COLOUR.sheet;
  ctx.fillRect(0, 0, size.width, size.height);
  const from = toField(v, size, { x: 0, y: size.height });
  const to = toField(v, size, { x: size.width, y: 0 });
  for (const [step, width] of [
    [10, 0.5],
    [50, 1],
  ] as const) {
    if (step * v.scale < 7) continue;
    ctx.beginPath();
    for (let x = Math.ceil(from.x / step) * step; x <= to.x; x += step) {
      const px = Math.round(size.width / 2 + (x - v.cx) * v.scale) + 0.5;
      ctx.moveTo(px, 0);
      ctx.lineTo(px, size.height);
    }
    for (let y = Math.ceil(from.y / step) * step; y <= to.y; y += step) {
      const py = Math.round(size.height / 2 - (y - v.cy) * v.scale) + 0.5;
      ctx.moveTo(0, py);
      ctx.lineTo(size.width, py);
    }
    ctx.strokeStyle = COLOUR.rule;
    ctx.globalAlpha = step === 10 ? 0.55 : 0.6;
    ctx.lineWidth = width;
    ctx.stroke();
    ctx.globalAlpha = 1;
  }
}

/** Surfaces, then patches on the outfield. The context is in feet. */
export function drawGround(
  ctx: CanvasRenderingContext2D,
  scene: Scene,
  v: Viewport,
  style: GrassStyle,
): void {
  for (const s of scene.surfaces) {
    ctx.fillStyle = s.colour;
    ctx.fill(s.path, 'evenodd');
  }
  for (const g of scene.grass) {
    ctx.fillStyle = style.calm ? g.calm : g.colour;
    ctx.fill(g.path, 'evenodd');
    // A hairline of the same colour closes the seam that two antialiased edges leave.
    ctx.strokeStyle = ctx.fillStyle;
    ctx.lineWidth = 0.6 / v.scale;
    ctx.stroke(g.path);
  }
  if (v.scale >= 1.2) drawStrokes(ctx, scene, v, style.calm);
  if (style.strength < 1) {
    ctx.globalAlpha = 1 - style.strength;
    ctx.fillStyle = COLOUR.sheet;
    for (const s of scene.surfaces) ctx.fill(s.path, 'evenodd');
    ctx.globalAlpha = 1;
  }
}

function drawStrokes(
  ctx: CanvasRenderingContext2D,
  scene: Scene,
  v: Viewport,
  calm: boolean,
): void {
  ctx.lineWidth = Math.min(0.9, 0.5 + v.scale / 12) / v.scale;
  for (const g of scene.grass) {
    const light = !g.toward;
    ctx.strokeStyle = light && !calm ? COLOUR.white : COLOUR.ink;
    ctx.globalAlpha = calm ? 0.1 : light ? 0.34 : 0.16;
    ctx.stroke(g.strokes);
  }
  ctx.globalAlpha = 1;
}

/** Lines, bases, fence, keep-outs. The context is in feet. */
export function drawFurniture(ctx: CanvasRenderingContext2D, scene: Scene, v: Viewport): void {
  const px = 1 / v.scale;
  const line = Math.max(4 / 12, 2.2 * px);
  ctx.lineCap = 'butt';
  ctx.strokeStyle = COLOUR.ink;
  ctx.globalAlpha = 0.55;
  ctx.lineWidth = line + 1.6 * px;
  ctx.stroke(scene.foulLines);
  ctx.globalAlpha = 1;
  ctx.strokeStyle = COLOUR.chalk;
  ctx.lineWidth = line;
  ctx.stroke(scene.foulLines);
  ctx.lineJoin = 'round';
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 3 * px;
  ctx.stroke(scene.fence);
  ctx.fillStyle = COLOUR.white;
  ctx.fill(scene.keepOuts, 'evenodd');
  ctx.lineWidth = 1.3 * px;
  ctx.stroke(scene.keepOuts);
  drawBases(ctx, scene, px);
}

function drawBases(ctx: CanvasRenderingContext2D, scene: Scene, px: number): void {
  const { bases, pitcherPlate, spec } = scene.field;
  const side = spec.baseSizeIn / 12;
  const square = (corner: Point, dx: number, dy: number) =>
    outlinePolygon(ctx, diamond(corner, dx, dy, Math.max(side, 5 * px)), px);
  // First and third are given by their outer back corner, second by its centre.
  square(bases.first, -1, 0);
  square(bases.third, 1, 0);
  outlinePolygon(ctx, diamondAbout(bases.second, Math.max(side, 5 * px)), px);
  const plate = Math.max(17 / 12, 5 * px) / 2;
  const home: Point[] = [
    { x: 0, y: 0 },
    { x: plate, y: plate },
    { x: plate, y: plate * 2 },
    { x: -plate, y: plate * 2 },
    { x: -plate, y: plate },
  ];
  outlinePolygon(ctx, home, px);
  const half = Math.max(1, 3 * px);
  const rear = Math.max(0.5, 1.6 * px);
  outlinePolygon(
    ctx,
    [
      { x: -half, y: pitcherPlate.y },
      { x: half, y: pitcherPlate.y },
      { x: half, y: pitcherPlate.y + rear },
      { x: -half, y: pitcherPlate.y + rear },
    ],
    px,
  );
}

/** A square standing on its corner, from its outer corner inward. */
function diamond(corner: Point, dx: number, dy: number, side: number): Point[] {
  const h = side / Math.SQRT2;
  const c = { x: corner.x + dx * h, y: corner.y + dy * h };
  return diamondAbout(c, side);
}

function diamondAbout(c: Point, side: number): Point[] {
  const h = side / Math.SQRT2;
  return [
    { x: c.x, y: c.y - h },
    { x: c.x + h, y: c.y },
    { x: c.x, y: c.y + h },
    { x: c.x - h, y: c.y },
  ];
}

function outlinePolygon(ctx: CanvasRenderingContext2D, points: readonly Point[], px: number): void {
  ctx.beginPath();
  points.forEach((p, i) => (i === 0 ? ctx.moveTo(p.x, p.y) : ctx.lineTo(p.x, p.y)));
  ctx.closePath();
  ctx.fillStyle = COLOUR.chalk;
  ctx.fill();
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 0.9 * px;
  ctx.stroke();
}

/** Small arrows in the band ends: the way the mower went. The context is in pixels. */
export function drawLayArrows(
  ctx: CanvasRenderingContext2D,
  scene: Scene,
  place: (p: Point) => Point,
): void {
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.3;
  ctx.lineCap = 'round';
  ctx.beginPath();
  for (const g of scene.grass) {
    if (!g.arrow) continue;
    const c = place(g.arrow.at);
    arrow(ctx, c, { x: g.arrow.along.x, y: -g.arrow.along.y }, 11);
  }
  ctx.stroke();
}

/** An arrow of `length` pixels centred on `c`; `along` is a unit vector on the screen. */
export function arrow(ctx: CanvasRenderingContext2D, c: Point, along: Point, length: number): void {
  const tip = { x: c.x + (along.x * length) / 2, y: c.y + (along.y * length) / 2 };
  ctx.moveTo(c.x - (along.x * length) / 2, c.y - (along.y * length) / 2);
  ctx.lineTo(tip.x, tip.y);
  const wing = length * 0.42;
  for (const side of [1, -1]) {
    ctx.moveTo(tip.x, tip.y);
    ctx.lineTo(
      tip.x - wing * (along.x - side * along.y * 0.8),
      tip.y - wing * (along.y + side * along.x * 0.8),
    );
  }
}
