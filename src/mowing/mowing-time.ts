/** Capacity: how much ground a machine does in an hour, and how far turns and runs eat into it. */
import { SQUARE_FEET_PER_ACRE, type Feet, type Seconds } from '../base/units';

/** 43 560 sq ft to the acre over 5 280 ft to the mile. Source: ASABE EP496; Kentucky AEN-73, 1991. */
export const CAPACITY_DIVISOR = SQUARE_FEET_PER_ACRE / 5280;

/**
 * Effective field capacity C = S·W·E / 8.25, acres an hour, of a machine `widthFt` wide at `speedMph`
 * with field efficiency `efficiency` (0 to 1). Source: ASABE EP496; bulletins PM 696 and A3-24.
 */
export const effectiveCapacity = (widthFt: Feet, speedMph: number, efficiency: number): number =>
  (speedMph * widthFt * efficiency) / CAPACITY_DIVISOR;

/**
 * Field efficiency reached: the capacity got (`areaSqFt` in `seconds`) over that of the full width at
 * full speed without a turn. 0 when no time was spent.
 */
export function reachedEfficiency(
  areaSqFt: number,
  seconds: Seconds,
  widthFt: Feet,
  speedMph: number,
): number {
  if (seconds <= 0) return 0;
  const acresPerHour = areaSqFt / SQUARE_FEET_PER_ACRE / (seconds / 3600);
  return acresPerHour / effectiveCapacity(widthFt, speedMph, 1);
}
