/** Passes played along their path, forty times as fast as they are driven. */
import type { Leg } from '../../mowing/model';
import type { Point } from '../../geometry/point';
import { polylineAt, polylineLength } from '../../geometry/polyline';
import { view } from '../state/view.svelte';
import type { PassSet } from './pass-sets';

const SPEED = 40;

export interface Moment {
  readonly leg: Leg;
  readonly at: Point;
  readonly finished: boolean;
}

/** Where the machine is, `seconds` into the legs; null without legs. */
export function momentOf(legs: readonly Leg[], seconds: number): Moment | null {
  let left = seconds;
  for (const leg of legs) {
    if (left <= leg.seconds && leg.points.length > 0) {
      const share = leg.seconds > 0 ? left / leg.seconds : 1;
      const at = polylineAt(leg.points, share * polylineLength(leg.points));
      return { leg, at, finished: false };
    }
    left -= leg.seconds;
  }
  const last = legs[legs.length - 1];
  const end = last?.points[last.points.length - 1];
  return last && end ? { leg: last, at: end, finished: true } : null;
}

/** Seconds into the legs at which the numbered pass begins. */
export function startOf(legs: readonly Leg[], pass: number | null): number {
  let sum = 0;
  for (const leg of legs) {
    if (leg.kind === 'mow' && (pass === null || leg.pass === pass)) return sum;
    sum += leg.seconds;
  }
  return 0;
}

/** Plays from the pass in hand until the end, until stopped, or until another set is taken. */
export function play(set: PassSet): void {
  const legs = set.legs;
  view.playAt = startOf(legs, view.pass?.number ?? null);
  let before: number | null = null;
  const frame = (now: number): void => {
    if (view.playAt === null || view.stage !== 'passes') return;
    view.playAt += before === null ? 0 : (Math.min(100, now - before) / 1000) * SPEED;
    before = now;
    const moment = momentOf(legs, view.playAt);
    if (!moment || moment.finished) {
      view.playAt = null;
      return;
    }
    const number = moment.leg.kind === 'mow' ? moment.leg.pass : null;
    if (number !== null && number !== view.pass?.number) {
      view.pass = { machine: set.machine.id, number };
    }
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}
