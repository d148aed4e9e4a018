/**
 * Who is free when: serial schedule generation with people as the one resource. Tasks are placed in
 * order of latest finish, each at the first time when those before it are done and enough people are
 * free. Source: Kolisch 1996, European Journal of Operational Research 90.
 */
import { invariant } from '../base/result';

/** What the schedule needs of a task. `after` are indices of tasks earlier in the list. */
export interface Job {
  readonly people: number;
  readonly after: readonly number[];
}

export interface Slot {
  readonly start: number;
  readonly end: number;
}

/** Jobs by index from ids; every `after` must name an earlier task. */
export function jobsOf(
  tasks: readonly {
    readonly id: string;
    readonly people: number;
    readonly after: readonly string[];
  }[],
): Job[] {
  const index = new Map(tasks.map((task, i) => [task.id, i]));
  return tasks.map((task, i) => ({
    people: task.people,
    after: task.after.map((id) => {
      const before = index.get(id);
      invariant(before !== undefined && before < i, `task ${task.id} waits for ${id}`);
      return before;
    }),
  }));
}

/** The order in which jobs are placed: by latest finish, then as listed. */
export function placingOrder(jobs: readonly Job[], minutes: ArrayLike<number>): number[] {
  const latest = new Array<number>(jobs.length).fill(0);
  for (let i = jobs.length - 1; i >= 0; i--) {
    for (const before of jobs[i]!.after) {
      latest[before] = Math.min(latest[before]!, latest[i]! - minutes[i]!);
    }
  }
  const order = jobs.map((_, i) => i);
  const isBefore = (a: number, b: number): number => latest[a]! - latest[b]! || a - b;
  return respectOrder(jobs, order.sort(isBefore));
}

/** Equal latest finishes (jobs of no length) may not put a job before one that it waits for. */
function respectOrder(jobs: readonly Job[], order: readonly number[]): number[] {
  const out: number[] = [];
  const placed = new Set<number>();
  const place = (i: number): void => {
    if (placed.has(i)) return;
    for (const before of jobs[i]!.after) place(before);
    placed.add(i);
    out.push(i);
  };
  order.forEach(place);
  return out;
}

/** Starts and ends, minutes from the start of work. No job needs more than `people`. */
export function scheduleTasks(
  jobs: readonly Job[],
  minutes: ArrayLike<number>,
  people: number,
  order: readonly number[],
): Slot[] {
  const slots = new Array<Slot>(jobs.length);
  const placed: number[] = [];
  let allDone = 0;
  for (const i of order) {
    const job = jobs[i]!;
    invariant(job.people <= people, `a task needs ${job.people} of ${people} people`);
    const ready = job.after.reduce((t, before) => Math.max(t, slots[before]!.end), 0);
    const spare = people - job.people;
    const isAlone = ready >= allDone;
    const start = isAlone ? ready : firstStart(ready, minutes[i]!, spare, { jobs, slots, placed });
    slots[i] = { start, end: start + minutes[i]! };
    allDone = Math.max(allDone, slots[i].end);
    placed.push(i);
  }
  return slots;
}

interface Placed {
  readonly jobs: readonly Job[];
  readonly slots: readonly Slot[];
  readonly placed: readonly number[];
}

/** The first time from `ready` at which at most `spare` people are busy for `length` minutes. */
function firstStart(ready: number, length: number, spare: number, state: Placed): number {
  let start = ready;
  for (let until = busyUntil(start, length, spare, state); until > start;) {
    start = until;
    until = busyUntil(start, length, spare, state);
  }
  return start;
}

/** `start` when there is room; else when the first of the jobs in the way ends. */
function busyUntil(start: number, length: number, spare: number, state: Placed): number {
  const { jobs, slots, placed } = state;
  const end = start + length;
  const inWay = placed.filter((i) => slots[i]!.start < end && slots[i]!.end > start);
  if (inWay.length === 0) return start;
  const busyAt = (t: number): number =>
    inWay.reduce(
      (n, i) => n + (slots[i]!.start <= t && slots[i]!.end > t ? jobs[i]!.people : 0),
      0,
    );
  const moments = [start, ...inWay.map((i) => slots[i]!.start).filter((t) => t > start)];
  if (moments.every((t) => busyAt(t) <= spare)) return start;
  return Math.min(...inWay.map((i) => slots[i]!.end));
}
