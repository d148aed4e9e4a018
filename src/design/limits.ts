/** Bounds of good sense for the figures of a design: typed ones are held to them, read ones too. */

/** Clean-up laps round the edge. */
export const MOST_LAPS = 3;
/** Quiet ground round a graphic, feet. */
export const MOST_MARGIN_FT = 150;
/** How far a drawn outline may stray, inches. */
export const MOST_TOLERANCE_IN = 24;
