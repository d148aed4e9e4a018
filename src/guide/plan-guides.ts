/** The guide lines of a plan: lanes, the fewest to string, their strings, and the edges' distances. */
import { problem, succeed, type Problem, type Result } from '../base/result';
import type { LengthSystem } from '../base/quantity';
import type { Feet } from '../base/units';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { SAME_LANE } from '../geometry/tolerance';
import { swathFt } from '../mowing/machines';
import type { Machine } from '../mowing/model';
import { chooseLanes, passesTo } from './choose-lanes';
import { driftIn, reachPasses } from './drift';
import { findLanes, type LaneFamily } from './find-lanes';
import { grassEdges } from './grass-edges';
import { keepOff, layStrings, type LaidString, type StringGround } from './lay-strings';
import { numberStrings, type UnnumberedString } from './number-strings';
import type { BandEdge, GuideFamily, GuidePlan, GuideSpec, Lane } from './model';
import { tabulateEdges } from './tabulate-edges';

export interface GuideInput {
  readonly field: Field;
  readonly design: Pick<Design, 'strokes'>;
  readonly wide: Machine;
  readonly system: LengthSystem;
  readonly spec: GuideSpec;
}

/** More passes beside one another than any field has. */
const MOST_PASSES_BESIDE = 500;

/**
 * Strings and running distances for every straight band; needs no graphic. Warning `guide-tolerance`:
 * a strung pass itself strays farther than the tolerance, so that no string helps.
 */
export function planGuides(input: GuideInput): Result<GuidePlan> {
  const { field, design, wide, system, spec } = input;
  const found = findLanes(design.strokes);
  const ground: StringGround = { field, edges: grassEdges(field), keep: keepOff(wide, system) };
  const reach = reachPasses(spec, MOST_PASSES_BESIDE);
  const strung = spec.strings === 'none' ? -1 : reach;
  const made = found.families.map((family, i) => {
    const letter = found.families.length > 1 ? LETTERS.charAt(i % LETTERS.length) : '';
    return makeFamily(ground, family, letter, spec, strung, swathFt(wide));
  });
  const families = made.map((m) => m.family);
  const strings = numberStrings(
    ground.edges,
    made.flatMap((m) => m.strings),
    ground.keep,
    system,
  );
  const plan: GuidePlan = {
    spec,
    reach,
    families,
    strings,
    tables: tabulateEdges(field, ground.edges, families, strings, system),
    worstDriftIn: worstDrift(families),
    notes: notesOf(found.curvedBands, families, strings.length > 0),
  };
  const banded = families.some((f) => f.edges.length > 0);
  const hopeless = banded && spec.strings !== 'none' && reach < 0;
  return succeed(plan, hopeless ? [tooTight(spec)] : []);
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function makeFamily(
  ground: StringGround,
  { frame, lanes }: LaneFamily,
  letter: string,
  spec: GuideSpec,
  reach: number,
  swath: Feet,
): { readonly family: GuideFamily; readonly strings: UnnumberedString[] } {
  const laid = lanes.map((lane) => layStrings(ground, frame, lane));
  const strung = runsOf(lanes, swath).flatMap((run) => chooseInRun(lanes, laid, run, reach));
  const strings = strung.flatMap((lane) => laid[lane]!.map((one) => ({ letter, string: one })));
  const edges = bandEdges(lanes, swath, strung, letter, spec);
  return { family: { letter, bearingDeg: frame.bearingDeg, lanes, edges, strung }, strings };
}

/** Lanes from `from` to `to`, each beside the next. */
interface Run {
  readonly from: number;
  readonly to: number;
}

const isBeside = (a: Lane, b: Lane, swath: Feet): boolean =>
  b.offsetFt - a.offsetFt < swath + SAME_LANE;

/** Drift is carried from a lane to the one beside it, never over a gap. */
function runsOf(lanes: readonly Lane[], swath: Feet): Run[] {
  const runs: Run[] = [];
  lanes.forEach((lane, i) => {
    const last = runs[runs.length - 1];
    if (last && isBeside(lanes[i - 1]!, lane, swath)) runs[runs.length - 1] = { ...last, to: i };
    else runs.push({ from: i, to: i });
  });
  return runs;
}

const isEdge = (a: Lane, b: Lane): boolean => a.bands.join() !== b.bands.join();

/** How often a lane's strings go up: once for each of its passes. */
const timesUp = (strings: readonly LaidString[]): number =>
  strings.reduce((sum, { pieces }) => sum + pieces.length, 0);

/** Indices of the lanes to string; edges that no lane with room for a string can serve are left out. */
function chooseInRun(
  lanes: readonly Lane[],
  laid: readonly (readonly LaidString[])[],
  { from, to }: Run,
  reach: number,
): number[] {
  const own = lanes.slice(from, to + 1);
  const strings = laid.slice(from, to + 1).map(timesUp);
  const edges = own
    .flatMap((lane, i) => (i > 0 && isEdge(own[i - 1]!, lane) ? [i] : []))
    .filter((b) => strings.some((n, lane) => n > 0 && passesTo(lane, b) <= reach));
  return chooseLanes({ edges, strings }, reach).map((lane) => lane + from);
}

/** Every line between two bands, with its drift from the nearest strung lane of its run. */
function bandEdges(
  lanes: readonly Lane[],
  swath: Feet,
  strung: readonly number[],
  letter: string,
  spec: GuideSpec,
): BandEdge[] {
  return runsOf(lanes, swath).flatMap(({ from, to }) => {
    const own = strung.filter((lane) => lane >= from && lane <= to);
    return lanes.slice(from + 1, to + 1).flatMap((right, k): BandEdge[] => {
      const b = from + 1 + k;
      const left = lanes[b - 1]!;
      if (!isEdge(left, right)) return [];
      const passes = own.length === 0 ? null : Math.min(...own.map((lane) => passesTo(lane, b)));
      return [
        {
          name: `${letter}${left.bands[left.bands.length - 1]}-${right.bands[0]}`,
          offsetFt: (left.offsetFt + right.offsetFt) / 2,
          passes,
          driftIn: passes === null ? null : driftIn(spec, passes),
        },
      ];
    });
  });
}

function worstDrift(families: readonly GuideFamily[]): number | null {
  const drifts = families.flatMap((f) => f.edges.flatMap((e) => e.driftIn ?? []));
  return drifts.length === 0 ? null : Math.max(...drifts);
}

function notesOf(curved: number, families: readonly GuideFamily[], strung: boolean): string[] {
  const out: string[] = [];
  if (curved > 0) {
    out.push(
      `${curved} ${curved === 1 ? 'band is' : 'bands are'} not straight: no string serves there, and no running distances are given.`,
    );
  }
  const over = families.flatMap((f) => f.edges.filter((e) => e.passes === null));
  if (strung && over.length > 0) {
    out.push(`No string has room near band edges ${over.map((e) => e.name).join(', ')}.`);
  }
  return out;
}

const tooTight = (spec: GuideSpec): Problem =>
  problem(
    'guide-tolerance',
    'guides.toleranceIn',
    `a strung pass by itself strays ${driftIn(spec, 0).toFixed(1)} in, farther than the ${spec.toleranceIn} in that a band edge may`,
    'allow band edges more, or string with less error',
    'warning',
  );
