/** Driving over finished patches against their lay: what it costs, and how far it is in a route. */
import type { Feet, Seconds } from '../base/units';
import type { Polyline } from '../geometry/polyline';
import type { FinishedLays } from './finished-lays';
import type { Leg, Pass } from './model';

/** Seconds that one foot over finished grass against its lay is taken to be worth; assumption. */
export const OVER_LAY_SECONDS_PER_FT = 0.2;

/** No more than this for a foot: then a machine rather drives all round the park. */
export const MOST_OVER_LAY_SECONDS = 10;

export interface OverLay {
  readonly lays: FinishedLays;
  readonly secondsPerFt: number;
}

const feetAgainst = (
  lays: FinishedLays,
  way: Polyline,
  isFinished: (patch: string) => boolean,
): Feet => lays.against(way).reduce((n, a) => (isFinished(a.patch) ? n + a.feet : n), 0);

/** Feet of the legs, reels up or down, over patches whose last pass of the visit is down, against their lay. */
export function overLayFt(lays: FinishedLays, passes: readonly Pass[], legs: readonly Leg[]): Feet {
  const patchOf = new Map(passes.map((p) => [`${p.machine} ${p.number}`, p.patch]));
  const finished = new Map<string, Seconds>();
  for (const leg of legs) {
    const patch = leg.pass === null ? undefined : patchOf.get(`${leg.machine} ${leg.pass}`);
    if (patch === undefined) continue;
    finished.set(patch, Math.max(finished.get(patch) ?? 0, leg.startS + leg.seconds));
  }
  return legs.reduce(
    (n, leg) =>
      n + feetAgainst(lays, leg.points, (patch) => (finished.get(patch) ?? Infinity) <= leg.startS),
    0,
  );
}
