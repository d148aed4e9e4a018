/**
 * What a drawing may ask for. A drawing past any of these cannot be mown at any size, and some files
 * are made to exhaust whoever opens them. A drawing at the limits takes a few seconds.
 */

/** Characters in the file, 10 million: about 10 MB. */
export const MAX_CHARACTERS = 10_000_000;
/** Elements in the file. */
export const MAX_ELEMENTS = 10_000;
/** Style rules times elements, a rule of joined selectors counted 20 times for each part. */
export const MAX_MATCHES = 2_000_000;
/** Shapes painted, copies by `use` counted each time. */
export const MAX_PAINTED = 10_000;
/** Elements inside elements, copies by `use` included. */
export const MAX_DEPTH = 200;
/** Lines and curves painted, in all. */
export const MAX_SEGMENTS = 20_000;
/** Characters of path data, 60 to each of the most lines and curves. */
export const MAX_PATH_CHARACTERS = 60 * MAX_SEGMENTS;
/** Dashes along one line; with finer ones it is drawn solid. */
export const MAX_DASHES = 300;
/** Dashed lines in a drawing; any more are drawn solid. */
export const MAX_DASHED = 20;
/** Times that dark and white paint may take turns. */
export const MAX_TURNS = 100;
/** Crossings of lines with each other, estimated: more than this takes long to untangle. */
export const MAX_CROSSINGS = 20_000;
/** Coordinates past this are a mistake in the file, and lose their decimals. */
export const MAX_COORDINATE = 1_000_000_000;
/** Reach in art units past which a shape cannot belong to the drawing. */
export const MAX_REACH = 1_000_000;
