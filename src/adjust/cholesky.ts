/** Symmetric positive definite systems, dense: square matrices row by row in one array. */

/** A lower triangle L with L·Lᵀ the matrix, unknowns that it leaves open held. */
export interface CholeskyFactor {
  readonly n: number;
  readonly l: Float64Array;
  /** First place in each row that is not zero: rows are short where unknowns are well ordered. */
  readonly first: Int32Array;
  /** 1 for an unknown that depends on those before it and is left where it is. */
  readonly dropped: Uint8Array;
  /**
   * One vector for each direction that the matrix leaves open (its null space), largest component 1
   * in size. Empty when the matrix is regular.
   */
  readonly loose: readonly Float64Array[];
}

/**
 * Factor of the symmetric positive definite `n` × `n` matrix `m`. A pivot below `singular` times its
 * diagonal element means that an unknown depends on those before it.
 */
export function choleskyFactor(m: Float64Array, n: number, singular: number): CholeskyFactor {
  const l = new Float64Array(n * n);
  const first = new Int32Array(n);
  const dropped = new Uint8Array(n);
  const loose: Float64Array[] = [];
  const factor = { n, l, first, dropped, loose };
  for (let i = 0; i < n; i++) {
    const pivot = factorRow(m, factor, i);
    if (pivot > singular * m[i * n + i]!) l[i * n + i] = Math.sqrt(pivot);
    else {
      loose.push(openDirection(l, n, i, dropped));
      dropped[i] = 1;
      l.fill(0, i * n, i * n + i);
      l[i * n + i] = 1;
    }
  }
  return factor;
}

/** Row `i` of the factor left of the diagonal; returns the square of the diagonal element. */
function factorRow(m: Float64Array, factor: CholeskyFactor, i: number): number {
  const { n, l, first, dropped } = factor;
  let start = 0;
  while (start < i && m[i * n + start] === 0) start++;
  first[i] = start;
  const row = i * n;
  for (let j = start; j < i; j++) {
    if (dropped[j]) continue;
    const other = j * n;
    let sum = m[row + j]!;
    for (let k = Math.max(start, first[j]!); k < j; k++) sum -= l[row + k]! * l[other + k]!;
    l[row + j] = sum / l[other + j]!;
  }
  let pivot = m[i * n + i]!;
  for (let k = start; k < i; k++) pivot -= l[i * n + k]! ** 2;
  return pivot;
}

/** The unknown `i` moves by one; those before it follow so that no reading notices. */
function openDirection(l: Float64Array, n: number, i: number, dropped: Uint8Array): Float64Array {
  const v = new Float64Array(n);
  v[i] = 1;
  for (let j = i - 1; j >= 0; j--) {
    if (dropped[j]) continue;
    let sum = -l[i * n + j]!;
    for (let k = j + 1; k < i; k++) sum -= l[k * n + j]! * v[k]!;
    v[j] = sum / l[j * n + j]!;
  }
  const largest = v.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return v.map((x) => x / largest);
}

/** What solves the factored system for `right`; zero for unknowns that are held. */
export function choleskySolve({ n, l, first, dropped }: CholeskyFactor, right: Float64Array) {
  const x = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = first[i]!; k < i; k++) x[i]! -= l[i * n + k]! * x[k]!;
    x[i] = dropped[i] ? 0 : x[i]! / l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    x[i] = dropped[i] ? 0 : x[i]! / l[i * n + i]!;
    for (let k = first[i]!; k < i; k++) x[k]! -= l[i * n + k]! * x[i]!;
  }
  return x;
}

/** (L·Lᵀ)⁻¹ = L⁻ᵀ·L⁻¹, both halves alike to the last bit; zero for unknowns that are held. */
export function choleskyInverse({ n, l, dropped }: CholeskyFactor): Float64Array {
  const inverse = new Float64Array(n * n);
  const lower = invertLower(l, n);
  for (let k = 0; k < n; k++) {
    if (dropped[k]) continue;
    const row = k * n;
    for (let i = 0; i <= k; i++) {
      const factor = lower[row + i]!;
      if (factor !== 0) addMultiple(inverse, i * n, lower, row, factor, i + 1);
    }
  }
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) inverse[j * n + i] = inverse[i * n + j]!;
  }
  return inverse;
}

/** Adds `factor` times the `count` values of `from` at `b` to those of `to` at `a`. */
function addMultiple(
  to: Float64Array,
  a: number,
  from: Float64Array,
  b: number,
  factor: number,
  count: number,
): void {
  for (let j = 0; j < count; j++) to[a + j]! += factor * from[b + j]!;
}

function invertLower(l: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) {
      const factor = l[i * n + k]!;
      if (factor !== 0) addMultiple(out, i * n, out, k * n, -factor, k + 1);
    }
    const pivot = l[i * n + i]!;
    for (let j = 0; j < i; j++) out[i * n + j]! /= pivot;
    out[i * n + i] = 1 / pivot;
  }
  return out;
}
