/**
 * Which control stakes the crew sets: as few as let every stake meet the target. Up to three on the
 * foul lines and the centre line are found by trying all; beyond that greedily over the whole grass
 * with a look-ahead over pairs (one new control alone often helps nothing, two do), then pruned.
 * Every set control has its own check from a point known before it.
 */
import type { Control } from '../field/model';
import { pointDistance, type Point } from '../geometry/point';
import { gridCandidates, handyCandidates } from './control-candidates';
import {
  addControl,
  candidatesFor,
  coverOf,
  fixedEnds,
  missedBy,
  precisionTask,
  rebuild,
  TARGET_MARGIN,
  type Choosing,
  type ControlPlan,
} from './control-plan';
import { extendControls, pruneControls } from './extend-controls';
import type { StakeGround } from './ground';
import type { StakeoutSpec } from './model';
import { bestPrecisions, precisionTable, type PrecisionTable } from './precision-table';
import { coverTable, searchControls } from './search-controls';
import { longestTapeFt } from './tapes';

/** No crew sets more than this before the first stake of the graphic. */
export const MOST_CONTROLS = 12;
/** More may be tried on the way, before needless ones are dropped again. */
const MOST_TRIED = 48;
/** Times that stakes left out of the look are added to it. */
const MOST_LOOKS = 3;
/** Side of the squares of which one stake each is looked at while controls are chosen. */
const SQUARE_FT = 10;
/** What stays the same while controls are chosen. */
interface Places {
  readonly fixed: readonly Control[];
  /** Out of the way: on the foul lines, the centre line and the track's edge. */
  readonly handy: readonly Point[];
  /** All over the grass, the handy ones first. */
  readonly all: readonly Point[];
}

/**
 * Chooses and sets the controls for the target; where they cannot meet it, for the tightest target
 * that all stakes can meet. Stakes that stay out of reach are left to the caller to report.
 */
export function chooseControls(
  controls: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  spec: StakeoutSpec,
): ControlPlan {
  const job = { spec, stakes, most: MOST_CONTROLS };
  const places = placesFor(controls, stakes, ground, spec);
  const start = startOf(job, places);
  const met = chooseAt(job, start, spec.target95In);
  if (met) return met;
  const reaching = chooseAt(job, start, Infinity);
  return reaching ? (tightest(job, start) ?? reaching) : reachAll(job, start, places);
}

/** Controls with which every stake meets `targetIn`, at most `most`; null when none were found. */
export function controlsFor(
  controls: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  spec: StakeoutSpec,
  targetIn: number,
  most = MOST_CONTROLS,
): ControlPlan | null {
  const job = { spec, stakes, most };
  return chooseAt(job, startOf(job, placesFor(controls, stakes, ground, spec)), targetIn);
}

function placesFor(
  fixed: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  spec: StakeoutSpec,
): Places {
  const limitFt = longestTapeFt(spec);
  const handy = handyCandidates(fixed, stakes, ground, limitFt);
  return { fixed, handy, all: [...handy, ...gridCandidates(fixed, stakes, ground, limitFt)] };
}

/** The fixed controls and what can be set from them, with the precisions of the stakes looked at. */
interface Start {
  readonly plan: ControlPlan;
  readonly places: Places;
  readonly looked: readonly Point[];
  /** Candidates at the handy places come first; `handy` is of these alone. */
  readonly table: PrecisionTable;
  readonly handy: PrecisionTable;
}

function startOf(job: Choosing, places: Places, looked = representatives(job.stakes)): Start {
  const plan = fixedEnds(places.fixed);
  const seen = { ...job, stakes: looked };
  const handy = precisionTable(precisionTask(seen, plan, places.handy));
  return {
    plan,
    places,
    looked,
    handy,
    table: precisionTable(precisionTask(seen, plan, places.all)),
  };
}

/** Controls with which every stake meets a target; null when there are none. */
function chooseAt(job: Choosing, first: Start, targetIn: number): ControlPlan | null {
  const target = targetIn * TARGET_MARGIN;
  let start = first;
  for (let tries = 0; tries <= MOST_LOOKS; tries++) {
    const plan = chooseFor({ ...job, stakes: start.looked }, start, target);
    if (!plan) return null;
    const missed = missedBy(job, plan, target);
    if (missed.length === 0) return { ...withCheck(job, plan, start.places), targetIn };
    start = startOf(job, start.places, [...start.looked, ...missed]);
  }
  return null;
}

/**
 * The plan, with one control more where no stake has a third control in reach: the first stake needs a
 * check, the others can have theirs from it.
 */
function withCheck(job: Choosing, plan: ControlPlan, places: Places): ControlPlan {
  const limitFt = longestTapeFt(job.spec) - 1;
  const inReach = (at: Point): Point[] => job.stakes.filter((p) => pointDistance(p, at) < limitFt);
  const ends = plan.ends.map((e) => e.point.at);
  const checked = job.stakes.some(
    (p) => ends.filter((at) => pointDistance(p, at) < limitFt).length > 2,
  );
  if (checked) return plan;
  const ranked = candidatesFor(job, plan, places.all)
    .filter((c) => c.checked)
    .sort((a, b) => inReach(b.at).length - inReach(a.at).length);
  const best = ranked[0];
  return (best && inReach(best.at).length > 0 && addControl(job, plan, best.at)) || plan;
}

/** Targets are given up in steps of this share, and then given in quarter inches. */
const LOOSEN = 1.12;
const MOST_LOOSER = 16;
const QUARTER_IN = 0.25;

/** Controls for the tightest target that all stakes can meet; null when some are out of reach. */
function tightest(job: Choosing, start: Start): ControlPlan | null {
  let tooTight = job.spec.target95In;
  let target = nextQuarter(Math.max(tooTight, boundIn(start) / TARGET_MARGIN));
  let met: ControlPlan | null = null;
  for (let tries = 0; tries < MOST_LOOSER && !met; tries++) {
    met = chooseAt(job, start, target);
    if (met) break;
    tooTight = target;
    target = nextQuarter(target * LOOSEN);
  }
  while (met && met.targetIn - tooTight > QUARTER_IN) {
    const between = nextQuarter((met.targetIn + tooTight) / 2 - QUARTER_IN);
    const plan = chooseAt(job, start, between);
    if (plan) met = plan;
    else tooTight = between;
  }
  return met;
}

const nextQuarter = (valueIn: number): number =>
  (Math.floor(valueIn / QUARTER_IN) + 1) * QUARTER_IN;

/**
 * The best that the worst stake could be set, were every place that can be set from the fixed controls
 * a control; of stakes out of reach of these nothing is said.
 */
const boundIn = (start: Start): number =>
  bestPrecisions(start.table).reduce((most, p) => (p < Infinity ? Math.max(most, p) : most), 0);

/** Up to this many controls are proved to be the fewest on the handy places, and all over the grass. */
const MOST_PROVED = 4;
const MOST_PROVED_ANYWHERE = 2;

/**
 * Controls set from set controls can be better than any set from the fixed ones, seldom by more than
 * this factor (seen in trials, no source).
 */
const MOST_CHAINED_GAIN = 1.3;

function chooseFor(job: Choosing, start: Start, target: number): ControlPlan | null {
  if (coverOf(job, start.plan, target).count === job.stakes.length) return start.plan;
  const bound = boundIn(start);
  if (bound > target * MOST_CHAINED_GAIN) return null;
  const few =
    bound > target
      ? null
      : (fewest(job, start, start.handy, target, MOST_PROVED_ANYWHERE) ??
        fewest(job, start, start.table, target, MOST_PROVED_ANYWHERE) ??
        fewest(job, start, start.handy, target, MOST_PROVED));
  if (few) return few;
  const met = extendControls({ ...job, most: MOST_TRIED }, start.plan, start.places.all, target);
  if (coverOf(job, met, target).count < job.stakes.length) return null;
  const pruned = pruneControls(job, met, target);
  return pruned.set.length > job.most ? null : pruned;
}

/** Controls that bring as many stakes as can be in reach, however well. */
function reachAll(job: Choosing, start: Start, places: Places): ControlPlan {
  const plan = extendControls(job, start.plan, places.all, Infinity);
  return pruneControls(job, plan, Infinity);
}

/**
 * One stake of each square of the grass, the one farthest from the middle: how well a place is tied
 * changes little over a few feet.
 */
function representatives(stakes: readonly Point[]): Point[] {
  const middle = {
    x: stakes.reduce((sum, p) => sum + p.x, 0) / stakes.length,
    y: stakes.reduce((sum, p) => sum + p.y, 0) / stakes.length,
  };
  const chosen = new Map<string, Point>();
  for (const p of stakes) {
    const key = `${Math.floor(p.x / SQUARE_FT)} ${Math.floor(p.y / SQUARE_FT)}`;
    const held = chosen.get(key);
    if (!held || pointDistance(p, middle) > pointDistance(held, middle)) chosen.set(key, p);
  }
  return [...chosen.values()];
}

/** The smallest set of up to `most` of a table's places that does the whole job, or null. */
function fewest(
  job: Choosing,
  start: Start,
  table: PrecisionTable,
  targetIn: number,
  most: number,
): ControlPlan | null {
  const cover = coverTable(table, longestTapeFt(job.spec), targetIn);
  const chosen = searchControls(cover, most);
  const plan = chosen && rebuild(job, start.plan, chosen);
  return plan && coverOf(job, plan, targetIn).count === job.stakes.length ? plan : null;
}
