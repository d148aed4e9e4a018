/** Sums over legs. */
import type { Feet, Seconds } from '../base/units';
import { polylineLength } from '../geometry/polyline';
import type { Leg } from './model';

/** Length driven in legs of one kind, feet. */
export const driveFt = (legs: readonly Leg[], kind: Leg['kind']): Feet =>
  legs.reduce((n, leg) => (leg.kind === kind ? n + polylineLength(leg.points) : n), 0);

/** Time of all the legs. */
export const driveSeconds = (legs: readonly Leg[]): Seconds =>
  legs.reduce((n, leg) => n + leg.seconds, 0);
