/** How a test of readings behaves. Source: Baarda 1968. */

/** |w| above this is a suspect: two-sided test at 0.1 %. */
export const CRITICAL = 3.290527;

/** Sigmas of a shift that the test at 0.1 % finds with power 80 %. */
export const DETECTABLE = 4.13215;

/** What dropping a reading costs before it is worth it: the square of `CRITICAL`. */
export const DROP_COST = CRITICAL * CRITICAL;

/** |correlation| of two standardised residuals above this: they rise and fall as one. */
export const SAME_DIRECTION = 0.98;
