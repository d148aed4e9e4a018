/** Places where one pin serves several swings, found before pins are placed one by one. */
import { pointDistance, type Point } from '../geometry/point';
import { pinServes, possiblePins } from './choose-pin';
import type { Link } from './chain';
import { LONGEST_SWING_FT, PLANNED_SPACING_FT } from './limits';
import { tracePoint, type Trace } from './trace';

export interface SwingTask {
  readonly trace: Trace;
  readonly tube: Float64Array;
  readonly link: Link;
}

interface Claim {
  readonly at: Point;
  readonly served: readonly number[];
}

/** The shared pin of each swing that has one, by its link. Greedy: the most served first. */
export function sharePins(
  swings: readonly SwingTask[],
  isFree: (p: Point) => boolean,
): Map<Link, Point> {
  const shared = new Map<Link, Point>();
  const claims = swings.flatMap((s, i) => claimsOf(swings, s, i, isFree));
  claims.sort((a, b) => b.served.length - a.served.length);
  const pins: Point[] = [];
  for (const claim of claims) {
    const served = claim.served.filter((i) => !shared.has(swings[i]!.link));
    const apart = pins.every((p) => pointDistance(p, claim.at) >= PLANNED_SPACING_FT);
    if (served.length < 2 || !apart) continue;
    pins.push(claim.at);
    for (const i of served) shared.set(swings[i]!.link, claim.at);
  }
  return shared;
}

function claimsOf(
  swings: readonly SwingTask[],
  swing: SwingTask,
  index: number,
  isFree: (p: Point) => boolean,
): Claim[] {
  const near = swings.flatMap((other, i) => (i !== index && mayMeet(swing, other) ? [i] : []));
  const places = possiblePins(swing.trace, swing.tube, swing.link).filter((_, k) => k % 2 === 0);
  return places.flatMap((at): Claim[] => {
    const served = near.filter((i) => {
      const other = swings[i]!;
      return pinServes(other.trace, other.tube, other.link, at);
    });
    return served.length > 0 && isFree(at) ? [{ at, served: [index, ...served] }] : [];
  });
}

/** Two swings can share a pin only when a tape reaches both. */
const mayMeet = (a: SwingTask, b: SwingTask): boolean =>
  pointDistance(tracePoint(a.trace, a.link.from), tracePoint(b.trace, b.link.from)) <
  2 * LONGEST_SWING_FT;
