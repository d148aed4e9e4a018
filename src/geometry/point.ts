/** Points and vectors in the plane. Same unit in and out; no function changes its input. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export const point = (x: number, y: number): Point => ({ x, y });

export const pointAdd = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const pointSubtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const pointScale = (a: Point, k: number): Point => ({ x: a.x * k, y: a.y * k });
/** a + k·b */
export const pointAlong = (a: Point, b: Point, k: number): Point => ({
  x: a.x + k * b.x,
  y: a.y + k * b.y,
});
export const pointLerp = (a: Point, b: Point, t: number): Point => ({
  x: a.x + t * (b.x - a.x),
  y: a.y + t * (b.y - a.y),
});
export const pointDistance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
export const vectorLength = (a: Point): number => Math.hypot(a.x, a.y);
export const vectorDot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** z of the cross product: positive when b lies counter-clockwise of a. */
export const vectorCross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
/** The vector turned a quarter turn counter-clockwise (its left-hand normal). */
export const vectorLeft = (a: Point): Point => ({ x: -a.y, y: a.x });

/** Unit vector, or null for a vector of no length. */
export function vectorUnit(a: Point): Point | null {
  const length = vectorLength(a);
  return length > 0 ? { x: a.x / length, y: a.y / length } : null;
}

/** Twice the signed area of triangle a b c: positive when c lies left of a→b. */
export const pointOrientation = (a: Point, b: Point, c: Point): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
