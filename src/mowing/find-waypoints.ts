/** A way round the skin for a machine: lattice search, then only the corners that are needed. */
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import type { Pose } from './drive';
import { clearanceAt, type DriveGround } from './drive-ground';

/** Lattice step, feet, and room wanted about the body on the way. */
const STEP = 4;
const ROOM = 2;
/** A straight way longer than this is given a waypoint in its middle. */
const LONG = 60;

/**
 * Poses between `from` and `to` from which each next one can be seen with `reach` + 2 ft of clear
 * ground on either side; empty when `to` is near and can be seen, null when there is no way. The
 * shortest way on a 4-ft lattice (Dijkstra 1959) pulled tight.
 */
export function findWaypoints(
  ground: DriveGround,
  reach: number,
  from: Pose,
  to: Pose,
): Pose[] | null {
  const clear = (p: Point) => clearanceAt(ground, p) >= reach + ROOM;
  const lattice = makeLattice(ground, clear);
  const start = nearestNode(lattice, from);
  const goal = nearestNode(lattice, to);
  if (start < 0 || goal < 0) return null;
  const chain = shortestChain(lattice, start, goal);
  if (!chain) return null;
  const tight = pullTight(
    chain.map((n) => nodeAt(lattice, n)),
    clear,
  );
  return facing([from, ...corners(tight), to]);
}

/** The corners of a tight way without its ends; the middle of a long straight one. */
function corners(tight: readonly Point[]): readonly Point[] {
  if (tight.length > 2) return tight.slice(1, -1);
  const [a, b] = [tight[0]!, tight[tight.length - 1]!];
  return pointDistance(a, b) > LONG ? [pointLerp(a, b, 0.5)] : [];
}

interface Lattice {
  readonly columns: number;
  readonly rows: number;
  readonly x: number;
  readonly y: number;
  readonly open: Uint8Array;
}

function makeLattice(ground: DriveGround, clear: (p: Point) => boolean): Lattice {
  const { minX, minY, maxX, maxY } = ground.box;
  const columns = Math.floor((maxX - minX) / STEP) + 1;
  const rows = Math.floor((maxY - minY) / STEP) + 1;
  const open = new Uint8Array(columns * rows);
  const lattice = { columns, rows, x: minX, y: minY, open };
  for (let n = 0; n < open.length; n++) open[n] = clear(nodeAt(lattice, n)) ? 1 : 0;
  return lattice;
}

const nodeAt = (lattice: Lattice, n: number): Point => ({
  x: lattice.x + (n % lattice.columns) * STEP,
  y: lattice.y + Math.floor(n / lattice.columns) * STEP,
});

function nearestNode(lattice: Lattice, p: Point): number {
  let best = -1;
  let nearest = Infinity;
  for (let n = 0; n < lattice.open.length; n++) {
    const d = lattice.open[n] ? pointDistance(nodeAt(lattice, n), p) : Infinity;
    if (d < nearest) {
      nearest = d;
      best = n;
    }
  }
  return best;
}

const MOVES: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

function neighbours(lattice: Lattice, n: number): number[] {
  const column = n % lattice.columns;
  const row = (n - column) / lattice.columns;
  const out: number[] = [];
  for (const [dc, dr] of MOVES) {
    const c = column + dc;
    const r = row + dr;
    if (c < 0 || r < 0 || c >= lattice.columns || r >= lattice.rows) continue;
    const next = r * lattice.columns + c;
    if (lattice.open[next]) out.push(next);
  }
  return out;
}

function shortestChain(lattice: Lattice, start: number, goal: number): number[] | null {
  const cost = new Float64Array(lattice.open.length).fill(Infinity);
  const before = new Int32Array(lattice.open.length).fill(-1);
  const heap: [number, number][] = [[0, start]];
  cost[start] = 0;
  for (let top = heapPop(heap); top; top = heapPop(heap)) {
    const [d, n] = top;
    if (n === goal) return chainTo(before, goal);
    if (d > cost[n]!) continue;
    const here = nodeAt(lattice, n);
    for (const next of neighbours(lattice, n)) {
      const through = d + pointDistance(here, nodeAt(lattice, next));
      if (through >= cost[next]!) continue;
      cost[next] = through;
      before[next] = n;
      heapPush(heap, [through, next]);
    }
  }
  return null;
}

function chainTo(before: Int32Array, goal: number): number[] {
  const chain: number[] = [];
  for (let n = goal; n >= 0; n = before[n]!) chain.push(n);
  return chain.reverse();
}

function heapPush(heap: [number, number][], item: [number, number]): void {
  let i = heap.push(item) - 1;
  while (i > 0) {
    const parent = (i - 1) >> 1;
    if (heap[parent]![0] <= item[0]) break;
    heap[i] = heap[parent]!;
    i = parent;
  }
  heap[i] = item;
}

function heapPop(heap: [number, number][]): [number, number] | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (!top || !last || heap.length === 0) return top;
  let i = 0;
  for (;;) {
    let child = 2 * i + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && heap[child + 1]![0] < heap[child]![0]) child++;
    if (heap[child]![0] >= last[0]) break;
    heap[i] = heap[child]!;
    i = child;
  }
  heap[i] = last;
  return top;
}

/** Keeps a corner only where the straight on from the last kept one would come too near an edge. */
function pullTight(chain: readonly Point[], clear: (p: Point) => boolean): Point[] {
  const kept: Point[] = [chain[0]!];
  let i = 0;
  while (i < chain.length - 1) {
    let next = i + 1;
    for (let j = chain.length - 1; j > i + 1; j--) {
      if (sees(chain[i]!, chain[j]!, clear)) {
        next = j;
        break;
      }
    }
    kept.push(chain[next]!);
    i = next;
  }
  return kept;
}

function sees(a: Point, b: Point, clear: (p: Point) => boolean): boolean {
  const steps = Math.ceil(pointDistance(a, b) / 2);
  for (let i = 1; i < steps; i++) if (!clear(pointLerp(a, b, i / steps))) return false;
  return true;
}

/** The inner points, each facing from the one before it toward the one after. */
function facing(points: readonly Point[]): Pose[] {
  return points.slice(1, -1).map((p, i) => {
    const before = points[i]!;
    const after = points[i + 2]!;
    return { x: p.x, y: p.y, heading: Math.atan2(after.y - before.y, after.x - before.x) };
  });
}
