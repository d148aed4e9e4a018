/** What an adjustment would be without some of its readings, worked out from the adjustment itself. */
import type { Point } from '../geometry/point';
import { SINGULAR } from '../geometry/tolerance';
import { choleskyFactor, choleskySolve } from './cholesky';
import type { Adjustment, LinearRow } from './network-model';
import { SAME_DIRECTION } from './reliability';

/** What freeing some rows would do, to first order. */
export interface Freed {
  /** Fall of chi-square. */
  readonly drop: number;
  /** How much too long each freed reading is. */
  readonly slips: readonly number[];
  /** What the unknowns change by. */
  readonly step: Float64Array;
}

/** Covariance of the residuals of two rows. */
export function residualCovariance(a: Adjustment, i: number, j: number): number {
  const { rows } = a;
  const own = i === j ? rows[i]!.sigma ** 2 : 0;
  return own - rowCovariance(a, rows[i]!, rows[j]!);
}

/** Covariance of two adjusted readings. */
export function rowCovariance(
  a: Pick<Adjustment, 'cofactor' | 'unknowns'>,
  p: Pick<LinearRow, 'places'>,
  q: Pick<LinearRow, 'places'>,
): number {
  let sum = 0;
  for (const s of p.places) {
    for (const t of q.places) sum += s.by * t.by * a.cofactor[s.at * a.unknowns + t.at]!;
  }
  return sum;
}

/** Correlation of two standardised residuals; 0 when either is uncontrolled. */
export function residualCorrelation(a: Adjustment, i: number, j: number): number {
  const size = Math.sqrt(residualCovariance(a, i, i) * residualCovariance(a, j, j));
  return size > 0 ? residualCovariance(a, i, j) / size : 0;
}

/** The other readings whose standardised residuals rise and fall with that of reading `i`. */
export const alikeReadings = (a: Adjustment, i: number): number[] =>
  a.readings.flatMap((r, j) =>
    j !== i && r.standardised !== 0 && Math.abs(residualCorrelation(a, i, j)) > SAME_DIRECTION
      ? [j]
      : [],
  );

/**
 * Frees the given rows: with K the covariance of their residuals v, chi-square falls by vᵀK⁻¹v, the
 * slips are −ΣK⁻¹v (Σ their variances) and the unknowns change by QAᵀK⁻¹v.
 */
export function freeRows(a: Adjustment, freed: readonly number[]): Freed {
  const n = freed.length;
  const k = new Float64Array(n * n);
  freed.forEach((i, p) => freed.forEach((j, q) => (k[p * n + q] = residualCovariance(a, i, j))));
  const residuals = Float64Array.from(freed, (i) => a.rows[i]!.residual);
  const least = Math.sqrt(SINGULAR);
  freed.forEach((i, p) => {
    if (k[p * n + p]! <= least * a.rows[i]!.sigma ** 2) bind(k, n, p);
  });
  const solved = choleskySolve(choleskyFactor(k, n, least), residuals);
  const step = new Float64Array(a.unknowns);
  freed.forEach((i, p) => addColumn(a, step, a.rows[i]!, solved[p]!));
  return {
    drop: solved.reduce((sum, s, p) => sum + s * residuals[p]!, 0),
    slips: freed.map((i, p) => -(a.rows[i]!.sigma ** 2) * solved[p]!),
    step,
  };
}

/** A row that nothing controls explains nothing. */
function bind(k: Float64Array, n: number, p: number): void {
  for (let q = 0; q < n; q++) k[p * n + q] = k[q * n + p] = 0;
}

function addColumn(a: Adjustment, step: Float64Array, row: LinearRow, factor: number): void {
  for (const place of row.places) {
    for (let u = 0; u < a.unknowns; u++) {
      step[u]! += a.cofactor[u * a.unknowns + place.at]! * place.by * factor;
    }
  }
}

/** A point moved by a step of the unknowns. */
export function stepped(a: Adjustment, id: string, at: Point, step: Float64Array): Point {
  const [x, y] = a.places[id]!;
  return { x: at.x + (x < 0 ? 0 : step[x]!), y: at.y + (y < 0 ? 0 : step[y]!) };
}
