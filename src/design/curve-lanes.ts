/**
 * Passes along curves, cut to their band and to the grass. A pass runs as far as its share of the band
 * reaches at any place across it, so that slanted ends leave no wedge, and never where its cut would
 * stand off the grass.
 */
import type { Feet } from '../base/units';
import { boxGrow, type Box } from '../geometry/box';
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import { polylineBetween, type Polyline } from '../geometry/polyline';
import { regionBox, type Region } from '../geometry/region';
import { indexRegion, type RegionIndex } from '../geometry/region-index';
import { JOIN_GAP, SHORTEST, SIDE_GUARD } from './lay-lanes';

/** Distance of the places looked at along a curve, and how exactly its ends are found. */
const STEP: Feet = 1;
const EXACT: Feet = 0.01;
/** Places looked at across a cut. */
const ACROSS = [-1, -0.5, 0, 0.5, 1] as const;

interface Widths {
  readonly swathFt: Feet;
  readonly cutFt: Feet;
}

export interface CurveLane {
  readonly line: Polyline;
  /** It closes on itself, first point repeated. */
  readonly closed: boolean;
}

/** The parts of `line` that mow `region`; a closed line that is needed all round stays closed. */
export function curveLanes(
  line: Polyline,
  closed: boolean,
  region: Region,
  grass: RegionIndex,
  { swathFt, cutFt }: Widths,
): CurveLane[] {
  const box = regionBox(region);
  if (!box || line.length < 2) return [];
  const wanted = indexRegion(region);
  const half = swathFt / 2 - SIDE_GUARD;
  const near = boxGrow(box, half);
  const cut = cutFt / 2 - SIDE_GUARD;
  const walk = new Walk(line);
  const touches = (s: Feet) => walk.touches(s, half, near, wanted);
  const free = (s: Feet) => walk.standsFree(s, cut, grass);
  const reach = joinShort(stretches(walk.length, touches), closed ? walk.length : null);
  const whole = reach.length === 1 && reach[0]!.from === 0 && reach[0]!.to === walk.length;
  const parts = reach.flatMap((r) => stretchesWithin(r, free));
  if (closed && whole && parts.length === 1 && parts[0]!.to - parts[0]!.from >= walk.length) {
    return [{ line, closed: true }];
  }
  const joined = closed ? joinOverStart(parts, walk.length) : parts;
  return joined
    .filter((part) => part.to - part.from >= SHORTEST)
    .map((part) => ({ line: walk.between(part.from, part.to), closed: false }));
}

interface Stretch {
  readonly from: Feet;
  readonly to: Feet;
}

/** A curve by distance along it; a closed one may be asked beyond its end. */
class Walk {
  readonly length: Feet;
  private readonly line: Polyline;
  private readonly at: number[] = [0];
  private piece = 1;

  constructor(line: Polyline) {
    this.line = line.filter((p, i) => i === 0 || pointDistance(p, line[i - 1]!) > 0);
    for (let i = 1; i < this.line.length; i++) {
      this.at.push(this.at[i - 1]! + pointDistance(this.line[i - 1]!, this.line[i]!));
    }
    this.length = this.at[this.at.length - 1]!;
  }

  touches(s: Feet, half: Feet, near: Box, wanted: RegionIndex): boolean {
    const { p, d } = this.pose(s);
    if (p.x < near.minX || p.x > near.maxX || p.y < near.minY || p.y > near.maxY) return false;
    return ACROSS.some((k) =>
      wanted.contains({ x: p.x - d.y * half * k, y: p.y + d.x * half * k }),
    );
  }

  standsFree(s: Feet, half: Feet, grass: RegionIndex): boolean {
    const { p, d } = this.pose(s);
    return ACROSS.every((k) =>
      grass.contains({ x: p.x - d.y * half * k, y: p.y + d.x * half * k }),
    );
  }

  /** The line between two distances; `to` may lie beyond the end of a closed line. */
  between(from: Feet, to: Feet): Point[] {
    if (to <= this.length) return polylineBetween(this.line, from, to);
    const first = polylineBetween(this.line, from, this.length);
    return [...first.slice(0, -1), ...polylineBetween(this.line, 0, to - this.length)];
  }

  private pose(s: Feet): { readonly p: Point; readonly d: Point } {
    let i = s < this.at[this.piece - 1]! ? 1 : this.piece;
    while (i < this.at.length - 1 && this.at[i]! < s) i++;
    this.piece = i;
    const [a, b] = [this.line[i - 1]!, this.line[i]!];
    const length = this.at[i]! - this.at[i - 1]!;
    return {
      p: pointLerp(a, b, (s - this.at[i - 1]!) / length),
      d: { x: (b.x - a.x) / length, y: (b.y - a.y) / length },
    };
  }
}

const stretches = (length: Feet, holds: (s: Feet) => boolean): Stretch[] =>
  stretchesWithin({ from: 0, to: length }, holds);

/** Where `holds` is true, its ends found to `EXACT`. */
function stretchesWithin(within: Stretch, holds: (s: Feet) => boolean): Stretch[] {
  const out: Stretch[] = [];
  const steps = Math.max(1, Math.ceil((within.to - within.from) / STEP));
  let before = within.from;
  let was = holds(before);
  let open: Feet | null = was ? before : null;
  for (let i = 1; i <= steps; i++) {
    const s = i === steps ? within.to : within.from + i * STEP;
    const is = holds(s);
    if (is && !was) open = border(before, s, holds);
    if (!is && was && open !== null) out.push({ from: open, to: border(s, before, holds) });
    was = is;
    before = s;
  }
  if (was && open !== null) out.push({ from: open, to: within.to });
  return out;
}

/** The last place that holds, between one that does not and one that does. */
function border(bad: Feet, good: Feet, holds: (s: Feet) => boolean): Feet {
  let [low, high] = [bad, good];
  while (Math.abs(high - low) > EXACT) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Short gaps are mown through; on a closed line also the one over its start. */
function joinShort(list: readonly Stretch[], round: Feet | null): Stretch[] {
  const out: Stretch[] = [];
  for (const next of list) {
    const last = out[out.length - 1];
    if (last && next.from - last.to < JOIN_GAP) out[out.length - 1] = { ...last, to: next.to };
    else out.push(next);
  }
  const [first, last] = [out[0], out[out.length - 1]];
  if (round === null || !first || !last) return out;
  const gap = first.from + round - last.to;
  if (gap >= JOIN_GAP) return out;
  out[0] = { ...out[0]!, from: 0 };
  out[out.length - 1] = { ...out[out.length - 1]!, to: round };
  return out;
}

/** Two parts that meet at the start of a closed line are one, running over it. */
function joinOverStart(parts: readonly Stretch[], round: Feet): Stretch[] {
  const [first, last] = [parts[0], parts[parts.length - 1]];
  if (parts.length < 2 || first!.from > 0 || last!.to < round) return [...parts];
  return [...parts.slice(1, -1), { from: last!.from, to: round + first!.to }];
}
