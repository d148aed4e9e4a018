/** The marks of the plan, shape first, colour second. */
import type { Point } from '../../geometry/point';
import { COLOUR } from './colours';

type Ctx = CanvasRenderingContext2D;

/** A control: hollow when idle, filled with a white edge while a tape is held there. */
export function triangle(
  ctx: Ctx,
  c: Point,
  r: number,
  state: { readonly held: boolean; readonly bar: boolean },
): void {
  const size = state.held ? r * 1.35 : r;
  const path = (): void => {
    ctx.beginPath();
    ctx.moveTo(c.x, c.y - size);
    ctx.lineTo(c.x + size, c.y + size * 0.72);
    ctx.lineTo(c.x - size, c.y + size * 0.72);
    ctx.closePath();
  };
  ctx.lineJoin = 'round';
  path();
  ctx.fillStyle = state.held ? COLOUR.flag : COLOUR.white;
  ctx.strokeStyle = state.held ? COLOUR.white : COLOUR.ink;
  ctx.lineWidth = state.held ? 5 : 1.6;
  ctx.stroke();
  ctx.fill();
  ctx.beginPath();
  ctx.arc(c.x, c.y + size * 0.15, 1.8, 0, 7);
  ctx.fillStyle = state.held ? COLOUR.white : COLOUR.ink;
  ctx.fill();
  if (!state.bar) return;
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 2;
  ctx.beginPath();
  ctx.moveTo(c.x - size - 3, c.y + size * 0.72 + 4);
  ctx.lineTo(c.x + size + 3, c.y + size * 0.72 + 4);
  ctx.stroke();
}

export function disc(ctx: Ctx, c: Point, r: number): void {
  ctx.beginPath();
  ctx.arc(c.x, c.y, r, 0, 7);
  ctx.fillStyle = COLOUR.ink;
  ctx.fill();
}

export function pin(ctx: Ctx, c: Point, r: number): void {
  ctx.beginPath();
  ctx.arc(c.x, c.y, r, 0, 7);
  ctx.fillStyle = COLOUR.sheet;
  ctx.fill();
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.2;
  ctx.stroke();
  ctx.beginPath();
  ctx.moveTo(c.x - r, c.y);
  ctx.lineTo(c.x + r, c.y);
  ctx.moveTo(c.x, c.y - r);
  ctx.lineTo(c.x, c.y + r);
  ctx.stroke();
}

export function diamond(ctx: Ctx, c: Point, r: number): void {
  ctx.beginPath();
  ctx.moveTo(c.x, c.y - r);
  ctx.lineTo(c.x + r, c.y);
  ctx.lineTo(c.x, c.y + r);
  ctx.lineTo(c.x - r, c.y);
  ctx.closePath();
  ctx.fillStyle = COLOUR.white;
  ctx.fill();
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1.4;
  ctx.stroke();
}

/** The stake in hand: ringed in the accent on a white casing. */
export function ring(ctx: Ctx, c: Point): void {
  ctx.beginPath();
  ctx.arc(c.x, c.y, 11, 0, 7);
  ctx.fillStyle = COLOUR.white;
  ctx.fill();
  ctx.lineWidth = 3;
  ctx.strokeStyle = COLOUR.flag;
  ctx.stroke();
  ctx.beginPath();
  ctx.arc(c.x, c.y, 4.6, 0, 7);
  ctx.fillStyle = COLOUR.ink;
  ctx.fill();
}
