/** What one machine does at a moment of the visit, and where it stands. */
import type { Seconds } from '../../base/units';
import { pointDistance, type Point } from '../../geometry/point';
import { polylineAt, polylineLength } from '../../geometry/polyline';
import type { Leg, Machine } from '../../mowing/model';

export type Doing = 'to-come' | 'pass' | 'turning' | 'empty' | 'count' | 'done';

export interface MachineNow {
  readonly machine: Machine;
  readonly doing: Doing;
  /** The leg under way; the first before its start, the last after its end. */
  readonly leg: Leg;
  /** Pass being mown, or the next one. */
  readonly pass: number | null;
  readonly at: Point;
  /** Way it faces, radians counter-clockwise from +x. */
  readonly heading: number;
}

/** The machine at `clockS`; null for one without legs. `legs`: its own, by start. */
export function machineNow(
  machine: Machine,
  legs: readonly Leg[],
  clockS: Seconds,
): MachineNow | null {
  const index = legIndex(legs, clockS);
  const leg = legs[Math.max(0, index)];
  if (!leg) return null;
  const share = shareOf(leg, clockS);
  const at = polylineAt(leg.points, share * polylineLength(leg.points));
  const heading = headingAt(legs, Math.max(0, index), share);
  const pass = leg.kind === 'mow' ? leg.pass : nextPass(legs, index);
  return { machine, doing: doingOf(legs, index, clockS), leg, pass, at, heading };
}

/** Index of the last leg that has begun; −1 before the first. */
export function legIndex(legs: readonly Leg[], clockS: Seconds): number {
  let low = -1;
  let high = legs.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (legs[middle]!.startS <= clockS) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** How far through the leg the clock is, 0 to 1. */
export function shareOf(leg: Leg, clockS: Seconds): number {
  if (leg.seconds <= 0) return 1;
  return Math.min(1, Math.max(0, (clockS - leg.startS) / leg.seconds));
}

const DOING: Readonly<Record<Leg['kind'], Doing>> = {
  mow: 'pass',
  turn: 'turning',
  run: 'empty',
  hold: 'count',
};

function doingOf(legs: readonly Leg[], index: number, clockS: Seconds): Doing {
  const leg = legs[index];
  if (!leg) return 'to-come';
  const isOver = clockS >= leg.startS + leg.seconds;
  if (isOver && index === legs.length - 1) return 'done';
  return DOING[leg.kind];
}

function nextPass(legs: readonly Leg[], index: number): number | null {
  for (let i = Math.max(0, index); i < legs.length; i++) {
    const leg = legs[i]!;
    if (leg.kind === 'mow') return leg.pass;
  }
  return null;
}

/** Along the leg, against it when backing up; a leg that does not move keeps the way of its neighbour. */
function headingAt(legs: readonly Leg[], index: number, share: number): number {
  const own = wayOf(legs[index]!, share);
  if (own !== null) return own;
  for (let i = index - 1; i >= 0; i--) {
    const way = wayOf(legs[i]!, 1);
    if (way !== null) return way;
  }
  for (let i = index + 1; i < legs.length; i++) {
    const way = wayOf(legs[i]!, 0);
    if (way !== null) return way;
  }
  return 0;
}

function wayOf(leg: Leg, share: number): number | null {
  const length = polylineLength(leg.points);
  if (length === 0) return null;
  let left = share * length;
  for (let i = 1; i < leg.points.length; i++) {
    const a = leg.points[i - 1]!;
    const b = leg.points[i]!;
    const piece = pointDistance(a, b);
    if (piece > 0 && (left <= piece || i === leg.points.length - 1)) {
      const way = Math.atan2(b.y - a.y, b.x - a.x);
      return leg.gear === 'reverse' ? way + Math.PI : way;
    }
    left -= piece;
  }
  return null;
}
