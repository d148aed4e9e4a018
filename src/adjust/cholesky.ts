/** Small symmetric positive definite systems, dense, row by row. */

export type Matrix = readonly (readonly number[])[];

/**
 * Inverse of a symmetric positive definite matrix by Cholesky's factors, or the index of the first
 * row at which the matrix turns out singular (that unknown is not determined by the readings).
 */
export function invertSymmetric(
  m: Matrix,
  singular: number,
):
  | { readonly ok: true; readonly inverse: number[][] }
  | { readonly ok: false; readonly row: number } {
  const factor = choleskyFactor(m, singular);
  if (typeof factor === 'number') return { ok: false, row: factor };
  const n = m.length;
  const inverse = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let column = 0; column < n; column++) {
    const solved = choleskySolve(factor, unitVector(n, column));
    for (let row = 0; row < n; row++) inverse[row]![column] = solved[row]!;
  }
  return { ok: true, inverse };
}

function choleskyFactor(m: Matrix, singular: number): number[][] | number {
  const n = m.length;
  const l = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = m[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      if (i !== j) l[i]![j] = sum / l[j]![j]!;
      else if (sum <= singular * m[i]![i]! || !(sum > 0)) return i;
      else l[i]![i] = Math.sqrt(sum);
    }
  }
  return l;
}

function choleskySolve(l: readonly (readonly number[])[], b: readonly number[]): number[] {
  const n = b.length;
  const y = [...b];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) y[i]! -= l[i]![k]! * y[k]!;
    y[i]! /= l[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i]! -= l[k]![i]! * y[k]!;
    y[i]! /= l[i]![i]!;
  }
  return y;
}

function unitVector(n: number, at: number): number[] {
  const v = new Array<number>(n).fill(0);
  v[at] = 1;
  return v;
}
