/** What a crew, its tapes and its stakes allow. Feet unless the name says otherwise. */
import { inches } from '../base/units';

/** No two stakes stand closer than this (output contract). */
export const STAKE_SPACING_FT = inches(8);
/** Planned spacing: rounding the readings moves each of two stakes by up to about 1/2 in. */
export const PLANNED_SPACING_FT = inches(8.75);
/**
 * Control stakes keep 2 ft from every other stake, since a tape end needs room; while planning a little
 * more, before readings are rounded.
 */
export const PLANNED_CONTROL_SPACING_FT = 2.25;

/** Shortest and longest swing. Shorter ones turn on themselves; longer ones sag and snag. */
export const SHORTEST_SWING_FT = 3;
export const LONGEST_SWING_FT = 100;
/** Planned limits, a little inside, so that rounding cannot cross them. */
export const PLANNED_SHORTEST_SWING_FT = 3.1;
/** A planned swing turns a little less than the half turn that is allowed. */
export const PLANNED_SWEEP = (176 * Math.PI) / 180;
export const LONGEST_SWEEP = Math.PI;
/** The step from a swing's end stake to its arc. */
export const LONGEST_STEP_FT = inches(0.75);

/** A bend is drawn by hand through three places: no longer, or its curve is guesswork. */
export const LONGEST_BEND_FT = 6;
/** A flatter one is a straight string. */
export const LEAST_BEND_OFFSET_FT = inches(1);

/** Two tapes that meet flatter than this do not fix a stake. */
export const FLATTEST_TIES_DEG = 30;
/** Planned limit, a little inside. */
export const PLANNED_FLATTEST_TIES_DEG = 30.5;

/** A printed check's limit is this many sigmas of its difference. */
export const CHECK_SIGMAS = 3;

/** What rounding the readings may add to the largest gap between art and drawn outline. */
export const ROUNDING_ALLOWANCE_IN = 0.5;

/** A change of direction above this stays a corner. */
export const CORNER_TURN = (28 * Math.PI) / 180;

/** A string or tape between two stakes is no longer than this: one pair of hands keeps it tight. */
export const LONGEST_BASE_FT = 30;
/** Nor shorter: its direction would be that of two stakes' width. */
export const SHORTEST_BASE_FT = 3;
/** Short offsets only: a few feet, as far as a square or a 3-4-5 triangle is laid out. */
export const LONGEST_OFFSET_FT = 6;
/** An offset so small that the wrong side would hide in the check is not set that way. */
export const SHORTEST_OFFSET_FT = inches(1.5);
/** A stake set from stakes set from stakes set by tapes: no further. */
export const DEEPEST_SHORT = 2;
