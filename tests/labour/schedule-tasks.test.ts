import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  jobsOf,
  placingOrder,
  scheduleTasks,
  type Job,
  type Slot,
} from '../../src/labour/schedule-tasks';

const network = fc
  .array(
    fc.record({
      people: fc.integer({ min: 1, max: 3 }),
      links: fc.array(fc.nat(30), { maxLength: 3 }),
      minutes: fc.integer({ min: 0, max: 40 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((rows) => ({
    jobs: rows.map((row, i): Job => ({
      people: row.people,
      after: i === 0 ? [] : [...new Set(row.links.map((link) => link % i))],
    })),
    minutes: rows.map((row) => row.minutes),
  }));

const schedule = (jobs: readonly Job[], minutes: readonly number[], people: number): Slot[] =>
  scheduleTasks(jobs, minutes, people, placingOrder(jobs, minutes));

describe('the schedule', () => {
  it('never starts a task before its turn nor uses more people than there are', () => {
    fc.assert(
      fc.property(network, fc.integer({ min: 3, max: 6 }), ({ jobs, minutes }, people) => {
        const slots = schedule(jobs, minutes, people);
        slots.forEach((slot, i) => {
          expect(slot.end - slot.start).toBe(minutes[i]);
          for (const before of jobs[i]!.after) {
            expect(slot.start).toBeGreaterThanOrEqual(slots[before]!.end);
          }
        });
        for (let minute = 0; minute < 600; minute++) {
          const t = minute + 0.5;
          const busy = slots.reduce(
            (n, slot, i) => n + (slot.start < t && slot.end > t ? jobs[i]!.people : 0),
            0,
          );
          expect(busy).toBeLessThanOrEqual(people);
        }
      }),
      { seed: 22, numRuns: 60 },
    );
  });

  const few = fc
    .sample(network, { seed: 23, numRuns: 40 })
    .map(({ jobs, minutes }) => ({ jobs: jobs.slice(0, 6), minutes: minutes.slice(0, 6) }));
  const lastEnd = (slots: readonly Slot[]): number => Math.max(...slots.map((s) => s.end));
  const best = few.map(({ jobs, minutes }) =>
    Math.min(...orders(jobs).map((order) => lastEnd(scheduleTasks(jobs, minutes, 3, order)))),
  );

  it('stays between the best order, tried by brute force, and one task at a time', () => {
    few.forEach(({ jobs, minutes }, i) => {
      const end = lastEnd(schedule(jobs, minutes, 3));
      expect(end).toBeGreaterThanOrEqual(best[i]!);
      expect(end).toBeLessThanOrEqual(minutes.reduce((sum, m) => sum + m, 0));
    });
  });

  it('is near the best order on the whole (regression snapshot of these draws)', () => {
    const sum = (values: readonly number[]): number => values.reduce((n, v) => n + v, 0);
    const ends = few.map(({ jobs, minutes }) => lastEnd(schedule(jobs, minutes, 3)));
    expect(sum(ends) / sum(best)).toBeLessThan(1.04);
  });

  it('refuses a task that waits for one that is not there', () => {
    expect(() => jobsOf([{ id: 'a', people: 1, after: ['b'] }])).toThrow(/invariant/);
  });
});

/** Every order in which no job comes before one that it waits for. */
function orders(jobs: readonly Job[]): number[][] {
  const grow = (taken: readonly number[]): number[][] =>
    taken.length === jobs.length
      ? [[...taken]]
      : jobs.flatMap((job, i) =>
          !taken.includes(i) && job.after.every((b) => taken.includes(b))
            ? grow([...taken, i])
            : [],
        );
  return grow([]);
}
