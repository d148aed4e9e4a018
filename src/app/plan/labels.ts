/** Numbers beside their marks: clear of marks, lines and each other, on a leader when pushed out. */
import type { Point } from '../../geometry/point';
import { COLOUR } from './colours';
import type { Size } from './viewport';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface LabelItem {
  readonly id: string;
  readonly at: Point;
  /** Preferred way off the mark, any length. */
  readonly away?: Point;
  /** Placed first and set in the accent. */
  readonly first?: boolean;
}

interface Look {
  readonly font: string;
  /** Opacity of the paper plate behind. */
  readonly plate: number;
  /** How many rings round the mark may be tried; fewer means shorter leaders. */
  readonly rings?: number;
}

export const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y));

const RINGS = [13, 20, 30, 42, 56];

function candidates(
  item: LabelItem,
  w: number,
  h: number,
  rings: number,
): { box: Box; cost: number }[] {
  const base = item.away ? Math.atan2(item.away.y, item.away.x) : -Math.PI / 2;
  return RINGS.slice(0, rings).flatMap((radius, ring) =>
    [0, 1, -1, 2, -2, 3, -3, 4].map((k) => {
      const angle = base + (k * Math.PI) / 4;
      const cx = item.at.x + Math.cos(angle) * (radius + (Math.abs(Math.cos(angle)) * w) / 3);
      const cy = item.at.y + Math.sin(angle) * radius;
      return {
        box: { x: cx - w / 2, y: cy - h / 2, w, h },
        cost: ring * ring * 5 + Math.abs(k) * 2,
      };
    }),
  );
}

function bestBox(
  item: LabelItem,
  w: number,
  h: number,
  taken: readonly Box[],
  rings: number,
): Box | null {
  let best: { box: Box; cost: number } | null = null;
  for (const c of candidates(item, w, h, rings)) {
    let cost = c.cost;
    for (const t of taken) {
      cost += overlap(c.box, t) * 1.4;
      if (best && cost >= best.cost) break;
    }
    if (!best || cost < best.cost) best = { box: c.box, cost };
  }
  return best && best.cost < 150 ? best.box : null;
}

/** Draws the labels that find room; `taken` grows by each one. Off-screen marks are left out. */
export function placeLabels(
  ctx: CanvasRenderingContext2D,
  items: readonly LabelItem[],
  taken: Box[],
  size: Size,
  look: Look,
): void {
  ctx.font = look.font;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  const shown = items.filter(
    ({ at }) => at.x > -20 && at.y > -20 && at.x < size.width + 20 && at.y < size.height + 20,
  );
  for (const item of shown) taken.push({ x: item.at.x - 5, y: item.at.y - 5, w: 10, h: 10 });
  for (const item of [...shown].sort((a, b) => Number(b.first ?? 0) - Number(a.first ?? 0))) {
    const w = ctx.measureText(item.id).width + 7;
    const box = bestBox(item, w, 16, taken, look.rings ?? RINGS.length);
    if (!box) continue;
    taken.push(box);
    drawLabel(ctx, item, box, look);
  }
  ctx.textBaseline = 'alphabetic';
}

function drawLabel(ctx: CanvasRenderingContext2D, item: LabelItem, box: Box, look: Look): void {
  const c = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  const distance = Math.hypot(c.x - item.at.x, c.y - item.at.y);
  if (distance > 24) {
    ctx.strokeStyle = COLOUR.ink;
    ctx.lineWidth = 0.8;
    ctx.beginPath();
    ctx.moveTo(item.at.x, item.at.y);
    ctx.lineTo(c.x, c.y);
    ctx.stroke();
  }
  ctx.globalAlpha = item.first ? 1 : look.plate;
  ctx.fillStyle = item.first ? COLOUR.flag : COLOUR.sheet;
  ctx.fillRect(box.x, box.y, box.w, box.h);
  ctx.globalAlpha = 1;
  ctx.fillStyle = item.first ? COLOUR.white : COLOUR.ink;
  ctx.fillText(item.id, c.x, c.y + 0.5);
}
