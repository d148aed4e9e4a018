/** Readings that as a whole cannot be of this plan: in another unit, of another job, or at odds with each other. */
import type { MeasuredReading } from '../audit/model';
import { tapeSigmaIn } from '../adjust/precise-point';
import { formatLength } from '../base/quantity';
import { problem, type Problem } from '../base/result';
import { inches, metresToFeet } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import type { StakePlan } from '../stakeout/model';
import { checkTape } from '../stakeout/tapes';

/** Planned places by id. */
export type Known = ReadonlyMap<string, Point>;

export const knownPlaces = (plan: StakePlan): Known =>
  new Map([...plan.controls, ...plan.stakes].map((p) => [p.id, p.at]));

export const anotherPlan = (where: string, what: string): Problem =>
  problem(
    'readings-of-another-plan',
    where,
    what,
    'give the readings of the packet that was set out, with the project it was printed from',
  );

/** Problems `readings-disagree`, `readings-units` and `readings-of-another-plan`. */
export function misfitProblems(
  readings: readonly MeasuredReading[],
  where: string,
  plan: StakePlan,
): Problem[] {
  const disagree = disagreements(readings, where, plan);
  const wrong = unitProblem(readings, where, plan) ?? planProblem(readings, where, plan);
  return wrong ? [wrong] : disagree;
}

/** Two readings of the same distance further apart than two pulls can be. */
function disagreements(
  readings: readonly MeasuredReading[],
  where: string,
  plan: StakePlan,
): Problem[] {
  const first = new Map<string, MeasuredReading>();
  return readings.flatMap((r) => {
    const key = [r.stake, r.from].sort().join(' ');
    const before = first.get(key);
    if (!before) first.set(key, r);
    const sigma = inches(tapeSigmaIn(checkTape(plan.spec), r.ft));
    if (!before || Math.abs(before.ft - r.ft) <= 3 * Math.SQRT2 * sigma) return [];
    return [
      problem(
        'readings-disagree',
        `${where}: lines ${before.line} and ${r.line}`,
        `${r.stake} from ${r.from} reads ${before.text} and ${r.text}`,
        'tape it again and keep the right one',
      ),
    ];
  });
}

/** What one unit is in another, and how to say so. */
const CONFUSED = [
  { ratio: 1 / metresToFeet(1), say: 'metres where feet are meant', fix: 'reading_m' },
  { ratio: metresToFeet(1), say: 'feet where metres are meant', fix: 'reading_ft' },
  { ratio: 12, say: 'inches where feet are meant', fix: 'reading_ft, in feet' },
] as const;
/** Shortest planned distance whose ratio says anything. */
const TELLING_FT = 3;
const RATIO_PLAY = 0.03;
const ENOUGH = 3;

const plannedFt = (r: MeasuredReading, known: Known): number =>
  pointDistance(known.get(r.stake)!, known.get(r.from)!);

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** The whole file is in another unit: its readings are off by one factor. */
function unitProblem(
  readings: readonly MeasuredReading[],
  where: string,
  plan: StakePlan,
): Problem | null {
  const known = knownPlaces(plan);
  const telling = readings.filter((r) => plannedFt(r, known) > TELLING_FT);
  if (telling.length < ENOUGH) return null;
  const ratio = middle(telling.map((r) => r.ft / plannedFt(r, known)));
  const unit = CONFUSED.find((c) => Math.abs(Math.log(ratio / c.ratio)) < RATIO_PLAY);
  if (!unit) return null;
  return problem(
    'readings-units',
    where,
    `all readings are off by a factor of ${Math.max(ratio, 1 / ratio).toFixed(2)}: they look like ${unit.say}`,
    `name the column ${unit.fix}`,
  );
}

/** Most readings are nowhere near what the plan says. */
const FAR_OFF_FT = 5;

function planProblem(
  readings: readonly MeasuredReading[],
  where: string,
  plan: StakePlan,
): Problem | null {
  const known = knownPlaces(plan);
  const off = readings.map((r) => Math.abs(r.ft - plannedFt(r, known)));
  if (readings.length < ENOUGH || middle(off) <= FAR_OFF_FT) return null;
  const far = formatLength(middle(off), plan.spec.system);
  return anotherPlan(where, `half of the readings are off by more than ${far}`);
}
