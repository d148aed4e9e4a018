/** Better places to start from when the given ones lead nowhere or into a mirrored shape. */
import { circleIntersection } from '../geometry/arc';
import { pointDistance, pointLerp, pointOrientation, type Point } from '../geometry/point';
import type { State } from './linear-rows';
import { isLineReading, type DistanceReading } from './network-model';
import type { Network, Settled } from './settle-network';

interface Circle {
  readonly centre: Point;
  readonly radius: number;
  readonly sigma: number;
}

/**
 * Places each point where circles about points placed before it cross best, the given start value
 * saying only which crossing is meant where no third circle does. Points without two circles stay.
 */
export function trilaterate(net: Network, given: State): State {
  const at = new Map(given.at);
  const placed = new Set(
    net.points.filter((p) => p.fixed === true || p.covariance).map((p) => p.id),
  );
  const distances = net.readings.filter((r): r is DistanceReading => !isLineReading(r));
  if (placed.size < 2) for (const id of firstBase(net, distances, at)) placed.add(id);
  for (let before = -1; before !== placed.size;) {
    before = placed.size;
    for (const p of net.points) {
      if (placed.has(p.id)) continue;
      const circles = circlesAbout(p.id, distances, placed, at);
      const crossing = circles.length > 1 ? bestCrossing(circles, at.get(p.id)!) : null;
      if (!crossing) continue;
      at.set(p.id, crossing);
      placed.add(p.id);
    }
  }
  return { at, scale: given.scale };
}

/** Without two known points: the longest reading from a known one (or any), laid toward its start. */
function firstBase(
  net: Network,
  distances: readonly DistanceReading[],
  at: Map<string, Point>,
): readonly string[] {
  const known = new Set(
    net.points.filter((p) => p.fixed === true || p.covariance).map((p) => p.id),
  );
  const touching = distances.filter((r) => known.has(r.from) || known.has(r.to));
  const among = touching.length > 0 ? touching : distances;
  const base = among.reduce<DistanceReading | null>(
    (best, r) => (best && best.distance >= r.distance ? best : r),
    null,
  );
  if (!base) return [];
  const [from, to] = known.has(base.to) ? [base.to, base.from] : [base.from, base.to];
  const a = at.get(from)!;
  const apart = pointDistance(a, at.get(to)!);
  if (apart > 0) at.set(to, pointLerp(a, at.get(to)!, base.distance / apart));
  return [from, to];
}

function circlesAbout(
  id: string,
  distances: readonly DistanceReading[],
  placed: ReadonlySet<string>,
  at: ReadonlyMap<string, Point>,
): Circle[] {
  return distances.flatMap((r) => {
    const other = r.from === id ? r.to : r.to === id ? r.from : null;
    if (other === null || !placed.has(other)) return [];
    return [{ centre: at.get(other)!, radius: r.distance, sigma: r.sigma }];
  });
}

/** The crossing of any two circles that all of them like best; nearness to `near` decides ties. */
function bestCrossing(circles: readonly Circle[], near: Point): Point | null {
  let best: Point | null = null;
  let least = Infinity;
  for (const [i, a] of circles.entries()) {
    for (const b of circles.slice(0, i)) {
      for (const p of crossings(a, b)) {
        const misfit = circles.length > 2 ? misfitAt(circles, p) : 0;
        const rank = misfit + pointDistance(p, near) / (a.radius + b.radius) / (circles.length - 1);
        if (rank < least) {
          least = rank;
          best = p;
        }
      }
    }
  }
  return best;
}

/** A single circle that is far off must not decide: misfits count by their size, not its square. */
const misfitAt = (circles: readonly Circle[], p: Point): number =>
  circles.reduce((sum, c) => sum + Math.abs(pointDistance(c.centre, p) - c.radius) / c.sigma, 0);

/** Both crossings; circles that miss each other give the place between them. */
function crossings(a: Circle, b: Circle): Point[] {
  const meet = circleIntersection(a.centre, a.radius, b.centre, b.radius);
  if (meet) return [meet.left, meet.right];
  const apart = pointDistance(a.centre, b.centre);
  if (!(apart > 0)) return [];
  const outside = apart > a.radius + b.radius;
  const far = outside
    ? apart - b.radius
    : a.radius > b.radius
      ? apart + b.radius
      : b.radius - apart;
  const sign = outside || a.radius > b.radius ? 1 : -1;
  return [pointLerp(a.centre, b.centre, (sign * (a.radius + sign * far)) / 2 / apart)];
}

/** The given state pushed along the directions that were found open, each way. */
export function nudged(net: Network, settled: Settled): State[] {
  const push = net.extent / 10;
  return [push, -push].map((size) => {
    const at = new Map(settled.state.at);
    for (const direction of settled.loose) {
      for (const [id, [x, y]] of net.unknowns.points) {
        const p = at.get(id)!;
        at.set(id, {
          x: p.x + (x < 0 ? 0 : direction[x]! * size),
          y: p.y + (y < 0 ? 0 : direction[y]! * size),
        });
      }
    }
    return { at, scale: settled.state.scale };
  });
}

/** One point moved to the other side of the line through two of the points it is tied to. */
export function mirrored(net: Network, state: State, id: string): State | null {
  const p = state.at.get(id)!;
  const ends = net.readings.flatMap((r) => {
    if (isLineReading(r)) return [];
    return r.from === id ? [r.to] : r.to === id ? [r.from] : [];
  });
  const [a, b] = [...new Set(ends)].map((e) => state.at.get(e)!);
  if (!a || !b) return null;
  const length = pointDistance(a, b);
  if (!(length > 0)) return null;
  const off = pointOrientation(a, b, p) / length;
  const left = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const at = new Map(state.at);
  at.set(id, { x: p.x - 2 * off * left.x, y: p.y - 2 * off * left.y });
  return { at, scale: state.scale };
}
