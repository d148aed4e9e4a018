/** Many possible days: every task drawn from its spread, a common factor making days good or bad. */
import { seededRandom } from '../base/random';
import { sourced } from '../base/sourced';
import type { PlannedTask } from './list-tasks';
import { jobsOf, placingOrder, scheduleTasks, type Slot } from './schedule-tasks';
import {
  lognormalAt,
  lognormalOf,
  NORMAL_90,
  pertMoments,
  quantile,
  type Lognormal,
} from './spread';

/** Days drawn. */
export const DRAWS = 2000;
/** Crews that are slow at one task are slow at others: correlation of any two tasks' times. */
export const COMMON_SHARE = sourced(0.3, 'correlation', 'assumption');
const SEED = 20;

export interface SimulatedHours {
  readonly minutesP50: readonly number[];
  readonly minutesP90: readonly number[];
  /** On the schedule with every task at its middle time. */
  readonly slots: readonly Slot[];
  /** Sorted, minutes. */
  readonly clockMinutes: Float64Array;
  readonly personMinutes: Float64Array;
}

/** `people` is at least what the largest task needs. Equal input gives equal draws. */
export function simulateHours(tasks: readonly PlannedTask[], people: number): SimulatedHours {
  const spreads = tasks.map(taskSpread);
  const minutesP50 = spreads.map((s) => (s ? lognormalAt(s, 0) : 0));
  const jobs = jobsOf(tasks);
  const order = placingOrder(jobs, minutesP50);
  const clockMinutes = new Float64Array(DRAWS);
  const personMinutes = new Float64Array(DRAWS);
  const random = seededRandom(SEED);
  for (let n = 0; n < DRAWS; n++) {
    const minutes = drawMinutes(spreads, () => random.normal());
    clockMinutes[n] = lastEnd(scheduleTasks(jobs, minutes, people, order));
    personMinutes[n] = tasks.reduce((sum, task, i) => sum + task.people * minutes[i]!, 0);
  }
  return {
    minutesP50,
    minutesP90: spreads.map((s) => (s ? lognormalAt(s, NORMAL_90) : 0)),
    slots: scheduleTasks(jobs, minutesP50, people, order),
    clockMinutes: clockMinutes.sort(),
    personMinutes: personMinutes.sort(),
  };
}

/** Minutes to the last task's end with every task at its middle time. */
export function middleDay(tasks: readonly PlannedTask[], people: number): number {
  const minutes = tasks.map(taskSpread).map((s) => (s ? lognormalAt(s, 0) : 0));
  const jobs = jobsOf(tasks);
  return lastEnd(scheduleTasks(jobs, minutes, people, placingOrder(jobs, minutes)));
}

/** Null for a task that takes no time at all (an own rate may say so). */
function taskSpread(task: PlannedTask): Lognormal | null {
  const { mean, sd } = pertMoments(task.rate);
  const scale = task.quantity * task.minutesPerRate;
  return mean > 0 && scale > 0 ? lognormalOf(mean * scale, sd * scale) : null;
}

function drawMinutes(spreads: readonly (Lognormal | null)[], normal: () => number): number[] {
  const shared = Math.sqrt(COMMON_SHARE.value) * normal();
  const own = Math.sqrt(1 - COMMON_SHARE.value);
  return spreads.map((s) => {
    const z = shared + own * normal();
    return s ? lognormalAt(s, z) : 0;
  });
}

const lastEnd = (slots: readonly Slot[]): number =>
  slots.reduce((t, slot) => Math.max(t, slot.end), 0);

/** The point of sorted minutes below which `share` (0 to 1) of them lie, in hours. */
export const hoursAt = (sorted: Float64Array, share: number): number =>
  quantile(sorted, share) / 60;
