/** What a crew, its tapes and its stakes allow. Feet unless the name says otherwise. */
import { inches } from '../base/units';

/** No two stakes stand closer than this (output contract). */
export const STAKE_SPACING_FT = inches(8);
/** Planned spacing: rounding the readings moves each of two stakes by up to about 1/2 in. */
export const PLANNED_SPACING_FT = inches(8.75);
/** Control stakes keep this far from every other stake: a tape end needs room. */
export const CONTROL_SPACING_FT = 2;
/** The same while planning, before readings are rounded. */
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
