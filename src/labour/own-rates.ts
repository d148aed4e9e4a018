/** The crew's own pace, from the times that its phones brought back. */
import type { Seconds } from '../base/units';
import type { LabourSpec } from './model';
import type { RateId } from './rates';
import { quantile } from './spread';

/** One stake set, or one move of the tapes. */
export interface TimedWork {
  readonly task: RateId;
  readonly seconds: Seconds;
}

export interface OwnRate {
  readonly task: RateId;
  /** Times that count, and those left out as too short to be a stake's own. */
  readonly used: number;
  readonly leftOut: number;
  /** Minutes each; null with fewer than `LEAST_TIMES` that count. */
  readonly rate: LabourSpec['rates'][string] | null;
}

/** Fewer say more about the stakes than about the crew (assumption). */
export const LEAST_TIMES = 10;
/** Nobody pulls two tapes and drives a stake in less: it was ticked afterwards (assumption). */
const SHORTEST_S = 8;
/** Low and high: nine times in ten above, nine in ten below. */
const LOW = 0.1;
const HIGH = 0.9;

/**
 * A rate per task, in the order in which tasks first occur. Low and high are the 10 % and 90 % points
 * of the times; likely is what makes the mean of the three, (low + 4 × likely + high) ÷ 6, the mean of
 * the times, so that as many stakes are planned at what they took; kept between low and high.
 */
export function ownRates(times: readonly TimedWork[]): OwnRate[] {
  const tasks = [...new Set(times.map((t) => t.task))];
  return tasks.map((task) => {
    const all = times.filter((t) => t.task === task).map((t) => t.seconds);
    const counted = all.filter((seconds) => seconds >= SHORTEST_S);
    return {
      task,
      used: counted.length,
      leftOut: all.length - counted.length,
      rate: counted.length < LEAST_TIMES ? null : rateOf(counted),
    };
  });
}

function rateOf(seconds: readonly Seconds[]): LabourSpec['rates'][string] {
  const minutes = seconds.map((s) => s / 60).sort((a, b) => a - b);
  const mean = minutes.reduce((sum, m) => sum + m, 0) / minutes.length;
  const low = quantile(minutes, LOW);
  const high = quantile(minutes, HIGH);
  const likely = Math.min(high, Math.max(low, (6 * mean - low - high) / 4));
  return { low: toHundredths(low), likely: toHundredths(likely), high: toHundredths(high) };
}

const toHundredths = (value: number): number => Math.round(value * 100) / 100;
