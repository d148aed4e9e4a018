/**
 * What a drawing may ask for. A drawing past any of these cannot be mown at any size, and some files
 * are made to exhaust whoever opens them.
 */

/** Characters in the file, 10 million: about 10 MB. */
export const MAX_CHARACTERS = 10_000_000;
/** Elements in the file. */
export const MAX_ELEMENTS = 20_000;
/** Shapes painted, copies by `use` counted each time. */
export const MAX_PAINTED = 20_000;
/** Elements inside elements, copies by `use` included. */
export const MAX_DEPTH = 200;
/** Lines and curves painted, in all. */
export const MAX_SEGMENTS = 50_000;
/** Dashes along one line; with finer ones it is drawn solid. */
export const MAX_DASHES = 1_000;
/** Dashed lines in a drawing; any more are drawn solid. */
export const MAX_DASHED = 200;
/** Times that dark and white paint may take turns. */
export const MAX_TURNS = 500;
/** Crossings of lines with each other, estimated: more than this takes minutes to untangle. */
export const MAX_CROSSINGS = 300_000;
/** Coordinates past this are a mistake in the file, and lose their decimals. */
export const MAX_COORDINATE = 1_000_000_000;
/** Reach in art units past which a shape cannot belong to the drawing. */
export const MAX_REACH = 1_000_000;
