/** Whether the pattern will show on this grass, and whether its bands trouble the painted lines. */
import { problem, type Problem } from '../base/result';
import { sourced } from '../base/sourced';
import type { Turf } from '../field/model';
import { bearingDifference } from '../geometry/angle';
import type { LaidBand } from './lay-pattern';

const BLOG = 'crop-science societies’ public blog, 2018-10-22';

/** Cool-season grass shows a pattern best from here up; shorter blades bend and gleam less. */
export const SHOWS_FROM_IN = sourced(1.5, 'in', BLOG, 'cool-season grass at 1.5 to 3 in');
/** Below this cool-season outfields are not usually cut. */
export const FAINT_BELOW_IN = sourced(1.25, 'in', 'from memory: extension ranges, 1.25 to 2.5 in');

/** A band this near to a foul line (45° to either side) runs along it, degrees. */
const ALONG_DEG = 2;

/**
 * Warnings `pattern-faint` (bermudagrass, cool-season grass cut low) and `lines-wavy` (bands of
 * cool-season grass that run up to the painted foul lines at an angle, no clean-up lap between).
 */
export function turfProblems(turf: Turf, bands: readonly LaidBand[], edgeLaps: number): Problem[] {
  return [...faintProblem(turf), ...wavyProblem(turf, bands, edgeLaps)];
}

function faintProblem({ grass, heightIn }: Turf): Problem[] {
  if (grass === 'bermuda') {
    return [
      problem(
        'pattern-faint',
        'field.turf',
        `bermudagrass at ${heightIn} in has short, stiff blades: the pattern is faint and may not show at all in midsummer`,
        'try a few bands first, roll after mowing, or wait for the overseeded ryegrass',
        'warning',
      ),
    ];
  }
  if (grass !== 'cool-season' || heightIn >= FAINT_BELOW_IN.value) return [];
  return [
    problem(
      'pattern-faint',
      'field.turf.heightIn',
      `at ${heightIn} in the blades are short and the pattern is faint`,
      `cut it higher if play allows: a pattern shows best from ${SHOWS_FROM_IN.value} in up`,
      'warning',
    ),
  ];
}

/** Source: the same blog; cool-season patterns run along painted lines, or the lines look wavy. */
function wavyProblem(turf: Turf, bands: readonly LaidBand[], edgeLaps: number): Problem[] {
  if (turf.grass !== 'cool-season' || edgeLaps > 0) return [];
  if (!bands.some(meetsLines)) return [];
  return [
    problem(
      'lines-wavy',
      'design.edgeLaps',
      'bands run up to the painted foul lines at an angle, and a line painted across changing lays looks wavy',
      'take a clean-up lap, which runs along the lines, or bands along a foul line',
      'warning',
    ),
  ];
}

/** Bands along curves meet the lines at some angle; straight ones unless they run along one of them. */
const meetsLines = ({ lay }: LaidBand): boolean =>
  !('bearingDeg' in lay) ||
  [45, 135, 225, 315].every((deg) => bearingDifference(lay.bearingDeg, deg) > ALONG_DEG);
