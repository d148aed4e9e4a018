import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { findTurns } from '../../src/mowing/dubins';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { tablePoses, turnClock } from '../../src/mowing/turn-seconds';
import { driveSeconds, vehicleOf } from '../../src/mowing/vehicle';
import { turnStretches } from '../../src/mowing/dubins';

const random = seededRandom(5);
const pose = () => ({
  x: 120 * random.uniform(),
  y: 60 * random.uniform(),
  heading: 8 * random.uniform() - 4,
});

describe('the time of the quickest turn', () => {
  it.each(MACHINES.map((m) => [m.id, m] as const))(
    'of %s is that of the quickest turn written out and driven',
    (_, machine) => {
      const vehicle = vehicleOf(machine);
      const [from, to] = [Array.from({ length: 25 }, pose), Array.from({ length: 25 }, pose)];
      const clock = turnClock(vehicle, tablePoses(vehicle, from), tablePoses(vehicle, to));
      from.forEach((a, i) =>
        to.forEach((b, j) => {
          const times = findTurns(a, b, vehicle.radius, machine.mayReverse).map((turn) =>
            driveSeconds(vehicle, turnStretches(turn, vehicle.radius)),
          );
          expect(clock(i, j)).toBeCloseTo(Math.min(...times), 6);
        }),
      );
    },
  );
});
