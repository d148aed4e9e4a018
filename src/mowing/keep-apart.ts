/**
 * Machines at work together kept a body's length apart: the earlier in the list goes as it is, a later
 * one waits before a step that would bring it too near. What waiting cannot help is counted.
 */
import type { Feet, Seconds } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { polylineLength, polylineAt } from '../geometry/polyline';
import type { Step } from './drive-machine';

/** Times looked at along a step, and pauses tried, seconds. */
const EVERY: Seconds = 1;
const PAUSE: Seconds = 5;
const LONGEST_PAUSE: Seconds = 600;

export interface Course {
  readonly steps: readonly Step[];
  /** Where the machine stands at first. */
  readonly start: Point;
  readonly lengthFt: Feet;
}

export interface Apart {
  /** Steps of each course with its pauses. */
  readonly steps: readonly (readonly Step[])[];
  /** Steps that come too near another machine all the same. */
  readonly meetings: number;
}

/** All courses start together. */
export function keepApart(courses: readonly Course[]): Apart {
  const done: Course[] = [];
  let meetings = 0;
  for (const course of courses) {
    const found = fitIn(course, done);
    done.push({ ...course, steps: found.steps });
    meetings += found.meetings;
  }
  return { steps: done.map((c) => c.steps), meetings };
}

function fitIn(course: Course, others: readonly Course[]): { steps: Step[]; meetings: number } {
  const places = others.map((other) => placeAt(other));
  const tooNear = (at: Point, t: Seconds): boolean =>
    others.some((o, k) => pointDistance(places[k]!(t), at) < Math.max(o.lengthFt, course.lengthFt));
  const steps: Step[] = [];
  let [clock, at, meetings] = [0, course.start, 0];
  for (const step of course.steps) {
    const along = stepPlace(step);
    const meets = (from: Seconds): boolean =>
      anyTime(step.seconds, (s) => tooNear(along(s), from + s));
    let pause = 0;
    while (pause <= LONGEST_PAUSE && meets(clock + pause)) pause += PAUSE;
    if (pause > LONGEST_PAUSE || anyTime(pause, (s) => tooNear(at, clock + s))) {
      if (meets(clock)) meetings++;
      pause = 0;
    }
    if (pause > 0) steps.push(standing(step, at, pause));
    steps.push(step);
    clock += pause + step.seconds;
    at = step.points[step.points.length - 1]!;
  }
  return { steps, meetings };
}

function anyTime(seconds: Seconds, holds: (s: Seconds) => boolean): boolean {
  for (let s = EVERY; s <= seconds; s += EVERY) if (holds(s)) return true;
  return false;
}

/** Where a machine is, `t` seconds into its course; afterwards where it ended. */
function placeAt({ steps, start }: Course): (t: Seconds) => Point {
  const ends: Seconds[] = [];
  steps.reduce((n, step) => (ends.push(n + step.seconds), n + step.seconds), 0);
  const places = steps.map(stepPlace);
  return (t) => {
    const k = firstAfter(ends, t);
    const step = steps[k];
    if (step) return places[k]!(t - ends[k]! + step.seconds);
    const last = steps[steps.length - 1];
    return last ? last.points[last.points.length - 1]! : start;
  };
}

function firstAfter(ends: readonly Seconds[], t: Seconds): number {
  let [low, high] = [0, ends.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! > t) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** At an even pace along the step's points. */
function stepPlace({ points, seconds }: Step): (s: Seconds) => Point {
  const length = polylineLength(points);
  if (length === 0 || seconds === 0) return () => points[0]!;
  return (s) => polylineAt(points, (length * Math.min(s, seconds)) / seconds);
}

/** Standing still with the reels up, as part of the phase of the step that follows. */
export const standing = (
  next: Pick<Step, 'phase' | 'widthFt'>,
  at: Point,
  seconds: Seconds,
): Step => ({
  phase: next.phase,
  kind: 'run',
  pass: null,
  patch: null,
  widthFt: next.widthFt,
  points: [{ x: at.x, y: at.y }],
  seconds,
  reels: 'up',
  lays: false,
});
