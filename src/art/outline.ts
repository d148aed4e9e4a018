/** Outlines as curves, in any frame: what fonts and drawings hold before they become polygons. */
import { affineApply, type Affine } from '../geometry/affine';
import { boxOfPoints, type Box } from '../geometry/box';
import { pointLerp, type Point } from '../geometry/point';

export type Curve =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'cubic'; readonly c1: Point; readonly c2: Point; readonly to: Point };

/** One pen-down run; `closed` joins its end to its start. */
export interface Subpath {
  readonly start: Point;
  readonly curves: readonly Curve[];
  readonly closed: boolean;
}

export type Outline = readonly Subpath[];

/** A straight side to `to`. */
export const lineTo = (to: Point): Curve => ({ kind: 'line', to });
/** A cubic Bézier side with its two handles. */
export const cubicTo = (c1: Point, c2: Point, to: Point): Curve => ({ kind: 'cubic', c1, c2, to });

/** A quadratic curve from `from` raised to the same cubic, exactly. */
export const quadraticTo = (from: Point, control: Point, to: Point): Curve =>
  cubicTo(pointLerp(from, control, 2 / 3), pointLerp(to, control, 2 / 3), to);

/** The outline mapped by an affine map: curves stay exact. */
export function outlineMap(outline: Outline, m: Affine): Outline {
  return outline.map((sub) => ({
    start: affineApply(m, sub.start),
    closed: sub.closed,
    curves: sub.curves.map((c) =>
      c.kind === 'line'
        ? lineTo(affineApply(m, c.to))
        : cubicTo(affineApply(m, c.c1), affineApply(m, c.c2), affineApply(m, c.to)),
    ),
  }));
}

/** Every point that steers the outline; the outline lies inside their convex hull. */
export function outlinePoints(outline: Outline): Point[] {
  return outline.flatMap((sub) => [
    sub.start,
    ...sub.curves.flatMap((c) => (c.kind === 'line' ? [c.to] : [c.c1, c.c2, c.to])),
  ]);
}

/** A box that holds the outline (its steering points' box), or null when it is empty. */
export const outlineBox = (outline: Outline): Box | null => boxOfPoints(outlinePoints(outline));

/** How many curves and lines it has. */
export const outlineSize = (outline: Outline): number =>
  outline.reduce((n, sub) => n + sub.curves.length, 0);
