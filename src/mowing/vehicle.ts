/** A machine as it drives: sizes in feet, speeds in feet a second, and how long a drive takes. */
import { mph, type Feet, type Seconds } from '../base/units';
import { gearChanges, type Stretch } from './drive';
import { bodyOf, type Body } from './drive-ground';
import type { Machine } from './model';

export interface Vehicle {
  readonly machine: Machine;
  readonly body: Body;
  /** Smallest turning circle of the middle of the cutting line. */
  readonly radius: Feet;
  readonly cuttingFps: number;
  readonly turningFps: number;
  readonly runningFps: number;
  readonly gearSeconds: Seconds;
}

/**
 * Time to stop and change between forward and backing: 3 s for a ridden machine, 1 s on foot.
 * Assumption: no published time was found.
 */
const GEAR_SECONDS = { wide: 3, narrow: 1 } as const;

/** A pivot on the spot is driven as a circle of this radius: a step round the handle. */
const PIVOT_FT = 0.5;

/** A straight of this length or more, reels up, is an empty run at running speed; feet. */
export const RUN_FROM_FT = 25;

/** The machine in feet and feet a second; a pivoting one turns about a small circle. */
export function vehicleOf(machine: Machine): Vehicle {
  return {
    machine,
    body: bodyOf(machine),
    radius: Math.max(machine.turnRadiusFt, PIVOT_FT),
    cuttingFps: mph(machine.cuttingMph),
    turningFps: mph(machine.turningMph),
    runningFps: mph(machine.runningMph),
    gearSeconds: GEAR_SECONDS[machine.role],
  };
}

/** An empty run: straight ahead for long enough to speed up. */
export const isRun = (stretch: Stretch): boolean =>
  stretch.gear === 1 && stretch.curvature === 0 && stretch.lengthFt >= RUN_FROM_FT;

/** Time of one stretch with the reels up. */
export const stretchSeconds = (vehicle: Vehicle, stretch: Stretch): Seconds =>
  stretch.lengthFt / (isRun(stretch) ? vehicle.runningFps : vehicle.turningFps);

/** Time of a drive with the reels up, gear changes included, lifting and lowering not. */
export function driveSeconds(vehicle: Vehicle, stretches: readonly Stretch[]): Seconds {
  return stretches.reduce(
    (n, s) => n + stretchSeconds(vehicle, s),
    gearChanges(stretches) * vehicle.gearSeconds,
  );
}
