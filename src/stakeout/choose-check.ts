/** The third reading that proves a stake. */
import { roundReading, type LengthSystem } from '../base/quantity';
import { differenceSigmaIn, type PrecisePoint } from '../adjust/precise-point';
import { pointDistance, type Point } from '../geometry/point';
import { CHECK_SIGMAS } from './limits';
import type { Check, TapeSpec } from './model';
import type { SetStake } from './ties';
import { methodControls } from './ties';

/** Something a check can be pulled from. */
export interface CheckSource {
  readonly id: string;
  readonly point: PrecisePoint;
  readonly isControl: boolean;
}

/**
 * Smallest slip found with power 80 % by a test at 0.1 %, in sigmas of the difference
 * (Baarda 1968: the non-centrality 4.13).
 */
const DETECTABLE = 4.13215;
/** A check from a control is preferred while it finds slips of a foot. */
const CONTROL_GOOD_IN = 12;
/** A tape shorter than this to a neighbour proves little and gets in the way. */
const SHORTEST_CHECK_FT = 4;

/**
 * The source whose reading would show the smallest slip in either tie; a control when one is good
 * enough, since a neighbour cannot see what it shares. Null when nothing is in reach.
 */
export function chooseCheck(
  stake: SetStake,
  sources: readonly CheckSource[],
  tape: TapeSpec,
  system: LengthSystem,
): Check | null {
  const used = methodControls(stake.set);
  let best: CheckSource | null = null;
  let least = Infinity;
  for (const source of sources) {
    if (used.includes(source.id)) continue;
    const slip = detectableSlipIn(stake, source, tape);
    if (slip === Infinity) continue;
    const rank = source.isControl && slip <= CONTROL_GOOD_IN ? slip - CONTROL_GOOD_IN : slip;
    if (rank < least) {
      least = rank;
      best = source;
    }
  }
  return best && readCheck(stake, best, tape, system);
}

function readCheck(
  stake: SetStake,
  source: CheckSource,
  tape: TapeSpec,
  system: LengthSystem,
): Check {
  return {
    from: source.id,
    reading: roundReading(pointDistance(stake.point.at, source.point.at), system),
    limitIn: CHECK_SIGMAS * differenceSigmaIn(stake.point, source.point, tape),
  };
}

/** The larger of the slips, inches, that the reading would just show in either tie. */
function detectableSlipIn(stake: SetStake, source: CheckSource, tape: TapeSpec): number {
  const d = pointDistance(stake.point.at, source.point.at);
  if (d > tape.limitFt - 0.05 || d < SHORTEST_CHECK_FT) return Infinity;
  const sigma = differenceSigmaIn(stake.point, source.point, tape);
  const u = direction(source.point.at, stake.point.at, d);
  const response = Math.min(...slipDirections(stake).map((e) => Math.abs(u.x * e.x + u.y * e.y)));
  return response > 0 ? (DETECTABLE * sigma) / response : Infinity;
}

const direction = (from: Point, to: Point, d: number): Point => ({
  x: (to.x - from.x) / d,
  y: (to.y - from.y) / d,
});

/** Where an inch of slip in each tie moves the stake: the own causes, per unit of reading. */
function slipDirections(stake: SetStake): Point[] {
  const sizes = stake.point.own.map((e) => Math.hypot(e.x, e.y));
  if (stake.set.method === 'line') {
    return stake.point.own.slice(0, 1).map((e) => ({ x: e.x / sizes[0]!, y: e.y / sizes[0]! }));
  }
  const sine = Math.sin((stake.set.intersectionDeg * Math.PI) / 180);
  return stake.point.own.map((e, i) => ({
    x: e.x / (sizes[i]! * sine),
    y: e.y / (sizes[i]! * sine),
  }));
}
