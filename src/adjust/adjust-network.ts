/**
 * Least squares for points tied by taped distances: Gauss-Newton with covariance, redundancy numbers
 * and standardised residuals. One length unit throughout; reduce coordinates to a local origin (home
 * plate) first. Sources: Wolf & Ghilani, *Adjustment Computations*; Baarda 1968 (reliability).
 */
import { fail, problem, succeed, type Result } from '../base/result';
import { SINGULAR } from '../geometry/tolerance';
import type { Point } from '../geometry/point';
import { invertSymmetric } from './cholesky';
import type { PointCovariance } from './ellipse';

/** A point to find (`fixed` false: `at` is a start value) or to hold. */
export interface NetworkPoint {
  readonly id: string;
  readonly at: Point;
  readonly fixed: boolean;
}

export interface NetworkReading {
  readonly from: string;
  readonly to: string;
  readonly distance: number;
  readonly sigma: number;
}

export interface AdjustedReading extends NetworkReading {
  /** Adjusted less observed. */
  readonly residual: number;
  /** 0: nothing else controls this reading; 1: the others alone give it. */
  readonly redundancy: number;
  /** Residual over its own sigma; 0 for a reading that nothing controls. */
  readonly standardised: number;
}

export interface AdjustedPoint {
  readonly id: string;
  readonly at: Point;
  /** From the readings' own sigmas (before scaling by `sigma0`). */
  readonly covariance: PointCovariance;
}

export interface Adjustment {
  readonly points: readonly AdjustedPoint[];
  readonly readings: readonly AdjustedReading[];
  readonly degreesOfFreedom: number;
  /** Sum of (residual / sigma)². */
  readonly chiSquare: number;
  /** sqrt(chiSquare / dof): near 1 when the readings are as good as they claim; 1 when dof is 0. */
  readonly sigma0: number;
  readonly iterations: number;
}

const MAX_ITERATIONS = 60;
/** A step this small against the sigma of the best reading changes nothing that is printed. */
const STEP_OF_SIGMA = 1 / 1_000_000;

interface Row {
  readonly reading: NetworkReading;
  /** Unknown's index of each end, or −1 when it is held. */
  readonly from: number;
  readonly to: number;
}

/**
 * Adjusts the network. Problems: `network-point-unknown` (a reading names no point),
 * `network-reading-bad` (a distance or sigma that is not positive), `network-singular` (a point that
 * the readings do not determine, named), `network-diverged`.
 */
export function adjustNetwork(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
): Result<Adjustment> {
  const problems = readings.flatMap((r, i) => readingProblems(points, r, i));
  if (problems.length > 0) return fail(...problems);
  const free = points.filter((p) => !p.fixed);
  const index = new Map(free.map((p, i) => [p.id, i]));
  const rows = readings.map((reading): Row => ({
    reading,
    from: index.get(reading.from) ?? -1,
    to: index.get(reading.to) ?? -1,
  }));
  const at = new Map(points.map((p) => [p.id, p.at]));
  return iterate(free, rows, at);
}

function readingProblems(points: readonly NetworkPoint[], r: NetworkReading, i: number) {
  const where = `reading ${i + 1}, ${r.from} to ${r.to}`;
  const known = new Set(points.map((p) => p.id));
  const missing = [r.from, r.to].filter((id) => !known.has(id));
  const out = missing.map((id) =>
    problem(
      'network-point-unknown',
      where,
      `there is no point "${id}"`,
      'name a point of the list',
    ),
  );
  if (!(r.distance > 0) || !(r.sigma > 0)) {
    out.push(
      problem(
        'network-reading-bad',
        where,
        'the distance and its sigma must be above zero',
        'correct the reading',
      ),
    );
  }
  return out;
}

function iterate(
  free: readonly NetworkPoint[],
  rows: readonly Row[],
  start: ReadonlyMap<string, Point>,
): Result<Adjustment> {
  const at = new Map(start);
  const finest = Math.min(...rows.map((r) => r.reading.sigma));
  for (let iteration = 1; iteration <= MAX_ITERATIONS; iteration++) {
    const normal = normalEquations(free.length, rows, at);
    const solved = invertSymmetric(normal.matrix, SINGULAR);
    if (!solved.ok) return fail(singularProblem(free[Math.floor(solved.row / 2)]!));
    const step = multiply(solved.inverse, normal.right);
    moveFree(free, at, step);
    if (!step.every(Number.isFinite)) break;
    if (Math.max(0, ...step.map(Math.abs)) < finest * STEP_OF_SIGMA) {
      return succeed(results(free, rows, at, solved.inverse, iteration));
    }
  }
  return fail(
    problem(
      'network-diverged',
      'the readings',
      'the adjustment does not settle',
      'check the start values and the largest readings',
    ),
  );
}

const singularProblem = (p: NetworkPoint) =>
  problem(
    'network-singular',
    `point ${p.id}`,
    'the readings do not determine this point',
    'tape two more distances to it that cross well',
  );

function moveFree(free: readonly NetworkPoint[], at: Map<string, Point>, step: number[]): void {
  free.forEach((p, i) => {
    const old = at.get(p.id)!;
    at.set(p.id, { x: old.x + step[2 * i]!, y: old.y + step[2 * i + 1]! });
  });
}

/** The reading's derivative by the unknowns: at most four places. */
function derivative(row: Row, at: ReadonlyMap<string, Point>) {
  const a = at.get(row.reading.from)!;
  const b = at.get(row.reading.to)!;
  const d = Math.hypot(b.x - a.x, b.y - a.y);
  const x = d > 0 ? (b.x - a.x) / d : 1;
  const y = d > 0 ? (b.y - a.y) / d : 0;
  const places: { readonly at: number; readonly by: number }[] = [];
  if (row.from >= 0) places.push({ at: 2 * row.from, by: -x }, { at: 2 * row.from + 1, by: -y });
  if (row.to >= 0) places.push({ at: 2 * row.to, by: x }, { at: 2 * row.to + 1, by: y });
  return { computed: d, places };
}

function normalEquations(free: number, rows: readonly Row[], at: ReadonlyMap<string, Point>) {
  const n = 2 * free;
  const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const right = new Array<number>(n).fill(0);
  for (const row of rows) {
    const { computed, places } = derivative(row, at);
    const weight = 1 / (row.reading.sigma * row.reading.sigma);
    for (const p of places) {
      right[p.at]! += p.by * weight * (row.reading.distance - computed);
      for (const q of places) matrix[p.at]![q.at]! += p.by * q.by * weight;
    }
  }
  return { matrix, right };
}

const multiply = (m: readonly (readonly number[])[], v: readonly number[]): number[] =>
  m.map((row) => row.reduce((sum, value, i) => sum + value * v[i]!, 0));

function results(
  free: readonly NetworkPoint[],
  rows: readonly Row[],
  at: ReadonlyMap<string, Point>,
  inverse: readonly (readonly number[])[],
  iterations: number,
): Adjustment {
  const readings = rows.map((row) => adjustedReading(row, at, inverse));
  const chiSquare = readings.reduce((sum, r) => sum + (r.residual / r.sigma) ** 2, 0);
  const degreesOfFreedom = rows.length - 2 * free.length;
  return {
    points: free.map((p, i) => ({
      id: p.id,
      at: at.get(p.id)!,
      covariance: {
        xx: inverse[2 * i]![2 * i]!,
        xy: inverse[2 * i]![2 * i + 1]!,
        yy: inverse[2 * i + 1]![2 * i + 1]!,
      },
    })),
    readings,
    degreesOfFreedom,
    chiSquare,
    sigma0: degreesOfFreedom > 0 ? Math.sqrt(chiSquare / degreesOfFreedom) : 1,
    iterations,
  };
}

function adjustedReading(
  row: Row,
  at: ReadonlyMap<string, Point>,
  inverse: readonly (readonly number[])[],
): AdjustedReading {
  const { computed, places } = derivative(row, at);
  let explained = 0;
  for (const p of places) {
    for (const q of places) explained += p.by * q.by * inverse[p.at]![q.at]!;
  }
  const { sigma, distance } = row.reading;
  const redundancy = Math.max(0, 1 - explained / (sigma * sigma));
  const residual = computed - distance;
  const controlled = redundancy > Math.sqrt(SINGULAR);
  return {
    ...row.reading,
    residual,
    redundancy,
    standardised: controlled ? residual / (sigma * Math.sqrt(redundancy)) : 0,
  };
}
