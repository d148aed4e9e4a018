/**
 * The cheapest assignment of a successor to every node: a lower bound of every tour, and a start for
 * one. Shortest augmenting paths after column reduction and reduction transfer (R. Jonker and
 * A. Volgenant, Computing 38, 1987).
 */
import type { CostMatrix } from './model';

export interface Assignment {
  readonly cost: number;
  /** The node after each; never itself. */
  readonly next: Int32Array;
  /** Dual values: cost(i, j) − row(i) − column(j) is not negative, and 0 where j follows i. */
  readonly row: Float64Array;
  readonly column: Float64Array;
}

const NONE = -1;

interface Work {
  readonly n: number;
  readonly cost: Float64Array;
  readonly row: Float64Array;
  readonly column: Float64Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
}

/** Nodes of a matrix of two or more. O(n³), in practice less. */
export function cheapestAssignment(matrix: CostMatrix): Assignment {
  const w = withoutDiagonal(matrix);
  reduceColumns(w);
  transferReductions(w);
  const search = newSearch(w.n);
  for (let i = 0; i < w.n; i++) if (w.next[i] === NONE) augment(w, search, i);
  settleRows(w);
  let cost = 0;
  for (let i = 0; i < w.n; i++) cost += w.cost[i * w.n + w.next[i]!]!;
  return { cost, next: w.next, row: w.row, column: w.column };
}

/** A node never follows itself: its own cost is more than any assignment's. */
function withoutDiagonal({ count: n, cost }: CostMatrix): Work {
  const own = cost.slice();
  let most = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) if (i !== j) most = Math.max(most, cost[i * n + j]!);
  for (let i = 0; i < n; i++) own[i * n + i] = (most + 1) * (n + 1);
  return {
    n,
    cost: own,
    row: new Float64Array(n),
    column: new Float64Array(n),
    next: new Int32Array(n).fill(NONE),
    before: new Int32Array(n).fill(NONE),
  };
}

function reduceColumns({ n, cost, column, next, before }: Work): void {
  for (let j = n - 1; j >= 0; j--) {
    let least = 0;
    for (let i = 1; i < n; i++) if (cost[i * n + j]! < cost[least * n + j]!) least = i;
    column[j] = cost[least * n + j]!;
    if (next[least] !== NONE) continue;
    next[least] = j;
    before[j] = least;
  }
}

/** What an assigned row could give up without losing its column lowers that column. */
function transferReductions({ n, cost, column, next }: Work): void {
  for (let i = 0; i < n; i++) {
    const own = next[i]!;
    if (own === NONE) continue;
    let least = Infinity;
    for (let j = 0; j < n; j++) {
      if (j !== own) least = Math.min(least, cost[i * n + j]! - column[j]!);
    }
    if (least > 0 && least < Infinity) column[own]! -= least;
  }
}

interface Search {
  readonly distance: Float64Array;
  readonly parent: Int32Array;
  readonly done: Uint8Array;
  /** Columns in the order in which they were reached for good. */
  readonly reached: Int32Array;
}

const newSearch = (n: number): Search => ({
  distance: new Float64Array(n),
  parent: new Int32Array(n),
  done: new Uint8Array(n),
  reached: new Int32Array(n),
});

/** Dijkstra from a free row to the nearest free column; then prices and assignments follow. */
function augment(w: Work, s: Search, free: number): void {
  const { n, cost, column } = w;
  for (let j = 0; j < n; j++) {
    s.distance[j] = cost[free * n + j]! - column[j]!;
    s.parent[j] = free;
    s.done[j] = 0;
  }
  let count = 0;
  let end = nearest(s, n);
  for (; w.before[end] !== NONE; end = nearest(s, n)) {
    s.done[end] = 1;
    s.reached[count++] = end;
    relax(w, s, end);
  }
  const far = s.distance[end]!;
  for (let k = 0; k < count; k++) {
    const j = s.reached[k]!;
    column[j]! += s.distance[j]! - far;
  }
  assignAlong(w, s, free, end);
}

function nearest(s: Search, n: number): number {
  let best = NONE;
  for (let j = 0; j < n; j++) {
    if (!s.done[j] && (best === NONE || s.distance[j]! < s.distance[best]!)) best = j;
  }
  return best;
}

function relax({ n, cost, column, before }: Work, s: Search, through: number): void {
  const i = before[through]!;
  const base = s.distance[through]! - (cost[i * n + through]! - column[through]!);
  for (let j = 0; j < n; j++) {
    if (s.done[j]) continue;
    const d = base + cost[i * n + j]! - column[j]!;
    if (d >= s.distance[j]!) continue;
    s.distance[j] = d;
    s.parent[j] = i;
  }
}

function assignAlong({ next, before }: Work, s: Search, free: number, end: number): void {
  for (let j = end; ;) {
    const i = s.parent[j]!;
    const passedOn = next[i]!;
    next[i] = j;
    before[j] = i;
    if (i === free) return;
    j = passedOn;
  }
}

function settleRows({ n, cost, row, column, next }: Work): void {
  for (let i = 0; i < n; i++) row[i] = cost[i * n + next[i]!]! - column[next[i]!]!;
}
