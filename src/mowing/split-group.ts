/**
 * The swaths of one group shared out between machines of a kind, so that the last one finishes
 * soonest: cut into strips side by side, one for each machine, so that every machine keeps to its own
 * ground; then the cuts are moved, a band and at last a pass at a time, as long as that helps.
 */
import type { Seconds } from '../base/units';
import { polylineLength, polylineAt } from '../geometry/polyline';
import type { Swath } from './swath-model';

/** Times that a cut is moved at most; every move means orders to be found anew. */
const MOST_MOVES = 12;

/** Seconds that machine m takes for these swaths, found by ordering them. */
export type ShareTime = (m: number, share: readonly Swath[]) => Seconds;

/** One share for each machine, maybe empty; `roughly` is the time of one swath, turn included. */
export function splitGroup(
  swaths: readonly Swath[],
  machines: number,
  roughly: (swath: Swath) => Seconds,
  timeOf: ShareTime,
): Swath[][] {
  const sorted = acrossOrder(swaths);
  let cuts = evenCuts(sorted, machines, roughly);
  const known = new Map<string, Seconds>();
  const last = (at: readonly number[]): Seconds => Math.max(...timesOf(sorted, at, known, timeOf));
  let least = last(cuts);
  for (let moves = 0; moves < MOST_MOVES; moves++) {
    const better = movedCuts(sorted, cuts, timesOf(sorted, cuts, known, timeOf))
      .map((at) => ({ at, seconds: last(at) }))
      .find(({ seconds }) => seconds < least);
    if (!better) break;
    [cuts, least] = [better.at, better.seconds];
  }
  return sharesOf(sorted, cuts);
}

/** Side by side, square to the way that most of them go. */
function acrossOrder(swaths: readonly Swath[]): Swath[] {
  let [cos, sin] = [0, 0];
  for (const { line } of swaths) {
    const [a, b] = [line[0]!, line[line.length - 1]!];
    const twice = 2 * Math.atan2(b.y - a.y, b.x - a.x);
    cos += Math.cos(twice);
    sin += Math.sin(twice);
  }
  const along = Math.atan2(sin, cos) / 2;
  const across = ({ line }: Swath): number => {
    const middle = polylineAt(line, polylineLength(line) / 2);
    return middle.y * Math.cos(along) - middle.x * Math.sin(along);
  };
  return [...swaths].sort((a, b) => across(a) - across(b));
}

/** Places in the list where one share ends and the next begins, for equal rough times. */
function evenCuts(
  sorted: readonly Swath[],
  machines: number,
  roughly: (swath: Swath) => Seconds,
): number[] {
  const total = sorted.reduce((n, s) => n + roughly(s), 0);
  const cuts: number[] = [];
  let sum = 0;
  sorted.forEach((swath, i) => {
    while (
      cuts.length < machines - 1 &&
      sum + roughly(swath) / 2 >= (total * (cuts.length + 1)) / machines
    ) {
      cuts.push(i);
    }
    sum += roughly(swath);
  });
  while (cuts.length < machines - 1) cuts.push(sorted.length);
  return cuts;
}

function sharesOf(sorted: readonly Swath[], cuts: readonly number[]): Swath[][] {
  return [...cuts, sorted.length].map((to, m) => sorted.slice(cuts[m - 1] ?? 0, to));
}

function timesOf(
  sorted: readonly Swath[],
  cuts: readonly number[],
  known: Map<string, Seconds>,
  timeOf: ShareTime,
): Seconds[] {
  return sharesOf(sorted, cuts).map((share, m) => {
    const key = `${m} ${cuts[m - 1] ?? 0} ${share.length}`;
    const seconds = known.get(key) ?? timeOf(m, share);
    known.set(key, seconds);
    return seconds;
  });
}

/** The slowest share made smaller at either end, by a band or by a pass. */
function movedCuts(
  sorted: readonly Swath[],
  cuts: readonly number[],
  times: readonly Seconds[],
): number[][] {
  const slow = times.indexOf(Math.max(...times));
  const [from, to] = [cuts[slow - 1] ?? 0, cuts[slow] ?? sorted.length];
  const bandAt = (i: number): number | undefined => sorted[i]?.band;
  const firstOther = (i: number, step: 1 | -1): number => {
    let n = 1;
    while (n < to - from && bandAt(i) !== undefined && bandAt(i + step * n) === bandAt(i)) n++;
    return n;
  };
  const out: number[][] = [];
  const move = (cut: number, by: number): void => {
    out.push(cuts.map((at, k) => (k === cut ? at + by : at)));
  };
  if (to === from) return out;
  for (const by of new Set([firstOther(from, 1), 1])) if (slow > 0) move(slow - 1, by);
  for (const by of new Set([firstOther(to - 1, -1), 1])) if (slow < cuts.length) move(slow, -by);
  return out;
}
