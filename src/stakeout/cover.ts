/** Sets of stakes as bits, and which stakes a pair of controls can set. */
import type { Point } from '../geometry/point';
import type { TapeSpec } from './model';
import { tiePair, tiePrecisionIn, type TapeEnd } from './ties';

export type Bits = Uint32Array;

/** A set for `count` stakes with none in it. */
export const emptyBits = (count: number): Bits => new Uint32Array(Math.ceil(count / 32));

/** Puts stake `i` into the set. */
export function setBit(bits: Bits, i: number): void {
  bits[i >> 5]! |= 1 << (i & 31);
}

/** Whether stake `i` is in the set. */
export const hasBit = (bits: Bits, i: number): boolean => ((bits[i >> 5]! >>> (i & 31)) & 1) === 1;

/** Adds all of `from` to `into`. */
export function mergeBits(into: Bits, from: Bits): void {
  for (let i = 0; i < into.length; i++) into[i]! |= from[i]!;
}

/** How many stakes the set holds. */
export function countBits(bits: Bits): number {
  let sum = 0;
  for (const word of bits) sum += countWord(word);
  return sum;
}

/** How many bits of `extra` are not in `have`. */
export function countNew(extra: Bits, have: Bits): number {
  let sum = 0;
  for (let i = 0; i < have.length; i++) sum += countWord(extra[i]! & ~have[i]!);
  return sum;
}

function countWord(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555);
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Merges `into.length` words that start at `at` in a store of many sets. */
export function mergeStored(into: Bits, store: Bits, at: number): void {
  for (let i = 0; i < into.length; i++) into[i]! |= store[at + i]!;
}

/** The stakes that the pair sets within `targetIn`, added to `bits`. */
export function pairCover(
  a: TapeEnd,
  b: TapeEnd,
  stakes: readonly Point[],
  tape: TapeSpec,
  targetIn: number,
  bits: Bits = emptyBits(stakes.length),
): Bits {
  const pair = tiePair(a, b);
  for (let i = 0; i < stakes.length; i++) {
    const precision = tiePrecisionIn(pair, stakes[i]!, tape);
    if (precision < Infinity && precision <= targetIn) setBit(bits, i);
  }
  return bits;
}
