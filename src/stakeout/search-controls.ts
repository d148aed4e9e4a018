/**
 * The smallest set of control stakes by trying all that can matter: sets of up to four candidates
 * that the fixed controls alone can set. Which stakes a set covers is the union over its pairs.
 */
import { pointDistance, type Point } from '../geometry/point';
import { addWithin, emptyBits, hasBit, mergeBits, mergeStored, type Bits } from './cover';
import {
  pairRow,
  type Candidate,
  type PrecisionTable,
  type PrecisionTask,
} from './precision-table';

/** Two control stakes nearer than this to each other are one too many. */
export const CONTROLS_APART_FT = 8;

/** Which stakes are set within a target, as `PrecisionTable` says of each pair. */
export interface CoverTable {
  readonly task: PrecisionTask;
  /** Reach of a check. */
  readonly limitFt: number;
  readonly base: Bits;
  readonly alone: readonly Bits[];
  /** A row of words for each pair. */
  readonly pairs: Bits;
}

/**
 * Which stakes the known controls, each candidate and each pair of candidates can set. A candidate that
 * would itself stand worse than the target is left out.
 */
export function coverTable(table: PrecisionTable, limitFt: number, targetIn: number): CoverTable {
  const { task } = table;
  const count = task.stakes.length;
  const base = emptyBits(count);
  addWithin(table.base, 0, count, targetIn, base, 0);
  const good = task.candidates.map((c) => c.semiMajor95In <= targetIn);
  const alone = task.candidates.map((_, i) => {
    const bits = base.slice();
    if (good[i]) addWithin(table.alone, i * count, count, targetIn, bits, 0);
    return bits;
  });
  const rows = pairRow(task.candidates.length, 0);
  const pairs = new Uint32Array(base.length * rows);
  for (let i = 0, row = 0; i < good.length; i++) {
    for (let j = 0; j < i; j++, row++) {
      if (!good[i] || !good[j]) continue;
      addWithin(table.pairs, row * count, count, targetIn, pairs, row * base.length);
    }
  }
  return { task, limitFt, base, alone, pairs };
}

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
  mergeStored(out, table.pairs, out.length * (i > j ? pairRow(i, j) : pairRow(j, i)));
}

/** How many sets are looked at before the search for one size is given up. */
const MOST_NODES = 400_000;

/**
 * The smallest set, at most `most`, that covers every stake, in an order in which each is checked
 * from something before it; between equals the one set most precisely. Null when none does.
 *
 * Complete: whatever set covers everything covers the stake that fewest can cover, by one member with
 * a known control or by two members together, so only those need be tried for it.
 */
export function searchControls(table: CoverTable, most: number): Point[] | null {
  const rare = rarestFirst(table);
  if (!rare) return null;
  for (let size = 1; size <= most; size++) {
    const best = bestOfSize(table, size, rare);
    if (best) return best;
  }
  return null;
}

/** Uncovered stakes, those that fewest pairs cover first; null when one is covered by none. */
function rarestFirst(table: CoverTable): number[] | null {
  const { stakes, candidates } = table.task;
  const counts = stakes.map(() => 0);
  const tally = (bits: Bits, at: number): void => {
    for (let i = 0; i < counts.length; i++) {
      counts[i]! += (bits[at + (i >> 5)]! >>> (i & 31)) & 1;
    }
  };
  table.alone.forEach((bits) => tally(bits, 0));
  for (let k = 0; k < pairRow(candidates.length, 0); k++) tally(table.pairs, k * table.base.length);
  const open = [...stakes.keys()].filter((i) => !hasBit(table.base, i));
  if (open.some((i) => counts[i] === 0)) return null;
  return open.sort((a, b) => counts[a]! - counts[b]!);
}

function bestOfSize(table: CoverTable, size: number, rare: readonly number[]): Point[] | null {
  const { candidates } = table.task;
  const { limitFt } = table;
  let best: Point[] | null = null;
  let least = Infinity;
  eachCover(table, size, rare, (members) => {
    const worth = members.reduce((sum, i) => sum + candidates[i]!.semiMajor95In, 0);
    const order =
      worth < least &&
      settingOrder(
        members.map((i) => candidates[i]!),
        limitFt,
      );
    if (!order) return;
    least = worth;
    best = order.map((c) => c.at);
  });
  return best;
}

/** Every set of at most `size` candidates that covers all and in which each was needed when added. */
function eachCover(
  table: CoverTable,
  size: number,
  rare: readonly number[],
  visit: (members: readonly number[]) => void,
): void {
  const members: number[] = [];
  const levels = Array.from({ length: size + 1 }, () => table.base.slice());
  let nodes = 0;
  const push = (i: number): void => {
    const bits = levels[members.length + 1]!;
    bits.set(levels[members.length]!);
    mergeBits(bits, table.alone[i]!);
    for (const m of members) mergePair(bits, table, i, m);
    members.push(i);
  };
  const helps = (i: number, stake: number): boolean =>
    hasBit(table.alone[i]!, stake) || members.some((m) => pairHas(table, i, m, stake));
  const grow = (): void => {
    const depth = members.length;
    const stake = rare.find((s) => !hasBit(levels[depth]!, s));
    if (stake === undefined) return visit(members);
    if (depth === size || nodes > MOST_NODES) return;
    const others: number[] = [];
    for (let i = 0; i < table.alone.length; i++) {
      if (members.includes(i)) continue;
      if (!helps(i, stake)) {
        others.push(i);
        continue;
      }
      nodes++;
      push(i);
      grow();
      members.pop();
    }
    if (depth + 2 > size) return;
    for (let k = 1; k < others.length; k++) {
      for (let l = 0; l < k; l++) {
        if (!pairHas(table, others[k]!, others[l]!, stake)) continue;
        nodes++;
        push(others[l]!);
        push(others[k]!);
        grow();
        members.length = depth;
      }
    }
  };
  grow();
}

const pairHas = (table: CoverTable, i: number, j: number, stake: number): boolean => {
  const at = table.base.length * (i > j ? pairRow(i, j) : pairRow(j, i));
  return ((table.pairs[at + (stake >> 5)]! >>> (stake & 31)) & 1) === 1;
};

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
