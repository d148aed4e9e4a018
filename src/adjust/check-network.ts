/** What can be wrong with a network before any arithmetic. */
import { problem, type Problem } from '../base/result';
import {
  isLineReading,
  type AdjustOptions,
  type NetworkPoint,
  type NetworkReading,
} from './network-model';

/** The points that a reading names, the point beside a line first. */
export const readingPoints = (r: NetworkReading): readonly string[] =>
  isLineReading(r) ? [r.point, r.from, r.to] : [r.from, r.to];

/** A reading in words: `reading 3, HP to 12`. */
export const readingPlace = (r: NetworkReading, index: number): string =>
  isLineReading(r)
    ? `reading ${index + 1}, ${r.point} beside ${r.from} to ${r.to}`
    : `reading ${index + 1}, ${r.from} to ${r.to}`;

/**
 * Problems: `network-point-bad` (no coordinates, or a name used twice), `network-point-unknown` (a
 * reading names no point), `network-reading-bad` (not a positive distance or sigma, or from a point
 * to itself), `network-tape-unknown`.
 */
export function networkProblems(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
  options: AdjustOptions,
): Problem[] {
  const known = new Set(points.map((p) => p.id));
  const tapes = new Set(options.tapes?.map((t) => t.id));
  return [
    ...pointProblems(points),
    ...readings.flatMap((r, i) => readingProblems(r, i, known, tapes)),
  ];
}

function pointProblems(points: readonly NetworkPoint[]): Problem[] {
  const seen = new Set<string>();
  return points.flatMap((p) => {
    const twice = seen.has(p.id);
    seen.add(p.id);
    const { xx, xy, yy } = p.covariance ?? { xx: 0, xy: 0, yy: 0 };
    const known = [p.at.x, p.at.y, xx, xy, yy].every(Number.isFinite);
    if (!twice && known) return [];
    const what = twice ? 'its name is used twice' : 'its coordinates are not numbers';
    return [problem('network-point-bad', `point ${p.id}`, what, 'correct the list of points')];
  });
}

function readingProblems(
  r: NetworkReading,
  i: number,
  known: ReadonlySet<string>,
  tapes: ReadonlySet<string>,
): Problem[] {
  const where = readingPlace(r, i);
  const ids = readingPoints(r);
  const out = ids
    .filter((id) => !known.has(id))
    .map((id) =>
      problem('network-point-unknown', where, `there is no point "${id}"`, 'name a listed point'),
    );
  const what = whatIsBad(r, ids);
  if (what) out.push(problem('network-reading-bad', where, what, 'correct the reading'));
  if (r.tape !== undefined && !tapes.has(r.tape)) {
    const missing = `there is no tape "${r.tape}"`;
    out.push(problem('network-tape-unknown', where, missing, 'list the tape'));
  }
  return out;
}

function whatIsBad(r: NetworkReading, ids: readonly string[]): string | null {
  const distance = !isLineReading(r);
  if (!Number.isFinite(r.distance) || (distance && !(r.distance > 0)) || !(r.sigma > 0)) {
    return 'the distance and its sigma must be above zero';
  }
  return new Set(ids).size < ids.length ? 'it runs from a point to itself' : null;
}
