/** Which lanes to string: the fewest, and of those the ones whose strings go up the fewest times. */

import { invariant } from '../base/result';

/** Lanes beside one another, numbered from 0. */
export interface LaneRun {
  /** Between which lanes the band edges lie, ascending: edge b is between lanes b − 1 and b. */
  readonly edges: readonly number[];
  /** Times that a string goes up for a lane, once for each of its passes; 0: no room for a string. */
  readonly strings: readonly number[];
}

/** Passes laid one beside the other from a strung lane until edge `b` is made. */
export const passesTo = (lane: number, b: number): number => (b > lane ? b - 1 - lane : lane - b);

/**
 * The lanes that bring every edge within `reach` passes of a strung one, ascending. Exact: the best
 * choice that ends in each lane, from left to right, so that no choice has fewer lanes, and of those
 * with as few, none whose strings go up fewer times. Every edge must be within reach of some lane that has room.
 */
export function chooseLanes(run: LaneRun, reach: number): number[] {
  const last = run.edges[run.edges.length - 1];
  if (last === undefined || reach < 0) return [];
  const best: Choice[] = [];
  run.strings.forEach((strings, lane) => {
    if (strings > 0) best.push(...bestEndingIn(run, reach, { lane, strings }, best));
  });
  const whole = best.filter(({ lane }) => last <= lane || passesTo(lane, last) <= reach);
  invariant(whole.length > 0, 'every band edge is within reach of a lane with room for a string');
  return [...whole.reduce(better).chosen];
}

/** The lanes so far: every edge left of the last one is served. */
interface Choice {
  readonly lane: number;
  readonly chosen: readonly number[];
  readonly strings: number;
}

function bestEndingIn(
  run: LaneRun,
  reach: number,
  { lane, strings }: { readonly lane: number; readonly strings: number },
  before: readonly Choice[],
): Choice[] {
  const ways = before
    .filter((b) => isServed(run, reach, b.lane, lane))
    .map((b) => ({ lane, chosen: [...b.chosen, lane], strings: b.strings + strings }));
  const alone = isServed(run, reach, null, lane) ? [{ lane, chosen: [lane], strings }] : [];
  const all: Choice[] = [...alone, ...ways];
  return all.length === 0 ? [] : [all.reduce(better)];
}

/** Whether every edge between two strung lanes, or left of the first one, is within reach of either. */
const isServed = (run: LaneRun, reach: number, left: number | null, lane: number): boolean =>
  run.edges.every(
    (b) =>
      b > lane ||
      (left !== null && b <= left) ||
      passesTo(lane, b) <= reach ||
      (left !== null && passesTo(left, b) <= reach),
  );

function better(a: Choice, b: Choice): Choice {
  if (a.chosen.length !== b.chosen.length) return a.chosen.length < b.chosen.length ? a : b;
  return b.strings < a.strings ? b : a;
}
