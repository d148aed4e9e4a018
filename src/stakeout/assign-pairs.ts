/** Which two controls set each stake: few different pairs, each stake from the best of them. */
import type { Point } from '../geometry/point';
import { TARGET_MARGIN } from './control-plan';
import { addCover, countNew, emptyBits, hasBit, mergeBits, type Bits } from './cover';
import type { StakeoutSpec } from './model';
import { tapePairs } from './tapes';
import { tiePair, tiePrecisionIn, type TapeEnd, type TiePair } from './ties';

export interface PairPlan {
  readonly pairs: readonly TiePair[];
  /** Index into `pairs` for each stake, −1 for one that no pair sets. */
  readonly pairOf: Int32Array;
}

interface Choice {
  readonly pair: TiePair;
  readonly cover: Bits;
}

/**
 * Greedy set cover at the target, then at what the controls were chosen to meet (`metIn`); stakes that
 * no pair sets within that take any pair that can.
 */
export function assignPairs(
  ends: readonly TapeEnd[],
  stakes: readonly Point[],
  spec: StakeoutSpec,
  metIn = spec.target95In,
): PairPlan {
  const covered = emptyBits(stakes.length);
  const pairs: TiePair[] = [];
  for (const target of [spec.target95In * TARGET_MARGIN, spec.target95In, metIn, Infinity]) {
    const choices = allPairs(ends, stakes, spec, target);
    for (let next = bestChoice(choices, covered); next; next = bestChoice(choices, covered)) {
      mergeBits(covered, next.cover);
      pairs.push(next.pair);
    }
  }
  const pairOf = Int32Array.from(stakes, (p, i) =>
    hasBit(covered, i) ? bestPairFor(pairs, p) : -1,
  );
  return { pairs, pairOf };
}

function allPairs(
  ends: readonly TapeEnd[],
  stakes: readonly Point[],
  spec: StakeoutSpec,
  targetIn: number,
): Choice[] {
  const held = tapePairs(spec);
  return ends.flatMap((b, j) =>
    ends.slice(0, j).flatMap((a) =>
      held.map((tapes) => {
        const pair = tiePair(a, b, tapes);
        const cover = emptyBits(stakes.length);
        addCover(pair, stakes, targetIn, cover);
        return { pair, cover };
      }),
    ),
  );
}

function bestChoice(choices: readonly Choice[], covered: Bits): Choice | null {
  let best: Choice | null = null;
  let most = 0;
  for (const choice of choices) {
    const gain = countNew(choice.cover, covered);
    if (gain > most) {
      most = gain;
      best = choice;
    }
  }
  return best;
}

function bestPairFor(pairs: readonly TiePair[], p: Point): number {
  let best = -1;
  let least = Infinity;
  pairs.forEach((pair, i) => {
    const precision = tiePrecisionIn(pair, p);
    if (precision < least) {
      least = precision;
      best = i;
    }
  });
  return best;
}
