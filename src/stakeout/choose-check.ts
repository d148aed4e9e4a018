/** The third reading that proves a stake. */
import { roundReading, type LengthSystem } from '../base/quantity';
import { differenceSigmaIn, type PrecisePoint } from '../adjust/precise-point';
import { DETECTABLE } from '../adjust/reliability';
import { inches } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { CHECK_SIGMAS } from './limits';
import type { Check } from './model';
import { showsMixUps } from './short-mix-ups';
import type { HeldTape } from './tapes';
import type { SetStake } from './ties';
import { isShort, methodControls } from './ties';

/** Something a check can be pulled from. */
export interface CheckSource {
  readonly id: string;
  readonly point: PrecisePoint;
  readonly isControl: boolean;
}

/** A check from a control is preferred while it finds slips of a foot. */
const CONTROL_GOOD_IN = 12;
/** A tape shorter than this to a neighbour proves little and gets in the way. */
const SHORTEST_CHECK_FT = 4;

/** Slips that must not be lost on the far side of the mark checked from, inches: one, two, five feet. */
const LARGE_SLIPS_IN = [12, 24, 60] as const;
/** A source that loses one is taken when all do. */
const LOST = 1_000_000;

/**
 * The source whose reading would show the smallest slip in either tie; a control when one is good
 * enough, since a neighbour cannot see what it shares. One that would lose a larger slip is passed
 * over while another serves. Null when nothing is in reach.
 */
export function chooseCheck(
  stake: SetStake,
  sources: readonly CheckSource[],
  tape: HeldTape,
  system: LengthSystem,
): Check | null {
  const used = methodControls(stake.set);
  let best: CheckSource | null = null;
  let least = Infinity;
  for (const source of sources) {
    if (used.includes(source.id)) continue;
    const slip = detectableSlipIn(stake, source, tape);
    if (slip === Infinity || !provesShort(stake, source, slip, tape)) continue;
    const good = source.isControl && slip <= CONTROL_GOOD_IN ? slip - CONTROL_GOOD_IN : slip;
    if (good >= least) continue;
    const rank = losesSlip(stake, source, slip, tape) ? good + LOST : good;
    if (rank < least) {
      least = rank;
      best = source;
    }
  }
  return best && readCheck(stake, best, tape, system);
}

/** A short-tape stake is only set that way while its check shows slips of a foot and mix-ups. */
const provesShort = (stake: SetStake, source: CheckSource, slip: number, tape: HeldTape): boolean =>
  !isShort(stake.set) || (slip <= CONTROL_GOOD_IN && showsMixUps(stake, source.point, tape));

/** Whether a reading from there proves a short-tape stake. */
export function checkServes(stake: SetStake, source: CheckSource, tape: HeldTape): boolean {
  if (methodControls(stake.set).includes(source.id)) return false;
  const slip = detectableSlipIn(stake, source, tape);
  return slip < Infinity && provesShort(stake, source, slip, tape);
}

function readCheck(
  stake: SetStake,
  source: CheckSource,
  tape: HeldTape,
  system: LengthSystem,
): Check {
  return {
    from: source.id,
    reading: roundReading(pointDistance(stake.point.at, source.point.at), system),
    ...(tape.held === undefined ? {} : { tape: tape.held }),
    limitIn: CHECK_SIGMAS * differenceSigmaIn(stake.point, source.point, tape),
  };
}

/** The larger of the slips, inches, that the reading would just show in either tie. */
function detectableSlipIn(stake: SetStake, source: CheckSource, tape: HeldTape): number {
  const d = pointDistance(stake.point.at, source.point.at);
  if (d > tape.limitFt - 0.05 || d < SHORTEST_CHECK_FT) return Infinity;
  const sigma = differenceSigmaIn(stake.point, source.point, tape);
  const u = direction(source.point.at, stake.point.at, d);
  const response = Math.min(...slipDirections(stake).map((e) => Math.abs(u.x * e.x + u.y * e.y)));
  return response > 0 ? (DETECTABLE * sigma) / response : Infinity;
}

/**
 * Whether a slip larger than `shown`, the smallest one shown near by, hides all the same: it carries the
 * stake past the mark to a place as far from it as before.
 */
function losesSlip(stake: SetStake, source: CheckSource, shown: number, tape: HeldTape): boolean {
  const { at } = stake.point;
  const from = source.point.at;
  const right = pointDistance(at, from);
  const least = inches(DETECTABLE * differenceSigmaIn(stake.point, source.point, tape));
  return slipDirections(stake).some((e) =>
    LARGE_SLIPS_IN.filter((size) => size >= shown).some((size) =>
      [inches(size), -inches(size)].some((by) => {
        const slipped = { x: at.x + by * e.x, y: at.y + by * e.y };
        return Math.abs(pointDistance(slipped, from) - right) < least;
      }),
    ),
  );
}

const direction = (from: Point, to: Point, d: number): Point => ({
  x: (to.x - from.x) / d,
  y: (to.y - from.y) / d,
});

/** Where an inch of slip in each tie moves the stake: the own causes, per unit of reading. */
function slipDirections(stake: SetStake): Point[] {
  const sizes = stake.point.own.map((e) => Math.hypot(e.x, e.y));
  if (isShort(stake.set)) {
    return stake.point.own.slice(0, 2).map((e, i) => ({ x: e.x / sizes[i]!, y: e.y / sizes[i]! }));
  }
  if (stake.set.method !== 'ties') {
    return stake.point.own.slice(0, 1).map((e) => ({ x: e.x / sizes[0]!, y: e.y / sizes[0]! }));
  }
  const sine = Math.sin((stake.set.intersectionDeg * Math.PI) / 180);
  return stake.point.own.map((e, i) => ({
    x: e.x / (sizes[i]! * sine),
    y: e.y / (sizes[i]! * sine),
  }));
}
