/**
 * Data snooping (Baarda 1968): the reading with the largest standardised residual is taken out, the rest
 * adjusted again, and so on; then each is tried again with the rest.
 */
import { succeed, type Result } from '../base/result';
import { adjustNetwork } from './adjust-network';
import { alikeReadings } from './free-rows';
import type { AdjustOptions, Adjustment, NetworkPoint, NetworkReading } from './network-model';
import { CRITICAL } from './reliability';

/** A reading taken out; numbers are places in the list of readings given. */
export interface TakenOut {
  readonly reading: number;
  /** Its standardised residual among the readings kept. */
  readonly standardised: number;
  /** How much too long it was found to be. */
  readonly slip: number;
  /**
   * Readings that explain the same misfit as well: then it is not known which of them is wrong, and
   * this one stands for all.
   */
  readonly alike: readonly number[];
}

export interface Snooped {
  /** Of the readings kept. */
  readonly adjustment: Adjustment;
  readonly kept: readonly number[];
  readonly takenOut: readonly TakenOut[];
  /** Taken out at first and found good in the end. */
  readonly readmitted: readonly number[];
}

type Adjust = (kept: readonly number[]) => Result<Adjustment>;

/**
 * Snoops the readings of a network at `limit` sigmas. Where more than one is taken out they may have
 * hidden each other: then it is tried again from an adjustment that large misfits hardly pull, and
 * what leaves less misfit counts, a reading taken out being worth the square of the limit. Problems:
 * those of `adjustNetwork`.
 */
export function snoopReadings(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
  options: AdjustOptions & { readonly limit?: number } = {},
): Result<Snooped> {
  const limit = options.limit ?? CRITICAL;
  const adjust: Adjust = (kept) =>
    adjustNetwork(
      points,
      kept.map((i) => readings[i]!),
      options,
    );
  const all = readings.map((_, i) => i);
  const plain = snoopFrom(adjust, all, limit);
  if (!plain.ok || plain.value.takenOut.length < 2) return plain;
  const suspects = robustSuspects(points, readings, options, limit);
  const rest = all.filter((i) => !suspects.includes(i));
  const robust = snoopFrom(adjust, rest, limit, suspects);
  return robust.ok && costOf(robust.value, limit) < costOf(plain.value, limit) ? robust : plain;
}

const costOf = (s: Snooped, limit: number): number =>
  s.adjustment.chiSquare + s.takenOut.length * limit * limit;

function snoopFrom(
  adjust: Adjust,
  start: readonly number[],
  limit: number,
  suspects: readonly number[] = [],
): Result<Snooped> {
  let kept = start;
  let result = adjust(kept);
  if (!result.ok) return result;
  const out = [...suspects];
  for (;;) {
    const worst = worstReading(result.value);
    if (worst < 0 || Math.abs(result.value.readings[worst]!.standardised) <= limit) break;
    const less = kept.filter((_, i) => i !== worst);
    const next = adjust(less);
    if (!next.ok) break;
    out.push(kept[worst]!);
    kept = less;
    result = next;
  }
  return readmit(adjust, kept, out, limit);
}

/** Rounds of re-weighting; the weights settle within a few. */
const ROUNDS = 15;

/**
 * Readings far off an adjustment under which slips fade: first with Huber's weights, min(1, σ/|v|), which
 * have one solution, then from there with Cauchy's, 1/(1 + (v/σ)²), which let go of them altogether.
 */
const huber = (misfit: number): number => Math.sqrt(Math.max(1, Math.abs(misfit)));
const cauchy = (misfit: number): number => Math.hypot(1, misfit);

function robustSuspects(
  points: readonly NetworkPoint[],
  readings: readonly NetworkReading[],
  options: AdjustOptions,
  limit: number,
): number[] {
  let misfit = readings.map(() => 0);
  for (let round = 0; round < 2 * ROUNDS; round++) {
    const factor = round < ROUNDS ? huber : cauchy;
    const weighted = readings.map((r, i) => ({ ...r, sigma: r.sigma * factor(misfit[i]!) }));
    const result = adjustNetwork(points, weighted, options);
    if (!result.ok) return [];
    misfit = result.value.readings.map((r, i) => r.residual / readings[i]!.sigma);
  }
  return misfit.flatMap((m, i) => (Math.abs(m) > limit ? [i] : []));
}

function worstReading(a: Adjustment): number {
  let worst = -1;
  a.readings.forEach((r, i) => {
    const most = worst < 0 ? 0 : Math.abs(a.readings[worst]!.standardised);
    if (Math.abs(r.standardised) > most) worst = i;
  });
  return worst;
}

/** Each reading that was taken out, put back alone: it stays when all fit together. */
function readmit(
  adjust: Adjust,
  first: readonly number[],
  out: readonly number[],
  limit: number,
): Result<Snooped> {
  let kept = first;
  const readmitted: number[] = [];
  for (const reading of out) {
    const tried = [...kept, reading].sort((a, b) => a - b);
    const result = adjust(tried);
    if (!result.ok || worstSize(result.value) > limit) continue;
    kept = tried;
    readmitted.push(reading);
  }
  const result = adjust(kept);
  if (!result.ok) return result;
  const takenOut: TakenOut[] = [];
  for (const reading of out.filter((r) => !readmitted.includes(r))) {
    const described = describe(adjust, kept, reading);
    if (!described.ok) return described;
    takenOut.push(described.value);
  }
  return succeed({ adjustment: result.value, kept, takenOut, readmitted });
}

const worstSize = (a: Adjustment): number => {
  const worst = worstReading(a);
  return worst < 0 ? 0 : Math.abs(a.readings[worst]!.standardised);
};

/** The reading against all that were kept. */
function describe(adjust: Adjust, kept: readonly number[], reading: number): Result<TakenOut> {
  const tried = [...kept, reading].sort((a, b) => a - b);
  const result = adjust(tried);
  if (!result.ok) return result;
  const at = tried.indexOf(reading);
  const { standardised, slip } = result.value.readings[at]!;
  const alike = alikeReadings(result.value, at).map((i) => tried[i]!);
  return succeed({ reading, standardised, slip, alike });
}
