import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import type { Pose } from '../../src/mowing/drive';
import { prepareField } from '../../src/mowing/drive-ground';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { orderSwaths, type Stop } from '../../src/mowing/order-swaths';
import { vehicleOf } from '../../src/mowing/vehicle';
import { prepareWays } from '../../src/mowing/ways';
import { fieldWith } from '../design/grass';
import { orders } from '../tour/support/small-tours';

const UP = Math.PI / 2;
const ground = prepareField(fieldWith());
const waysOf = (id: string) =>
  prepareWays(ground, null, vehicleOf(MACHINES.find((m) => m.id === id)!));
const PLAIN = { overLay: null, finished: new Set<string>() };
const start: Pose = { x: 120, y: 220, heading: UP };

/** Short passes up and down both sides of the skin, so that many ways lead round it. */
function passes(count: number, seed: number, groups = 1): Stop[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const x = (i % 2 === 0 ? -1 : 1) * (110 + 60 * random.uniform());
    const [low, high] = [180 + 20 * random.uniform(), 230 + 20 * random.uniform()];
    const up = random.uniform() < 0.5;
    const heading = up ? UP : -UP;
    return {
      group: i % groups,
      patch: 'p',
      entry: { x, y: up ? low : high, heading },
      exit: { x, y: up ? high : low, heading },
    };
  });
}

const realCost = (ways: ReturnType<typeof waysOf>, order: readonly Stop[], goals: Pose[]) => {
  const last = order[order.length - 1]!;
  const home = Math.min(...goals.map((goal) => ways.find(last.exit, goal)?.seconds ?? Infinity));
  return order.reduce(
    (n, stop, i) => n + ways.find(i === 0 ? start : order[i - 1]!.exit, stop.entry)!.seconds,
    goals.length > 0 ? home : 0,
  );
};

describe('the order of swaths', () => {
  it('takes no more seconds of real driving than the best of all orders, or hardly any', () => {
    for (const id of ['triplex-reel', 'five-gang-reel', 'greens-reel-22']) {
      const ways = waysOf(id);
      for (const seed of [1, 2, 3]) {
        const stops = passes(6, seed);
        const goals = [start, { ...start, heading: 0 }];
        const found = orderSwaths(stops, { start, goals, ways, ...PLAIN });
        const least = Math.min(
          ...[...orders(stops.map((_, i) => i))].map((o) =>
            realCost(
              ways,
              o.map((i) => stops[i]!),
              goals,
            ),
          ),
        );
        expect(found).toHaveLength(stops.length);
        expect(realCost(ways, found, goals)).toBeLessThanOrEqual(1.02 * least);
      }
    }
  });

  it('finishes every group before the next, whatever that costs', () => {
    const stops = passes(24, 7, 3);
    const found = orderSwaths(stops, { start, goals: [], ways: waysOf('triplex-reel'), ...PLAIN });
    expect(new Set(found).size).toBe(24);
    found.forEach((stop, i) => expect(stop.group).toBe(Math.floor(i / 8)));
  });
});

describe('ways that were priced', () => {
  it('are the ways that are driven', () => {
    const ways = waysOf('triplex-reel');
    const to = { x: -120, y: 220, heading: -UP };
    expect(ways.find(start, to)).toBe(ways.find({ ...start }, { ...to }));
    expect(ways.find(start, { x: 0, y: 60, heading: UP })).toBeNull();
  });

  it('are estimated within a fifth of the real time over open ground and round the skin', () => {
    const ways = waysOf('triplex-reel');
    const stops = passes(14, 3);
    const seconds = ways.estimate(
      stops.map((s) => s.exit),
      stops.map((s) => s.entry),
    );
    const ratios = stops.flatMap((a, i) =>
      stops.flatMap((b, j) =>
        i === j ? [] : [ways.find(a.exit, b.entry)!.seconds / seconds(i, j)],
      ),
    );
    ratios.sort((a, b) => a - b);
    expect(ratios[Math.floor(0.1 * ratios.length)]).toBeGreaterThan(0.8);
    expect(ratios[Math.floor(0.9 * ratios.length)]).toBeLessThan(1.25);
  });
});
