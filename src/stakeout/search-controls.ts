/**
 * The smallest set of control stakes by trying them all: sets of one, two and three candidates that
 * the fixed controls alone can set. Which stakes a set covers is the union over its pairs.
 */
import { pointDistance, type Point } from '../geometry/point';
import { countBits, emptyBits, mergeBits, mergeStored, pairCover, type Bits } from './cover';
import type { TapeSpec } from './model';
import type { TapeEnd } from './ties';

/** A place for a control stake as it can be set and checked from what is known so far. */
export interface Candidate {
  readonly at: Point;
  readonly end: TapeEnd;
  readonly semiMajor95In: number;
  /** The setting is checked from what is known already. */
  readonly checked: boolean;
}

export interface CoverTask {
  readonly known: readonly TapeEnd[];
  readonly candidates: readonly Candidate[];
  readonly stakes: readonly Point[];
  readonly tape: TapeSpec;
  readonly targetIn: number;
}

/** Two control stakes nearer than this to each other are one too many. */
export const CONTROLS_APART_FT = 8;

export interface CoverTable {
  readonly task: CoverTask;
  /** Covered by the known controls, and by candidate i with them. */
  readonly base: Bits;
  readonly alone: readonly Bits[];
  /** Covered by candidates i and j as a pair, j < i: `pairAt(i, j)` words into the store. */
  readonly pairs: Bits;
}

/** Which stakes the known controls, each candidate and each pair of candidates can set. */
export function coverTable(task: CoverTask): CoverTable {
  const { known, candidates, stakes, tape, targetIn } = task;
  const base = emptyBits(stakes.length);
  const add = (a: TapeEnd, b: TapeEnd, bits: Bits) => pairCover(a, b, stakes, tape, targetIn, bits);
  known.forEach((b, j) => known.slice(0, j).forEach((a) => add(a, b, base)));
  const alone = candidates.map((c) => {
    const bits = base.slice();
    for (const end of known) add(end, c.end, bits);
    return bits;
  });
  return { task, base, alone, pairs: pairStore(task, base.length) };
}

function pairStore(task: CoverTask, words: number): Bits {
  const { candidates, stakes, tape, targetIn } = task;
  const store = new Uint32Array(words * pairAt(candidates.length, 0));
  const bits = new Uint32Array(words);
  candidates.forEach((c, i) => {
    for (let j = 0; j < i; j++) {
      bits.fill(0);
      pairCover(candidates[j]!.end, c.end, stakes, tape, targetIn, bits);
      store.set(bits, words * pairAt(i, j));
    }
  });
  return store;
}

/** Place of the pair (i, j), j < i, in a triangular store. */
const pairAt = (i: number, j: number): number => (i * (i - 1)) / 2 + j;

/** Covered by a set of candidates with the known controls, written into `out`. */
export function coverOfSet(table: CoverTable, members: readonly number[], out: Bits): Bits {
  out.set(table.base);
  members.forEach((i, k) => {
    mergeBits(out, table.alone[i]!);
    for (let l = 0; l < k; l++) mergePair(out, table, i, members[l]!);
  });
  return out;
}

function mergePair(out: Bits, table: CoverTable, i: number, j: number): void {
  mergeStored(out, table.pairs, out.length * (i > j ? pairAt(i, j) : pairAt(j, i)));
}

/**
 * The smallest set, at most `most` (3), that covers every stake, in an order in which each is
 * checked from something before it; between equals the one set most precisely. Null when none does.
 */
export function searchControls(table: CoverTable, most: 1 | 2 | 3): Point[] | null {
  for (let size = 1; size <= most; size++) {
    const best = bestOfSize(table, size);
    if (best) return best;
  }
  return null;
}

function bestOfSize(table: CoverTable, size: number): Point[] | null {
  const { candidates, stakes, tape } = table.task;
  let best: Point[] | null = null;
  let least = Infinity;
  eachCover(table, size, (members, covered) => {
    if (covered < stakes.length) return;
    const worth = members.reduce((sum, i) => sum + candidates[i]!.semiMajor95In, 0);
    const order =
      worth < least &&
      settingOrder(
        members.map((i) => candidates[i]!),
        tape.limitFt,
      );
    if (!order) return;
    least = worth;
    best = order.map((c) => c.at);
  });
  return best;
}

/** Every set of `size` candidates with the number of stakes it covers. */
function eachCover(
  table: CoverTable,
  size: number,
  visit: (members: readonly number[], covered: number) => void,
): void {
  const members: number[] = [];
  const levels = Array.from({ length: size + 1 }, () => table.base.slice());
  const grow = (from: number): void => {
    const depth = members.length;
    if (depth === size) return visit(members, countBits(levels[depth]!));
    for (let i = from; i < table.alone.length; i++) {
      const bits = levels[depth + 1]!;
      bits.set(levels[depth]!);
      mergeBits(bits, table.alone[i]!);
      for (let k = 0; k < depth; k++) mergePair(bits, table, i, members[k]!);
      members.push(i);
      grow(i + 1);
      members.pop();
    }
  };
  grow(0);
}

/** The set in an order in which each is checked from something before it; null if there is none. */
export function settingOrder(set: readonly Candidate[], limitFt: number): Candidate[] | null {
  const order: Candidate[] = [];
  const left = [...set];
  while (left.length > 0) {
    const next = left.findIndex(
      (c) => c.checked || order.some((o) => pointDistance(o.at, c.at) < limitFt - 1),
    );
    if (next < 0) return null;
    order.push(...left.splice(next, 1));
  }
  const apart = order.every((c, i) =>
    order.slice(0, i).every((o) => pointDistance(o.at, c.at) >= CONTROLS_APART_FT),
  );
  return apart ? order : null;
}
