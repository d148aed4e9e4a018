/** Monte Carlo from the files: where crews put the stakes, against the printed ellipses. */
import { drawCauses, fieldOf, newDay, seeded, workThrough } from '../support/field-crew';
import { ellipsesOf, readJob, type Files, type PrintedEllipse } from './read-job';

export interface EllipseTally {
  /** Of all stakes of all days, inside their printed 95 % ellipses. */
  readonly insideShare: number;
  /** Printed semi-major over the simulated one, less 1, by stake. */
  readonly semiMajorOff: readonly number[];
  /** Printed check limit over 3 simulated sigmas of the difference, less 1, by stake. */
  readonly limitOff: readonly number[];
}

/** Chi-square with two degrees of freedom at 95 %: −2·ln 0.05. */
const CHI_SQUARE = -2 * Math.log(0.05);

export function holdEllipses(files: Files, days: number, seed: number): EllipseTally {
  const field = fieldOf(readJob(files));
  const printed = ellipsesOf(files);
  const noise = seeded(seed);
  const day = newDay(field);
  const sums = printed.map(() => new Float64Array(8));
  let inside = 0;
  for (let n = 0; n < days; n++) {
    workThrough(field, drawCauses(field, noise), day);
    printed.forEach((e, k) => {
      const i = field.sheet.fixed.length + k;
      const x = 12 * (day.x[i]! - e.x);
      const y = 12 * (day.y[i]! - e.y);
      if (isInside(e, x, y)) inside++;
      addTo(sums[k]!, x, y, day.offIn[k]!);
    });
  }
  return {
    insideShare: inside / (days * printed.length),
    semiMajorOff: printed.map((e, k) => e.semiMajorIn / simulatedSemiMajor(sums[k]!, days) - 1),
    limitOff: field.rows.map((r, k) => r.limitIn / (3 * sigmaOf(sums[k]!, days)) - 1),
  };
}

function isInside(e: PrintedEllipse, x: number, y: number): boolean {
  const turn = (e.bearingDeg * Math.PI) / 180;
  const major = (x * Math.sin(turn) + y * Math.cos(turn)) / e.semiMajorIn;
  const minor = (x * Math.cos(turn) - y * Math.sin(turn)) / e.semiMinorIn;
  return major * major + minor * minor <= 1;
}

function addTo(sum: Float64Array, x: number, y: number, off: number): void {
  sum[0]! += x;
  sum[1]! += y;
  sum[2]! += x * x;
  sum[3]! += x * y;
  sum[4]! += y * y;
  sum[5]! += off;
  sum[6]! += off * off;
}

function simulatedSemiMajor(sum: Float64Array, n: number): number {
  const mean = sum.map((v) => v / n);
  const xx = mean[2]! - mean[0]! ** 2;
  const xy = mean[3]! - mean[0]! * mean[1]!;
  const yy = mean[4]! - mean[1]! ** 2;
  return Math.sqrt(CHI_SQUARE * ((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)));
}

const sigmaOf = (sum: Float64Array, n: number): number =>
  Math.sqrt(sum[6]! / n - (sum[5]! / n) ** 2);
