/** Sets of stakes as bits, and which stakes a pair of controls can set. */
import type { Point } from '../geometry/point';
import type { TapePair } from './tapes';
import { pairPrecisions, tiePair, type TapeEnd, type TiePair } from './ties';

export type Bits = Uint32Array;

/** A set for `count` stakes with none in it. */
export const emptyBits = (count: number): Bits => new Uint32Array(Math.ceil(count / 32));

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

/**
 * The stakes that two controls set within `targetIn`, whichever way the tapes are held, added to
 * `bits`.
 */
export function pairCover(
  a: TapeEnd,
  b: TapeEnd,
  stakes: readonly Point[],
  held: readonly TapePair[],
  targetIn: number,
  bits: Bits = emptyBits(stakes.length),
): Bits {
  for (const tapes of held) addCover(tiePair(a, b, tapes), stakes, targetIn, bits);
  return bits;
}

/** The stakes that a pair with its tapes sets within `targetIn`, added to `bits`. */
export function addCover(
  pair: TiePair,
  stakes: readonly Point[],
  targetIn: number,
  bits: Bits,
): void {
  const row = new Float32Array(stakes.length).fill(Infinity);
  pairPrecisions(pair, stakes, row, 0);
  addWithin(row, 0, stakes.length, targetIn, bits, 0);
}

/**
 * The stakes whose value among `count` of `row` from `offset` on is finite and at most `targetIn`,
 * added to the set that starts at word `at` of `bits`.
 */
export function addWithin(
  row: Float32Array,
  offset: number,
  count: number,
  targetIn: number,
  bits: Bits,
  at: number,
): void {
  for (let i = 0; i < count; i++) {
    const value = row[offset + i]!;
    if (value < Infinity && value <= targetIn) bits[at + (i >> 5)]! |= 1 << (i & 31);
  }
}
