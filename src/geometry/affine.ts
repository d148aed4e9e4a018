/** Affine maps of the plane, as SVG writes them: x' = a·x + c·y + e, y' = b·x + d·y + f. */
import type { Point } from './point';

export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const affineApply = (m: Affine, p: Point): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

/** The map that does `inner` first, then `outer`. */
export const affineCompose = (outer: Affine, inner: Affine): Affine => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

export const affineTranslate = (x: number, y: number): Affine => ({ ...IDENTITY, e: x, f: y });
export const affineScale = (x: number, y = x): Affine => ({ ...IDENTITY, a: x, d: y });
export const affineRotate = (angle: number): Affine => ({
  a: Math.cos(angle),
  b: Math.sin(angle),
  c: -Math.sin(angle),
  d: Math.cos(angle),
  e: 0,
  f: 0,
});
export const affineDeterminant = (m: Affine): number => m.a * m.d - m.b * m.c;
