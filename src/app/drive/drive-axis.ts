/**
 * The visit along a line: driving to scale, the count drawn short. Seconds of the visit's clock on one
 * side, seconds along the line on the other; both run from 0.
 */
import type { Seconds } from '../../base/units';
import type { Leg } from '../../mowing/model';

export interface DriveAxis {
  /** End of the last leg. */
  readonly endS: Seconds;
  /** The count, from the first head flagged until it is signed; null when nothing is staked. */
  readonly hold: { readonly fromS: Seconds; readonly toS: Seconds } | null;
  /** How long the count is on the line. */
  readonly holdLength: Seconds;
  /** The whole line. */
  readonly length: Seconds;
}

/** Share of the driving that the count takes up on the line; a longer one is drawn no longer. */
const HOLD_SHARE = 0.1;

export function driveAxis(legs: readonly Leg[]): DriveAxis {
  const endS = legs.reduce((end, leg) => Math.max(end, leg.startS + leg.seconds), 0);
  const leg = legs.find((l) => l.kind === 'hold');
  const hold = leg ? { fromS: leg.startS, toS: leg.startS + leg.seconds } : null;
  const holdS = leg?.seconds ?? 0;
  const driving = endS - holdS;
  const holdLength = Math.min(holdS, driving * HOLD_SHARE);
  return { endS, hold, holdLength, length: driving + holdLength };
}

/** Place along the line of a moment of the clock. */
export function alongOf(axis: DriveAxis, clockS: Seconds): Seconds {
  const { hold, holdLength } = axis;
  if (!hold || clockS <= hold.fromS) return clockS;
  const whole = hold.toS - hold.fromS;
  if (clockS >= hold.toS) return clockS - whole + holdLength;
  return hold.fromS + ((clockS - hold.fromS) / whole) * holdLength;
}

/** Moment of the clock at a place along the line. */
export function clockOf(axis: DriveAxis, along: Seconds): Seconds {
  const { hold, holdLength } = axis;
  if (!hold || along <= hold.fromS) return along;
  const whole = hold.toS - hold.fromS;
  if (along >= hold.fromS + holdLength) return along - holdLength + whole;
  return hold.fromS + ((along - hold.fromS) / holdLength) * whole;
}
