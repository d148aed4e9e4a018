/** Open ground as a lattice of nodes with eight neighbours each, and the shortest ways over it. */
import type { Feet } from '../base/units';
import type { Box } from '../geometry/box';
import { pointDistance, type Point } from '../geometry/point';
import { clearanceAt, type DriveGround } from './drive-ground';

/** Room wanted about the body on the way, feet; assumption. */
const ROOM = 2;

/** Whether a body of this reach has clear ground about it whichever way it faces. */
export const isOpen = (ground: DriveGround, reach: number, p: Point): boolean =>
  clearanceAt(ground, p) >= reach + ROOM;

export interface Lattice {
  readonly columns: number;
  readonly rows: number;
  readonly x: number;
  readonly y: number;
  readonly step: Feet;
  readonly open: Uint8Array;
}

/** Nodes `step` feet apart over a box; those where `clear` holds are open. */
export function makeLattice(box: Box, step: Feet, clear: (p: Point) => boolean): Lattice {
  const columns = Math.floor((box.maxX - box.minX) / step) + 1;
  const rows = Math.floor((box.maxY - box.minY) / step) + 1;
  const open = new Uint8Array(columns * rows);
  const lattice = { columns, rows, x: box.minX, y: box.minY, step, open };
  for (let n = 0; n < open.length; n++) open[n] = clear(nodeAt(lattice, n)) ? 1 : 0;
  return lattice;
}

export const nodeAt = (lattice: Lattice, n: number): Point => ({
  x: lattice.x + (n % lattice.columns) * lattice.step,
  y: lattice.y + Math.floor(n / lattice.columns) * lattice.step,
});

/** The open node nearest p; −1 when none is open. */
export function nearestNode(lattice: Lattice, p: Point): number {
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

/** Shortest ways from one node: feet to each (Infinity where there is none) and the node before it. */
export interface Spread {
  readonly feet: Float64Array;
  readonly before: Int32Array;
}

/** E. W. Dijkstra, Numerische Mathematik 1, 1959; with a `goal` it ends there. */
export function spreadFrom(lattice: Lattice, start: number, goal = -1): Spread {
  const { columns, step, open } = lattice;
  const feet = new Float64Array(open.length).fill(Infinity);
  const before = new Int32Array(open.length).fill(-1);
  const heap: [number, number][] = [[0, start]];
  feet[start] = 0;
  for (let top = heapPop(heap); top; top = heapPop(heap)) {
    const [d, n] = top;
    if (n === goal) break;
    if (d > feet[n]!) continue;
    const column = n % columns;
    for (let dr = -columns; dr <= columns; dr += columns) {
      for (let dc = -1; dc <= 1; dc++) {
        const next = n + dr + dc;
        const off = column + dc < 0 || column + dc >= columns || next < 0 || next >= open.length;
        if (off || !open[next]) continue;
        const through = d + (dr !== 0 && dc !== 0 ? Math.SQRT2 : 1) * step;
        if (through >= feet[next]!) continue;
        feet[next] = through;
        before[next] = n;
        heapPush(heap, [through, next]);
      }
    }
  }
  return { feet, before };
}

/** The nodes on the way to `goal`, its own included; null where there is none. */
export function chainTo({ feet, before }: Spread, goal: number): number[] | null {
  if (feet[goal] === Infinity) return null;
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
