/**
 * Least squares for planar networks of taped readings: Gauss-Newton with covariance, redundancy numbers
 * and standardised residuals. Sources: Wolf & Ghilani, *Adjustment Computations*; Baarda 1968
 * (reliability).
 */
import { fail, problem, succeed, type Result } from '../base/result';
import type { Point } from '../geometry/point';
import { SINGULAR } from '../geometry/tolerance';
import { networkProblems } from './check-network';
import { chiSquareAbove } from './chi-square';
import type {
  AdjustedPoint,
  AdjustedReading,
  AdjustOptions,
  Adjustment,
  Judged,
  LinearRow,
  NetworkPoint,
  NetworkReading,
} from './network-model';
import { DETECTABLE } from './reliability';
import {
  givenState,
  prepareNetwork,
  priorPoints,
  settleNetwork,
  type Network,
  type Settled,
} from './settle-network';
import { mirrored, nudged, trilaterate } from './start-values';

/** A network that fits worse than one in a thousand may have settled in a mirrored shape. */
const DOUBTFUL = 0.001;
/** Points tried on the other side, those with the worst readings first. */
const MIRRORED_POINTS = 8;
/** A point moves with an open direction when its part is at least this share of the largest. */
const TAKES_PART = 0.05;

/**
 * Adjusts the network. Problems: those of `networkProblems`; `network-singular` (points that the
 * readings do not determine, named); `network-diverged`.
 */
export function adjustNetwork(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
  options: AdjustOptions = {},
): Result<Adjustment> {
  const problems = networkProblems(points, readings, options);
  if (problems.length > 0) return fail(...problems);
  const origin = nearOrigin(points);
  const local = points.map((p) => ({ ...p, at: shifted(p.at, -origin.x, -origin.y) }));
  const net = prepareNetwork(local, readings, options);
  const settled = options.start === 'given' ? settleNetwork(net, givenState(net)) : search(net);
  if (settled.loose.length > 0) return fail(singularProblem(net, settled));
  if (!settled.done || !Number.isFinite(settled.chiSquare)) return fail(DIVERGED);
  return succeed(results(net, settled, origin));
}

const DIVERGED = problem(
  'network-diverged',
  'the readings',
  'the adjustment does not settle',
  'check the start values and the largest readings',
);

const shifted = (p: Point, x: number, y: number): Point => ({ x: p.x + x, y: p.y + y });

/** The first point: nearness to the network is all that a local origin needs. */
const nearOrigin = (points: readonly NetworkPoint[]): Point => points[0]?.at ?? { x: 0, y: 0 };

const freedom = (net: Network, rows: number): number =>
  rows - net.unknowns.count + (net.inner ? 3 : 0);

const good = (net: Network, s: Settled): boolean =>
  s.done &&
  s.loose.length === 0 &&
  chiSquareAbove(s.chiSquare, freedom(net, s.rows.length)) >= DOUBTFUL;

/** From the given start values; where that fails or fits badly, from others, and the best counts. */
function search(net: Network): Settled {
  let best = settleNetwork(net, givenState(net));
  if (good(net, best)) return best;
  const starts = [...(best.loose.length > 0 ? nudged(net, best) : [])];
  if (!net.inner) starts.push(trilaterate(net, givenState(net)));
  for (const start of starts) best = better(best, settleNetwork(net, start));
  return good(net, best) ? best : searchMirrored(net, best);
}

function searchMirrored(net: Network, found: Settled): Settled {
  let best = found;
  for (const id of worstPoints(net, found)) {
    const start = mirrored(net, best.state, id);
    if (start) best = better(best, settleNetwork(net, start));
  }
  return best;
}

/** Fewer open directions first, then the smaller sum of squares, by more than rounding. */
function better(a: Settled, b: Settled): Settled {
  if (a.done !== b.done) return a.done ? a : b;
  if (a.loose.length !== b.loose.length) return a.loose.length < b.loose.length ? a : b;
  return b.chiSquare < a.chiSquare * (1 - Math.sqrt(SINGULAR)) ? b : a;
}

function worstPoints(net: Network, settled: Settled): string[] {
  const worst = new Map<string, number>();
  net.readings.forEach((r, i) => {
    const size = Math.abs(settled.rows[i]!.residual / r.sigma);
    for (const id of [r.from, r.to]) worst.set(id, Math.max(worst.get(id) ?? 0, size));
  });
  return net.points
    .filter((p) => p.fixed === false && worst.has(p.id))
    .sort((a, b) => worst.get(b.id)! - worst.get(a.id)!)
    .slice(0, MIRRORED_POINTS)
    .map((p) => p.id);
}

function singularProblem(net: Network, settled: Settled) {
  const ids = net.points.filter((p) =>
    net.unknowns.points
      .get(p.id)!
      .some((place) => settled.loose.some((v) => Math.abs(v[place] ?? 0) > TAKES_PART)),
  );
  const scales = net.tapes.filter((t) =>
    settled.loose.some((v) => Math.abs(v[net.unknowns.scales.get(t.id)!]!) > TAKES_PART),
  );
  const names = ids.map((p) => p.id).join(', ');
  const where = ids.length === 1 ? `point ${names}` : `points ${names}`;
  return ids.length > 0
    ? problem(
        'network-singular',
        where,
        ids.length === 1
          ? 'the readings do not determine this point'
          : 'the readings leave these points free to move together',
        'tape more distances to them that cross well, or hold what says where they lie',
      )
    : problem(
        'network-singular',
        `tape ${scales.map((t) => t.id).join(', ')}`,
        'the readings do not determine its scale',
        'tape a distance that is known',
      );
}

function results(net: Network, settled: Settled, origin: Point): Adjustment {
  const { rows, inverse, chiSquare } = settled;
  const n = net.unknowns.count;
  const dof = freedom(net, rows.length);
  return {
    points: net.points.filter((p) => p.fixed !== true).map((p) => pointOf(net, settled, p, origin)),
    readings: net.readings.map((r, i): AdjustedReading => ({
      ...r,
      ...judge(rows[i]!, inverse, n),
    })),
    scales: net.tapes.map((t) => {
      const place = net.unknowns.scales.get(t.id)!;
      return {
        id: t.id,
        scale: settled.state.scale.get(t.id)!,
        sigma: Math.sqrt(inverse[place * n + place]!),
      };
    }),
    degreesOfFreedom: dof,
    chiSquare,
    sigma0: dof > 0 ? Math.sqrt(chiSquare / dof) : 1,
    chance: chiSquareAbove(chiSquare, dof),
    iterations: settled.iterations,
    rows,
    priors: [
      ...priorPoints(net.points).map((p) => p.id),
      ...net.tapes.filter((t) => t.sigma !== undefined).map((t) => t.id),
    ],
    places: Object.fromEntries(net.unknowns.points),
    cofactor: inverse,
    unknowns: n,
  };
}

function pointOf(net: Network, settled: Settled, p: NetworkPoint, origin: Point): AdjustedPoint {
  const [x, y] = net.unknowns.points.get(p.id)!;
  const n = net.unknowns.count;
  const q = (i: number, j: number) => (i < 0 || j < 0 ? 0 : settled.inverse[i * n + j]!);
  return {
    id: p.id,
    at: shifted(settled.state.at.get(p.id)!, origin.x, origin.y),
    covariance: { xx: q(x, x), xy: q(x, y), yy: q(y, y) },
  };
}

function judge(row: LinearRow, inverse: Float64Array, n: number): Judged {
  let explained = 0;
  for (const p of row.places) {
    for (const q of row.places) explained += p.by * q.by * inverse[p.at * n + q.at]!;
  }
  const { sigma, residual } = row;
  const redundancy = Math.max(0, 1 - explained / (sigma * sigma));
  const controlled = redundancy > Math.sqrt(SINGULAR);
  return {
    residual,
    redundancy,
    standardised: controlled ? residual / (sigma * Math.sqrt(redundancy)) : 0,
    slip: controlled ? -residual / redundancy : 0,
    smallestSlip: controlled ? (DETECTABLE * sigma) / Math.sqrt(redundancy) : Infinity,
  };
}
