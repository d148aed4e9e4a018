/** Bits in a row, most significant first, and whole numbers in as few of them as they need. */

export interface BitWriter {
  /** `count` bits of `value`, 0 to 2^count − 1. */
  readonly put: (value: number, count: number) => void;
  /** A whole number from 0; small ones are short. `order` is the length of the shortest, less 1. */
  readonly putCount: (value: number, order: number) => void;
  /** A whole number of either sign. */
  readonly putSigned: (value: number, order: number) => void;
  /** What was written, filled up with zeros to whole bytes. */
  readonly bytes: () => number[];
}

export interface BitReader {
  readonly get: (count: number) => number;
  readonly getCount: (order: number) => number;
  readonly getSigned: (order: number) => number;
  /** False once more was asked for than there is; whatever was read since is 0. */
  readonly ok: () => boolean;
  /** True when all that is left is the filling of the last byte, all zeros. */
  readonly atEnd: () => boolean;
}

/** 2^31 and above do not occur: the longest length is a few thousand steps. */
const MOST_BITS = 31;

export function writeBits(): BitWriter {
  const bits: number[] = [];
  const put = (value: number, count: number): void => {
    for (let i = count - 1; i >= 0; i--) bits.push((value >>> i) & 1);
  };
  // Exponential Golomb code of a given order: Teuhola 1978, Information Processing Letters 7.
  const putCount = (value: number, order: number): void => {
    const sum = value + 2 ** order;
    const length = bitLength(sum);
    put(0, length - 1 - order);
    put(sum, length);
  };
  return {
    put,
    putCount,
    putSigned: (value, order) => putCount(foldSign(value), order),
    bytes: () => packBits(bits),
  };
}

export function readBits(bytes: ArrayLike<number>): BitReader {
  const end = bytes.length * 8;
  let at = 0;
  let whole = true;
  const bit = (): number => {
    if (at >= end) whole = false;
    if (!whole) return 0;
    const value = (bytes[at >> 3]! >> (7 - (at & 7))) & 1;
    at++;
    return value;
  };
  const get = (count: number): number => {
    let value = 0;
    for (let i = 0; i < count; i++) value = value * 2 + bit();
    return value;
  };
  const getCount = (order: number): number => {
    let zeros = 0;
    while (whole && bit() === 0) zeros++;
    if (zeros + order + 1 > MOST_BITS) whole = false;
    return whole ? 2 ** (zeros + order) + get(zeros + order) - 2 ** order : 0;
  };
  return {
    get,
    getCount,
    getSigned: (order) => unfoldSign(getCount(order)),
    ok: () => whole,
    atEnd: () => whole && end - at < 8 && get(end - at) === 0,
  };
}

/** Bits that `putSigned` takes. */
export const signedLength = (value: number, order: number): number =>
  2 * bitLength(foldSign(value) + 2 ** order) - 1 - order;

const bitLength = (value: number): number => 32 - Math.clz32(value);

/** 0, −1, 1, −2, 2 … to 0, 1, 2, 3, 4 … */
const foldSign = (value: number): number => (value < 0 ? -2 * value - 1 : 2 * value);
const unfoldSign = (value: number): number => (value % 2 === 0 ? value / 2 : -(value + 1) / 2);

function packBits(bits: readonly number[]): number[] {
  const bytes = Array.from({ length: Math.ceil(bits.length / 8) }, () => 0);
  bits.forEach((bit, i) => (bytes[i >> 3]! |= bit << (7 - (i & 7))));
  return bytes;
}
