/**
 * Pairs of controls chosen together with the walk: pairs that others can do without go, and a stake
 * that stands on the way of another pair's walk joins it when that pair sets it nearly as well.
 */
import type { Point } from '../geometry/point';
import type { PairPlan } from './assign-pairs';
import { pairHold } from './order-stakes';
import { tiePrecisionIn } from './ties';
import { sameHold, walkSeconds } from './walk-cost';

/** A stake may lose this much of its best precision to a shorter walk. */
const NEARLY = 1.25;
const MOST_PASSES = 4;

/**
 * The same stakes with fewer pairs and less to walk; no stake leaves `targetIn`, and one that is
 * beyond it keeps its pair. Stakes without a pair stay without.
 */
export function shareWalk(plan: PairPlan, places: readonly Point[], targetIn: number): PairPlan {
  const precision = plan.pairs.map((pair) => places.map((p) => tiePrecisionIn(pair, p)));
  const pairOf = dropPairs(plan, precision, targetIn);
  const settled = { pairs: plan.pairs, pairOf };
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    if (!joinNearer(settled, places, precision, targetIn)) break;
  }
  return settled;
}

/** Pairs whose every stake another pair in use sets within the target, the smallest first. */
function dropPairs(
  { pairs, pairOf }: PairPlan,
  precision: readonly (readonly number[])[],
  targetIn: number,
): Int32Array {
  const of = pairOf.slice();
  const size = (p: number): number => of.reduce((n, q) => n + Number(q === p), 0);
  const order = [...pairs.keys()].sort((p, q) => size(p) - size(q));
  for (const p of order) {
    const members = [...of.keys()].filter((i) => of[i] === p);
    const used = new Set(of);
    const moves = members.map((i) => bestOther(i, p, used, precision, targetIn));
    if (moves.some((q) => q < 0)) continue;
    members.forEach((i, k) => (of[i] = moves[k]!));
  }
  return of;
}

function bestOther(
  i: number,
  p: number,
  used: ReadonlySet<number>,
  precision: readonly (readonly number[])[],
  targetIn: number,
): number {
  let best = -1;
  for (const q of used) {
    if (q < 0 || q === p || precision[q]![i]! > targetIn) continue;
    if (best < 0 || precision[q]![i]! < precision[best]![i]!) best = q;
  }
  return best;
}

/** Moves stakes to the pair whose stakes stand nearer; true when one moved. */
function joinNearer(
  plan: PairPlan,
  places: readonly Point[],
  precision: readonly (readonly number[])[],
  targetIn: number,
): boolean {
  const { pairOf } = plan;
  const used = [...new Set(pairOf)].filter((p) => p >= 0);
  let moved = false;
  places.forEach((_, i) => {
    const own = pairOf[i]!;
    if (own < 0) return;
    const best = Math.min(...used.map((p) => precision[p]![i]!));
    const most = Math.min(targetIn, NEARLY * best);
    const stay = strayOf(plan, places, i, own);
    for (const q of used) {
      if (q === own || precision[q]![i]! > most) continue;
      if (sameHold(pairHold(plan.pairs[q]!), pairHold(plan.pairs[own]!))) continue;
      if (strayOf(plan, places, i, q) >= stay) continue;
      pairOf[i] = q;
      moved = true;
      return;
    }
  });
  return moved;
}

/** Seconds to the two nearest stakes of a pair: what a walk through them strays for this one. */
function strayOf(plan: PairPlan, places: readonly Point[], i: number, pair: number): number {
  let [first, second] = [Infinity, Infinity];
  for (let j = 0; j < places.length; j++) {
    if (j === i || plan.pairOf[j] !== pair) continue;
    const seconds = walkSeconds(places[i]!, places[j]!);
    if (seconds < first) [first, second] = [seconds, first];
    else if (seconds < second) second = seconds;
  }
  return first + second;
}
