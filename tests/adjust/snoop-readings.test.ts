import { describe, expect, it } from 'vitest';
import { adjustNetwork } from '../../src/adjust/adjust-network';
import { freeRows } from '../../src/adjust/free-rows';
import type { DistanceReading, NetworkPoint } from '../../src/adjust/network-model';
import { snoopReadings } from '../../src/adjust/snoop-readings';
import { seededRandom } from '../../src/base/random';
import type { Point } from '../../src/geometry/point';

const SIGMA = 0.03;
const truth: Readonly<Record<string, Point>> = {
  HP: { x: 0, y: 0 },
  '1B': { x: 63.6, y: 63.6 },
  '2B': { x: 0, y: 127.3 },
  '3B': { x: -63.6, y: 63.6 },
  s1: { x: -40, y: 215 },
  s2: { x: 5, y: 230 },
  s3: { x: 45, y: 205 },
};
const points: NetworkPoint[] = Object.entries(truth).map(([id, at]) => ({
  id,
  at,
  fixed: !id.startsWith('s'),
}));

/** Every base to every stake and the stakes to each other, with honest errors. */
function readings(seed: number): DistanceReading[] {
  const random = seededRandom(seed);
  const ids = Object.keys(truth);
  return ids.flatMap((from, i) =>
    ids
      .slice(i + 1)
      .filter((to) => to.startsWith('s'))
      .map((to) => {
        const d = Math.hypot(truth[from]!.x - truth[to]!.x, truth[from]!.y - truth[to]!.y);
        return { from, to, distance: d + SIGMA * random.normal(), sigma: SIGMA };
      }),
  );
}

const spoil = (list: readonly DistanceReading[], at: number, by: number): DistanceReading[] =>
  list.map((r, i) => (i === at ? { ...r, distance: r.distance + by } : r));

function snooped(list: readonly DistanceReading[], options = {}) {
  const result = snoopReadings(points, list, options);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('snooping', () => {
  it('finds a foot in any one reading, and how far it is out', () => {
    readings(1).forEach((_, at) => {
      const s = snooped(spoil(readings(1), at, 1));
      expect(s.takenOut.map((t) => t.reading)).toEqual([at]);
      expect(Math.abs(s.takenOut[0]!.slip - 1)).toBeLessThan(5 * SIGMA);
      expect(s.takenOut[0]!.alike).toEqual([]);
    });
  });

  it('finds three slips one after the other', () => {
    const s = snooped(spoil(spoil(spoil(readings(2), 0, 3), 5, -2), 13, 1));
    expect(s.takenOut.map((t) => t.reading).sort((a, b) => a - b)).toEqual([0, 5, 13]);
  });

  it('says that three tapes to one point cannot tell which of them is wrong', () => {
    const three = spoil(
      readings(1).filter((r) => r.to === 's2' && r.from !== '2B' && r.from !== 's1'),
      1,
      1,
    );
    const ends = points.filter((p) => p.fixed || p.id === 's2');
    const s = snoopReadings(ends, three);
    if (!s.ok) throw new Error(JSON.stringify(s.problems));
    const [out] = s.value.takenOut;
    expect([out!.reading, ...out!.alike].sort()).toEqual([0, 1, 2]);
  });

  it('takes back a reading that was only dragged along', () => {
    // A slip so large that its neighbours leave first when the limit is low.
    for (let seed = 1; seed <= 10; seed++) {
      const s = snooped(spoil(spoil(readings(seed), 2, 1), 3, 1));
      const out = s.takenOut.map((t) => t.reading);
      for (const r of s.readmitted) expect(out).not.toContain(r);
      expect(s.kept.length + out.length).toBe(readings(seed).length);
      for (const r of s.adjustment.readings) expect(Math.abs(r.standardised)).toBeLessThan(3.2906);
    }
  });

  it('raises false alarms as often as the test’s 0.1 % says', () => {
    // 15 readings, 9 degrees of freedom, 600 jobs: 9000 tests, about 9 expected beyond 3.29.
    let beyond = 0;
    for (let seed = 1; seed <= 600; seed++) {
      const a = adjustNetwork(points, readings(seed), { start: 'given' });
      if (!a.ok) throw new Error('the network did not adjust');
      beyond += a.value.readings.filter((r) => Math.abs(r.standardised) > 3.290527).length;
    }
    expect(beyond).toBeGreaterThanOrEqual(2);
    expect(beyond).toBeLessThanOrEqual(19);
  });
});

describe('freeing readings', () => {
  it('gives what the adjustment without them gives', () => {
    const list = spoil(readings(3), 4, 0.2);
    const all = adjustNetwork(points, list);
    const without = adjustNetwork(
      points,
      list.filter((_, i) => i !== 4 && i !== 6),
    );
    if (!all.ok || !without.ok) throw new Error('the network did not adjust');
    const freed = freeRows(all.value, [4, 6]);
    expect(all.value.chiSquare - freed.drop).toBeCloseTo(without.value.chiSquare, 2);
    without.value.points.forEach((p, i) => {
      const [x, y] = all.value.places[p.id]!;
      const before = all.value.points[i]!.at;
      expect(before.x + freed.step[x]!).toBeCloseTo(p.at.x, 3);
      expect(before.y + freed.step[y]!).toBeCloseTo(p.at.y, 3);
    });
    const single = freeRows(all.value, [4]);
    expect(single.slips[0]).toBeCloseTo(all.value.readings[4]!.slip, 9);
    expect(single.drop).toBeCloseTo(all.value.readings[4]!.standardised ** 2, 9);
  });
});
