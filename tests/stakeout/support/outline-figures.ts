/** The figures that an outline of a word is held to, from its printed plan by code of its own. */
import type { Region } from '../../../src/geometry/region';
import type { StakePlan } from '../../../src/stakeout/model';
import { traceContour } from '../../../src/stakeout/trace';
import { douglasPeuckerSegments } from '../../support/douglas-peucker';
import { exactChain } from '../../support/exact-chain';
import { densify, drawOutline, farthest, readText, setOut, type Place } from './crew';

export interface OutlineFigures {
  readonly gapIn: number;
  /** Of pieces to a Douglas–Peucker chain with the same tolerance. */
  readonly toDouglasPeucker: number;
  readonly toGrid: number;
  readonly closestIn: number;
  readonly shortestSwingFt: number;
  readonly crossings: number;
}

const pieces = (plan: StakePlan) => plan.contours.flatMap((c) => c.pieces);

export function outlineFigures(
  plan: StakePlan,
  graphic: Region,
  toleranceIn: number,
): OutlineFigures {
  const at = setOut(plan);
  const drawn = drawOutline(plan, at);
  const art = graphic.flatMap((ring) => densify(ring));
  const flat = drawn.flat();
  const chain = graphic.reduce(
    (sum, ring) =>
      sum +
      douglasPeuckerSegments(
        ring.map((p) => [p.x, p.y]),
        toleranceIn / 12,
      ),
    0,
  );
  const stakes = plan.stakes.filter((s) => s.kind !== 'control');
  return {
    gapIn: 12 * Math.max(farthest(art, flat), farthest(flat, art)),
    toDouglasPeucker: pieces(plan).length / chain,
    toGrid: stakes.length / plan.saving!.gridMarks,
    closestIn: 12 * closest(stakes.map((s) => at.get(s.id)!)),
    shortestSwingFt: Math.min(
      ...pieces(plan).flatMap((p) => ('radius' in p ? [readText(p.radius.text)] : [])),
    ),
    crossings: countCrossings(drawn),
  };
}

function closest(places: readonly Place[]): number {
  let least = Infinity;
  places.forEach(([x, y], i) => {
    for (const [u, v] of places.slice(0, i)) least = Math.min(least, Math.hypot(x - u, y - v));
  });
  return least;
}

/** Edges no further apart along a drawn line (0.7 ft to either side) meet at one stake, where a swing may step. */
const NEIGHBOURS = 32;

/** Proper crossings of drawn edges, a swing's step beside a common stake left out. Buckets of a foot. */
export function countCrossings(rings: readonly (readonly Place[])[]): number {
  const edges = rings.flatMap((ring, r) =>
    ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, r, i, n: ring.length })),
  );
  const buckets = new Map<string, DrawnEdge[]>();
  for (const e of edges) {
    const key = `${Math.floor((e.a[0] + e.b[0]) / 2)} ${Math.floor((e.a[1] + e.b[1]) / 2)}`;
    buckets.set(key, [...(buckets.get(key) ?? []), e]);
  }
  let count = 0;
  for (const [key, own] of buckets) {
    const [cx, cy] = key.split(' ').map(Number) as [number, number];
    for (const dx of [-1, 0, 1]) {
      for (const dy of [-1, 0, 1]) {
        const near = buckets.get(`${cx + dx} ${cy + dy}`) ?? [];
        for (const e of own)
          count += near.filter((f) => !areNeighbours(e, f) && crosses(e, f)).length;
      }
    }
  }
  return count / 2;
}

interface DrawnEdge {
  readonly a: Place;
  readonly b: Place;
  readonly r: number;
  readonly i: number;
  readonly n: number;
}

function areNeighbours(e: DrawnEdge, f: DrawnEdge): boolean {
  const apart = Math.abs(e.i - f.i);
  return e.r === f.r && Math.min(apart, e.n - apart) <= NEIGHBOURS;
}

function crosses({ a, b }: DrawnEdge, { a: c, b: d }: DrawnEdge): boolean {
  const side = (p: Place, q: Place, r: Place) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** From the catalogue's minutes by hand (docs/hours.md): 4.85 a stake, 2.65 one of the short tape. */
const PRICES = { string: 6.75, stringPerFt: 0.1, bend: 7.25, nearSwing: 10.9, farSwing: 13.1 };

/** Fewest pieces by exhaustive search over every contour, arcs sampled; links up to `reachFt` long. */
export function exactPieces(graphic: Region, toleranceIn: number, reachFt: number): number {
  return graphic.reduce((sum, ring, i) => {
    const t = traceContour(ring, i);
    const contour = { x: t.x, y: t.y, corner: t.corners, count: t.count };
    return sum + exactChain(contour, (toleranceIn - 0.1) / 12, PRICES, 40, reachFt).links;
  }, 0);
}
