/**
 * Covariances of a point and their ellipses. Any one unit throughout (the stake-out uses inches).
 * Source of the formulas: Wolf & Ghilani, *Adjustment Computations*, error ellipses.
 */
import type { Point } from '../geometry/point';

/** Covariance of (x, y). */
export interface PointCovariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** An error ellipse: semi-axes, and the direction of the long one, radians from +x. */
export interface ErrorEllipse {
  readonly semiMajor: number;
  readonly semiMinor: number;
  readonly angle: number;
}

/**
 * Chi-square with two degrees of freedom at 95 %: −2·ln(0.05). Its root turns a standard ellipse,
 * which holds 39.35 % of the points, into one that holds 95 %.
 */
export const CHI_SQUARE_95_TWO = -2 * Math.log(0.05);
/** From the standard ellipse to the 95 % one. */
export const ELLIPSE_FACTOR_95 = Math.sqrt(CHI_SQUARE_95_TWO);

/** The covariance of a point whose coordinates are independent and equally good. */
export const roundCovariance = (sigma: number): PointCovariance => ({
  xx: sigma * sigma,
  xy: 0,
  yy: sigma * sigma,
});

/** The standard (one sigma) ellipse. */
export function standardEllipse(c: PointCovariance): ErrorEllipse {
  const half = (c.xx + c.yy) / 2;
  const root = Math.hypot((c.xx - c.yy) / 2, c.xy);
  return {
    semiMajor: Math.sqrt(Math.max(0, half + root)),
    semiMinor: Math.sqrt(Math.max(0, half - root)),
    angle: Math.atan2(2 * c.xy, c.xx - c.yy) / 2,
  };
}

/** Semi-major axis of the ellipse that holds the point in 95 of 100 cases. */
export function semiMajor95(c: PointCovariance): number {
  const half = (c.xx + c.yy) / 2;
  const root = Math.hypot((c.xx - c.yy) / 2, c.xy);
  return ELLIPSE_FACTOR_95 * Math.sqrt(Math.max(0, half + root));
}

/**
 * A square root of a covariance: two columns of unit-variance causes, so that
 * C = a·aᵀ + b·bᵀ (Cholesky).
 */
export function covarianceRoot(c: PointCovariance): { readonly a: Point; readonly b: Point } {
  const l11 = Math.sqrt(Math.max(0, c.xx));
  const l21 = l11 > 0 ? c.xy / l11 : 0;
  const l22 = Math.sqrt(Math.max(0, c.yy - l21 * l21));
  return { a: { x: l11, y: l21 }, b: { x: 0, y: l22 } };
}
