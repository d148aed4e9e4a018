/** Gauss-Newton with halved steps, from one set of start values. */
import type { Point } from '../geometry/point';
import { SINGULAR } from '../geometry/tolerance';
import { choleskyFactor, choleskyInverse, choleskySolve, type CholeskyFactor } from './cholesky';
import {
  numberUnknowns,
  priorRows,
  readingRow,
  scaleRow,
  type State,
  type Unknowns,
} from './linear-rows';
import type {
  AdjustOptions,
  LinearRow,
  NetworkPoint,
  NetworkReading,
  TapeScale,
} from './network-model';

/** A network about a local origin, ready to be settled. */
export interface Network {
  readonly points: readonly NetworkPoint[];
  readonly readings: readonly NetworkReading[];
  readonly tapes: readonly TapeScale[];
  readonly unknowns: Unknowns;
  readonly inner: boolean;
  /** Largest distance of a point from the origin. */
  readonly extent: number;
}

export interface Settled {
  readonly state: State;
  readonly rows: readonly LinearRow[];
  readonly chiSquare: number;
  readonly inverse: Float64Array;
  /** Directions in which the readings leave the network open. */
  readonly loose: readonly Float64Array[];
  readonly iterations: number;
  /** False when the steps did not come to an end. */
  readonly done: boolean;
}

const MAX_ITERATIONS = 80;
const MAX_HALVINGS = 12;
/** A step this small against an unknown's own sigma changes nothing that is printed. */
const STEP_OF_SIGMA = 1 / 100_000_000;

/** Numbers the unknowns of points about their own origin. */
export function prepareNetwork(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
  options: AdjustOptions,
): Network {
  const tapes = options.tapes ?? [];
  return {
    points,
    readings,
    tapes,
    unknowns: numberUnknowns(points, tapes, readings),
    inner: options.datum === 'inner',
    extent: Math.max(...points.map((p) => Math.hypot(p.at.x, p.at.y))),
  };
}

/** The points where they are given, tapes of true scale. */
export const givenState = (net: Network): State => ({
  at: new Map(net.points.map((p) => [p.id, p.at])),
  scale: new Map(net.tapes.map((t) => [t.id, 0])),
});

/** Readings first, then two rows per point known beforehand, then one per tape known beforehand. */
export function rowsAt(net: Network, state: State): LinearRow[] {
  return [
    ...net.readings.map((r) => readingRow(r, net.unknowns, state)),
    ...priorPoints(net.points).flatMap((p) => priorRows(p, p.covariance!, net.unknowns, state)),
    ...net.tapes.flatMap((t) =>
      t.sigma === undefined ? [] : [scaleRow(t, t.sigma, net.unknowns, state)],
    ),
  ];
}

/** Points that are known beforehand and not wholly held. */
export const priorPoints = (points: readonly NetworkPoint[]): NetworkPoint[] =>
  points.filter((p) => p.covariance !== undefined && p.fixed !== true);

export const chiSquareOf = (rows: readonly LinearRow[]): number =>
  rows.reduce((sum, r) => sum + (r.residual / r.sigma) ** 2, 0);

/** The nearest least of the sum of squares downhill from `start`. */
export function settleNetwork(net: Network, start: State): Settled {
  let state = start;
  let rows = rowsAt(net, state);
  let chiSquare = chiSquareOf(rows);
  for (let iterations = 1; ; iterations++) {
    const normal = normalEquations(net, rows, state);
    const step = choleskySolve(normal.factor, normal.right);
    const far = !step.every((s, i) => Math.abs(s) <= STEP_OF_SIGMA * normal.least[i]! + noise(net));
    const next = far ? walkDown(net, state, step, chiSquare) : null;
    if (next === null || iterations >= MAX_ITERATIONS) {
      const done = !far || (next === null && step.every(Number.isFinite));
      const inverse = covarianceOf(normal);
      const loose = [...normal.factor.loose, ...vagueDirection(net, inverse)];
      return { state, rows, chiSquare, inverse, loose, iterations, done };
    }
    ({ state, rows, chiSquare } = next);
  }
}

/** What rounding leaves of a coordinate. */
const noise = (net: Network): number => SINGULAR * (net.extent + 1);

/** The whole step if it leads down, else half of it, and so on; null when no part of it does. */
function walkDown(net: Network, from: State, step: Float64Array, chiSquare: number) {
  for (let halvings = 0, part = 1; halvings <= MAX_HALVINGS; halvings++, part /= 2) {
    const state = moved(net, from, step, part);
    const rows = rowsAt(net, state);
    const next = chiSquareOf(rows);
    if (next <= chiSquare * (1 + SINGULAR)) return { state, rows, chiSquare: next };
  }
  return null;
}

function moved(net: Network, from: State, step: Float64Array, part: number): State {
  const at = new Map<string, Point>();
  for (const [id, [x, y]] of net.unknowns.points) {
    const old = from.at.get(id)!;
    at.set(id, {
      x: old.x + (x < 0 ? 0 : step[x]! * part),
      y: old.y + (y < 0 ? 0 : step[y]! * part),
    });
  }
  const scale = new Map<string, number>();
  for (const [id, place] of net.unknowns.scales) {
    scale.set(id, from.scale.get(id)! + step[place]! * part);
  }
  return { at, scale };
}

/** A sigma of this many times the network's own size means that rounding alone holds the point. */
const VAGUE = 1000;

/** The direction of the worst coordinate, when no reading holds it: a pivot that only rounding kept. */
function vagueDirection(net: Network, inverse: Float64Array): Float64Array[] {
  const n = net.unknowns.count;
  let worst = -1;
  let most = (VAGUE * net.extent) ** 2;
  for (const place of [...net.unknowns.points.values()].flat()) {
    if (place < 0 || !(inverse[place * n + place]! > most)) continue;
    worst = place;
    most = inverse[place * n + place]!;
  }
  if (worst < 0) return [];
  const column = inverse.subarray(worst * n, worst * n + n);
  return [column.map((v) => v / most)];
}

interface Normal {
  readonly factor: CholeskyFactor;
  readonly right: Float64Array;
  /** An unknown's sigma if all others were known: its least. */
  readonly least: Float64Array;
  readonly free: readonly Float64Array[];
  readonly stiffness: number;
}

function normalEquations(net: Network, rows: readonly LinearRow[], state: State): Normal {
  const n = net.unknowns.count;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (const row of rows) addRow(matrix, right, n, row);
  const least = right.map((_, i) => 1 / Math.sqrt(matrix[i * n + i]!));
  const free = net.inner ? freeDirections(net, state) : [];
  const stiffness = free.length > 0 ? bindFree(matrix, n, free) : 0;
  return { factor: choleskyFactor(matrix, n, SINGULAR), right, least, free, stiffness };
}

function covarianceOf({ factor, free, stiffness }: Normal): Float64Array {
  const inverse = choleskyInverse(factor);
  for (const g of free) addOuter(inverse, factor.n, g, -1 / stiffness);
  return inverse;
}

function addRow(normal: Float64Array, right: Float64Array, n: number, row: LinearRow): void {
  const weight = 1 / (row.sigma * row.sigma);
  for (const p of row.places) {
    right[p.at]! -= p.by * weight * row.residual;
    for (const q of row.places) normal[p.at * n + q.at]! += p.by * q.by * weight;
  }
}

function addOuter(m: Float64Array, n: number, g: Float64Array, factor: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) m[i * n + j]! += factor * (g[i]! * g[j]!);
  }
}

/** Binds the directions that a free network leaves open; returns the stiffness used. */
function bindFree(normal: Float64Array, n: number, free: readonly Float64Array[]): number {
  let trace = 0;
  for (let i = 0; i < n; i++) trace += normal[i * n + i]!;
  for (const g of free) addOuter(normal, n, g, trace / n);
  return trace / n;
}

/**
 * Shifts and the turn of the whole network, orthonormal:
 * what readings between its points cannot see.
 */
function freeDirections(net: Network, state: State): Float64Array[] {
  const turns: readonly ((p: Point) => Point)[] = [
    () => ({ x: 1, y: 0 }),
    () => ({ x: 0, y: 1 }),
    (p) => ({ x: -p.y, y: p.x }),
  ];
  const out: Float64Array[] = [];
  for (const turn of turns) {
    const g = new Float64Array(net.unknowns.count);
    for (const [id, [x, y]] of net.unknowns.points) {
      const d = turn(state.at.get(id)!);
      if (x >= 0) g[x] = d.x;
      if (y >= 0) g[y] = d.y;
    }
    for (const other of out) subtractAlong(g, other);
    const length = Math.sqrt(g.reduce((sum, v) => sum + v * v, 0));
    if (length > 0) out.push(g.map((v) => v / length));
  }
  return out;
}

function subtractAlong(g: Float64Array, unit: Float64Array): void {
  const along = g.reduce((sum, v, i) => sum + v * unit[i]!, 0);
  unit.forEach((v, i) => (g[i]! -= along * v));
}
