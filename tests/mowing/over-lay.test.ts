import { describe, expect, it } from 'vitest';
import type { Patch } from '../../src/design/model';
import type { Point } from '../../src/geometry/point';
import { mapFinishedLays } from '../../src/mowing/finished-lays';
import type { Leg, Pass } from '../../src/mowing/model';
import { OVER_LAY_SECONDS_PER_FT, overLayFt } from '../../src/mowing/over-lay';
import type { Swath } from '../../src/mowing/swath-model';
import { demoRoute } from '../support/demo-route';

/** Two patches 30 ft wide side by side, 100 ft long: the left one laid up, the right one down. */
const patch = (id: string, x: number, bearingDeg: number): Patch => ({
  id,
  kind: 'background',
  layer: 0,
  tool: 'wide',
  lays: [{ order: 1, bearingDeg }],
  region: [
    [
      { x, y: 0 },
      { x: x + 30, y: 0 },
      { x: x + 30, y: 100 },
      { x, y: 100 },
    ],
  ],
  areaSqFt: 3000,
});
const PATCHES = [patch('left', 0, 0), patch('right', 30, 180)];
const up = (x: number): Point[] => [
  { x, y: 0 },
  { x, y: 100 },
];
const down = (x: number): Point[] => up(x).reverse();
const swath = (id: string, line: Point[]): Swath => ({
  id: `${id}/1`,
  patch: id,
  role: 'wide',
  phase: 'background',
  line,
  widthFt: 30,
  group: 0,
});
const lays = mapFinishedLays(PATCHES, [swath('left', up(15)), swath('right', down(45))]);

const leg = (over: Partial<Leg>): Leg => ({
  seq: 0,
  machine: 'm',
  visit: 1,
  phase: 'background',
  kind: 'mow',
  pass: null,
  patch: null,
  widthFt: 30,
  points: [],
  startS: 0,
  seconds: 10,
  reels: 'down',
  lays: true,
  ...over,
});
const pass = (number: number, id: string, line: Point[]): Pass => ({
  number,
  machine: 'm',
  phase: 'background',
  patch: id,
  line,
  lengthFt: 100,
  widthFt: 30,
});

describe('feet against the lay', () => {
  /** Whole feet by patch. */
  const against = (way: Point[]) => lays.against(way).map((a) => [a.patch, Math.round(a.feet)]);

  it('are those more than 90° off the lay of the patch that is under the middle', () => {
    expect(against(up(10))).toEqual([]);
    expect(against(down(10))).toEqual([['left', 100]]);
    expect(against(down(45))).toEqual([]);
    const slant = [
      { x: 0, y: 90 },
      { x: 60, y: 10 },
    ];
    // 100 ft long, half of it over the left patch, going down: against that lay, with the other.
    expect(against(slant)).toEqual([['left', 50]]);
    expect(against([...slant].reverse())).toEqual([['right', 50]]);
  });

  it('count once the last pass of the patch is down, not before', () => {
    const passes = [pass(1, 'left', up(10)), pass(2, 'left', up(20))];
    const legs = [
      leg({ pass: 1, points: up(10), startS: 0 }),
      leg({ kind: 'run', points: down(15), startS: 10, reels: 'up' }),
      leg({ pass: 2, points: up(20), startS: 20 }),
    ];
    expect(overLayFt(lays, passes, legs)).toBe(0);
    const late = leg({ kind: 'run', points: down(12), startS: 30, reels: 'up' });
    expect(overLayFt(lays, passes, [...legs, late])).toBeCloseTo(100, 6);
    const mown = leg({ pass: 3, points: down(15), startS: 40 });
    const other = pass(3, 'right', down(15));
    expect(overLayFt(lays, [...passes, other], [...legs, late, mown])).toBeCloseTo(200, 6);
  });
});

describe('the price of driving over finished grass', () => {
  it('makes the emblem’s route do less of it', () => {
    const feet = [0, OVER_LAY_SECONDS_PER_FT].map((overLaySecondsPerFt) => {
      const { plan } = demoRoute('lantern-emblem', (p) => ({
        ...p,
        mowing: { ...p.mowing, overLaySecondsPerFt },
      }));
      return plan.overLayFt;
    });
    expect(feet[1]!).toBeLessThan(0.9 * feet[0]!);
  });
});
