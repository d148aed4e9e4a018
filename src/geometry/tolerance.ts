/**
 * Every tolerance of the planar code, with its size on the ground (lengths are feet) and why. Bare
 * `1e-` literals are a lint error elsewhere.
 */

/** 0.00001 ft, 0.0001 in: two points closer than this are one point; far below any tape. */
export const SAME_POINT = 1e-5;

/** Decimal places of the boolean engine's grid: 1e-6 ft, ten times finer than `SAME_POINT`. */
export const BOOLEAN_DECIMALS = 6;

/** 0.005 ft, 1/16 in: the chord error when an arc or a curve becomes a polygon. */
export const FLATTEN = 0.005;

/** 0.01 ft, 1/8 in: the arc error of round offset corners. */
export const OFFSET_ARC = 0.01;

/** 0.01 sq ft: a ring smaller than this is a leftover of a cut, not a piece of ground. */
export const SLIVER_AREA = 0.01;

/** Angles closer than this (radians) are equal: 0.0004 in across a 400 ft field. */
export const SAME_ANGLE = 1e-7;

/** Guard against division by a vanishing determinant; unit-free. */
export const SINGULAR = 1e-12;

/** 0.01 ft, 1/8 in: passes on lines closer than this are driven on one line. */
export const SAME_LANE = 0.01;

/** 0.01 degrees, 3/4 in over 350 ft: bearings closer than this are one lay. */
export const SAME_LAY_DEG = 0.01;
