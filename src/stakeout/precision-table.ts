/**
 * How well every two controls set every stake: the known controls, each candidate with them, and each
 * two candidates. Worked out once, asked for any target.
 */
import type { Point } from '../geometry/point';
import type { TapePair } from './tapes';
import { pairPrecisions, tiePair, type TapeEnd } from './ties';

/** A place for a control stake as it can be set and checked from what is known so far. */
export interface Candidate {
  readonly at: Point;
  readonly end: TapeEnd;
  readonly semiMajor95In: number;
  /** The setting is checked from what is known already. */
  readonly checked: boolean;
}

export interface PrecisionTask {
  readonly known: readonly TapeEnd[];
  readonly candidates: readonly Candidate[];
  readonly stakes: readonly Point[];
  readonly held: readonly TapePair[];
}

/** Semi-major 95 % axes, inches, a row of all stakes each; Infinity where two controls cannot. */
export interface PrecisionTable {
  readonly task: PrecisionTask;
  /** The best two known controls. */
  readonly base: Float32Array;
  /** Candidate i with the best known control: row i. */
  readonly alone: Float32Array;
  /** Candidates i and j, j < i: row `pairRow(i, j)`. */
  readonly pairs: Float32Array;
}

/** Row of the pair (i, j), j < i, in a triangular store; `pairRow(n, 0)` rows hold n candidates. */
export const pairRow = (i: number, j: number): number => (i * (i - 1)) / 2 + j;

/** The precisions of all pairs; those above `mostIn` may be left out. */
export function precisionTable(task: PrecisionTask, mostIn = Infinity): PrecisionTable {
  const { known, candidates, stakes, held } = task;
  const count = stakes.length;
  const base = new Float32Array(count).fill(Infinity);
  const alone = new Float32Array(count * candidates.length).fill(Infinity);
  const pairs = new Float32Array(count * pairRow(candidates.length, 0)).fill(Infinity);
  const fill = (a: TapeEnd, b: TapeEnd, into: Float32Array, row: number): void => {
    for (const tapes of held)
      pairPrecisions(tiePair(a, b, tapes), stakes, into, row * count, mostIn);
  };
  known.forEach((b, j) => known.slice(0, j).forEach((a) => fill(a, b, base, 0)));
  candidates.forEach((c, i) => {
    for (const a of known) fill(a, c.end, alone, i);
    for (let j = 0; j < i; j++) fill(candidates[j]!.end, c.end, pairs, pairRow(i, j));
  });
  return { task, base, alone, pairs };
}

/** The best that each stake could be set, were every candidate a control. */
export function bestPrecisions(table: PrecisionTable): Float32Array {
  const best = table.base.slice();
  for (const store of [table.alone, table.pairs]) {
    for (let i = 0; i < store.length; i++) {
      const stake = i % best.length;
      if (store[i]! < best[stake]!) best[stake] = store[i]!;
    }
  }
  return best;
}
