/** The order of work as a safety rule, read from the legs alone. */
import type { Pair, RouteLeg } from './raster';

const AFTER_COUNT = ['graphic', 'edge', 'border'];

/**
 * Every breach: a powered leg of phase graphic, edge or border in the set-out area before the count
 * is over, any powered leg in it while stakes stand, machines whose counts differ, or no count.
 */
export function findOrderBreaches(
  legs: readonly RouteLeg[],
  powered: readonly string[],
  graphic: readonly Pair[],
  marginFt: number,
): string[] {
  const holds = legs.filter((leg) => leg.kind === 'hold');
  const first = holds[0];
  if (!first) return ['there is no count'];
  const out: string[] = [];
  const machines = [...new Set(legs.map((leg) => leg.machine))];
  for (const machine of machines) {
    const own = holds.filter((leg) => leg.machine === machine);
    const same = own[0]?.start_s === first.start_s && own[0].seconds === first.seconds;
    if (own.length !== 1 || !same) out.push(`${machine} does not wait for the count`);
  }
  const [opens, closes] = [first.start_s, first.start_s + first.seconds];
  const hull = wrap(graphic);
  for (const leg of legs) {
    if (!powered.includes(leg.machine) || leg.kind === 'hold') continue;
    const before = leg.start_s < closes - 0.001;
    if (!before || !pieces(leg).some((p) => isNear(hull, p, marginFt))) continue;
    const during = leg.start_s + leg.seconds > opens + 0.001;
    if (during) out.push(`leg ${leg.seq} is in the set-out area while stakes stand`);
    else if (AFTER_COUNT.includes(leg.phase)) {
      out.push(`leg ${leg.seq} (${leg.phase}) comes before the count`);
    }
  }
  return out;
}

/** Points along a leg, 2 ft apart. */
function pieces(leg: RouteLeg): Pair[] {
  const out: Pair[] = [...leg.points];
  for (let i = 1; i < leg.points.length; i++) {
    const [[ax, ay], [bx, by]] = [leg.points[i - 1]!, leg.points[i]!];
    const n = Math.ceil(Math.hypot(bx - ax, by - ay) / 2);
    for (let k = 1; k < n; k++) out.push([ax + ((bx - ax) * k) / n, ay + ((by - ay) * k) / n]);
  }
  return out;
}

/** Convex hull by gift wrapping, counter-clockwise. */
function wrap(points: readonly Pair[]): Pair[] {
  let at = points.reduce((a, b) => (b[0] < a[0] || (b[0] === a[0] && b[1] < a[1]) ? b : a));
  const hull: Pair[] = [];
  do {
    hull.push(at);
    let next = points[0]!;
    for (const p of points) {
      const turn = (next[0] - at[0]) * (p[1] - at[1]) - (next[1] - at[1]) * (p[0] - at[0]);
      const farther =
        Math.hypot(p[0] - at[0], p[1] - at[1]) > Math.hypot(next[0] - at[0], next[1] - at[1]);
      if (next === at || turn < 0 || (turn === 0 && farther)) next = p;
    }
    at = next;
  } while ((at[0] !== hull[0]![0] || at[1] !== hull[0]![1]) && hull.length <= points.length);
  return hull;
}

/** Inside the hull, or within `by` of it. */
function isNear(hull: readonly Pair[], [x, y]: Pair, by: number): boolean {
  let inside = true;
  let nearest = Infinity;
  hull.forEach(([ax, ay], i) => {
    const [bx, by2] = hull[(i + 1) % hull.length]!;
    const [dx, dy] = [bx - ax, by2 - ay];
    if (dx * (y - ay) - dy * (x - ax) < 0) inside = false;
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    nearest = Math.min(nearest, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  });
  return inside || nearest <= by;
}
