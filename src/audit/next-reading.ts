/** The one further reading that would best tell explanations apart. */
import { rowCovariance } from '../adjust/free-rows';
import { tapeSigmaIn } from '../adjust/precise-point';
import { roundReading } from '../base/quantity';
import { inches } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { checkTape } from '../stakeout/tapes';
import type { StakePlan } from '../stakeout/model';
import type { Candidate, Standing } from './explain';
import type { NextReading } from './model';
import { explanationWords } from './words';

/** A tape shorter than this proves little. */
const SHORTEST_FT = 4;
/** Neighbours nearer than this may serve, beside the controls. */
const NEIGHBOUR_FT = 60;
/** A reading decides when the explanations differ in it by this many sigmas. */
const DECIDES = 4;
/** A reading that tells less is not worth the walk. */
const WORTH_IT = 1;
/** A control is taken before a neighbour that tells this much more. */
const CONTROL_WORTH = 0.25;

/**
 * The reading in reach in which the explanations differ most; a control is taken before a neighbour
 * that tells hardly more. Null when none differs.
 */
export function nextReading(
  plan: StakePlan,
  candidates: readonly Candidate[],
  sigmaOf: SigmaOf,
): NextReading | null {
  let best: { stake: string; from: string; sigmas: number; rank: number } | null = null;
  for (const stake of stakesInQuestion(plan, candidates)) {
    for (const from of sourcesFor(plan, candidates[0]!, stake)) {
      const sigmas = meanDifference(candidates, sigmaOf, stake, from.id);
      const rank = sigmas + (from.control ? CONTROL_WORTH : 0);
      if (sigmas > WORTH_IT && rank > (best?.rank ?? 0)) {
        best = { stake, from: from.id, sigmas, rank };
      }
    }
  }
  return best && describeReading(plan, candidates, best);
}

function stakesInQuestion(plan: StakePlan, candidates: readonly Candidate[]): string[] {
  const known = new Set(plan.stakes.map((p) => p.id));
  const ids = candidates.flatMap(({ explanation: e }) =>
    [e.stake, e.reading?.from, e.reading?.to].filter((id): id is string => !!id && known.has(id)),
  );
  return [...new Set(ids)];
}

function sourcesFor(
  plan: StakePlan,
  { placeOf }: Candidate,
  stake: string,
): { readonly id: string; readonly control: boolean }[] {
  const at = placeOf(stake);
  const longest = checkTape(plan.spec).limitFt;
  const reach = (id: string, limit: number): boolean => {
    const d = pointDistance(at, placeOf(id));
    return d >= SHORTEST_FT && d <= limit;
  };
  const controls = plan.controls.filter((c) => c.id !== stake && reach(c.id, longest));
  const near = plan.stakes.filter(
    (p) => p.kind !== 'control' && p.id !== stake && reach(p.id, Math.min(longest, NEIGHBOUR_FT)),
  );
  return [
    ...controls.map((c) => ({ id: c.id, control: true })),
    ...near.map((p) => ({ id: p.id, control: false })),
  ];
}

const between = (c: Candidate, a: string, b: string): number =>
  pointDistance(c.placeOf(a), c.placeOf(b));

/**
 * How far apart the explanations are in sigmas of the reading to be made: mean over all pairs of them,
 * none counting for more than decides.
 */
function meanDifference(
  candidates: readonly Candidate[],
  sigmaOf: SigmaOf,
  stake: string,
  from: string,
): number {
  const sigma = sigmaOf(stake, from);
  const lengths = candidates.map((c) => between(c, stake, from) / sigma);
  const apart = lengths.flatMap((a, i) =>
    lengths.slice(0, i).map((b) => Math.min(DECIDES, Math.abs(a - b))),
  );
  return apart.reduce((sum, d) => sum + d, 0) / apart.length;
}

/** Sigma of what a tape between two marks would read, feet. */
export type SigmaOf = (stake: string, from: string) => number;

/** The tape's error and that of the two places as planned, neither sharing anything. */
export const plannedSigma =
  (plan: StakePlan, placeOf: (id: string) => Point): SigmaOf =>
  (stake, from) => {
    const places = [...plan.controls, ...plan.stakes].filter(
      (p) => p.id === stake || p.id === from,
    );
    const variance = places.reduce((sum, p) => sum + (p.covariance.xx + p.covariance.yy) / 2, 0);
    const tape = tapeSigmaIn(checkTape(plan.spec), pointDistance(placeOf(stake), placeOf(from)));
    return inches(Math.hypot(tape, Math.sqrt(variance)));
  };

/** The tape's error and that of the two places as adjusted, with all that they share. */
export const adjustedSigma =
  (s: Standing): SigmaOf =>
  (stake, from) => {
    const [a, b] = [s.placeOf(stake), s.placeOf(from)];
    const d = pointDistance(a, b);
    const u = { x: (a.x - b.x) / d, y: (a.y - b.y) / d };
    const places = [...placesOf(s, stake, u, 1), ...placesOf(s, from, u, -1)];
    const variance = Math.max(0, rowCovariance(s.adjustment, { places }, { places }));
    return Math.hypot(inches(tapeSigmaIn(checkTape(s.plan.spec), d)), Math.sqrt(variance));
  };

function placesOf(s: Standing, id: string, u: Point, sign: 1 | -1) {
  const [x, y] = s.adjustment.places[id]!;
  return [
    { at: x, by: sign * u.x },
    { at: y, by: sign * u.y },
  ].filter((p) => p.at >= 0);
}

function describeReading(
  plan: StakePlan,
  candidates: readonly Candidate[],
  {
    stake,
    from,
    sigmas,
  }: { readonly stake: string; readonly from: string; readonly sigmas: number },
): NextReading {
  return {
    stake,
    from,
    sigmas,
    wouldRead: candidates.map((c) => ({
      reading: roundReading(between(c, stake, from), plan.spec.system),
      words: explanationWords(c.explanation),
    })),
  };
}
