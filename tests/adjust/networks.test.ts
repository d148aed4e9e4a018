import { describe, expect, it } from 'vitest';
import { adjustNetwork } from '../../src/adjust/adjust-network';
import { chiSquareAbove } from '../../src/adjust/chi-square';
import { readingRow, numberUnknowns } from '../../src/adjust/linear-rows';
import type { NetworkPoint, NetworkReading } from '../../src/adjust/network-model';
import { twoSidedLimit } from '../../src/adjust/normal-quantile';
import { CRITICAL, DETECTABLE } from '../../src/adjust/reliability';
import { seededRandom } from '../../src/base/random';
import type { Point } from '../../src/geometry/point';

const point = (
  id: string,
  x: number,
  y: number,
  fixed: NetworkPoint['fixed'] = false,
): NetworkPoint => ({ id, at: { x, y }, fixed });

function adjusted(...args: Parameters<typeof adjustNetwork>) {
  const result = adjustNetwork(...args);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** Strang & Borre 1997, example 10.1; its point and precision are checked beside this file. */
const published = (shift: number, start: Point) =>
  adjusted(
    [
      point('1', 170.71 + shift, 270.71 + shift, true),
      point('2', 100 + shift, 100 + shift, true),
      point('3', 241.42 + shift, 100 + shift, true),
      point('P', start.x + shift, start.y + shift),
    ],
    [100.01, 100.02, 100.03].map((distance, i) => ({
      from: String(i + 1),
      to: 'P',
      distance,
      sigma: 0.01,
    })),
  );

describe('a published point (Strang & Borre 1997, example 10.1)', () => {
  it('comes out alike in national coordinates of 5.7 million', () => {
    const p = published(5_700_000, { x: 170.71, y: 170.71 }).points[0]!;
    expect((p.at.x - 5_700_000).toFixed(4)).toBe('170.7029');
    expect((p.at.y - 5_700_000).toFixed(4)).toBe('170.7234');
  });

  it('comes out alike from start values beyond the controls, on their line, and at a control', () => {
    const starts = [
      { x: 900, y: -700 },
      { x: 135, y: 185.3 },
      { x: 170.71, y: 100 },
      { x: 100, y: 100 },
      { x: -3000, y: 5000 },
    ];
    for (const start of starts) {
      const p = published(0, start).points[0]!;
      expect([p.at.x.toFixed(4), p.at.y.toFixed(4)]).toEqual(['170.7029', '170.7234']);
    }
  });
});

describe('equations of a network', () => {
  const points = [point('A', 3, 5), point('B', 90, 40), point('P', 35, 61)];
  const kinds = ['distance', 'along', 'across', 'middle'] as const;
  const unknowns = numberUnknowns(points, [{ id: 'tape' }], []);
  const read = (kind: (typeof kinds)[number]): NetworkReading =>
    kind === 'distance'
      ? { from: 'A', to: 'P', distance: 50, sigma: 1, tape: 'tape' }
      : { kind, point: 'P', from: 'A', to: 'B', distance: 50, sigma: 1, tape: 'tape' };
  const stateOf = (v: readonly number[]) => ({
    at: new Map([...unknowns.points].map(([id, [x, y]]) => [id, { x: v[x]!, y: v[y]! }])),
    scale: new Map([['tape', v[6]!]]),
  });
  const inOrder = [...unknowns.points.keys()].map((id) => points.find((p) => p.id === id)!);
  const here = [...inOrder.flatMap((p) => [p.at.x, p.at.y]), 0.01];

  it.each(kinds)('have the derivatives of a %s that small moves show', (kind) => {
    const row = readingRow(read(kind), unknowns, stateOf(here));
    const step = 1 / 4096;
    for (let at = 0; at < 7; at++) {
      const residualAt = (by: number) =>
        readingRow(read(kind), unknowns, stateOf(here.map((v, i) => (i === at ? v + by : v))))
          .residual;
      const slope = (residualAt(step) - residualAt(-step)) / (2 * step);
      expect(row.places.find((p) => p.at === at)?.by ?? 0).toBeCloseTo(slope, 5);
    }
  });

  it('read the foot, the height and the middle of a right triangle, left positive', () => {
    const state = {
      at: new Map([
        ['A', { x: 0, y: 0 }],
        ['B', { x: 10, y: 0 }],
        ['P', { x: 6, y: 2 }],
      ]),
      scale: new Map([['tape', 0]]),
    };
    const read = (kind: 'along' | 'across' | 'middle') =>
      readingRow({ kind, point: 'P', from: 'A', to: 'B', distance: 0, sigma: 1 }, unknowns, state)
        .residual;
    expect([read('along'), read('across'), read('middle')]).toEqual([6, 2, 1]);
  });
});

describe('what is known beforehand', () => {
  it('weighs a control’s own sigma against the tapes: two equal, opposed, meet half way', () => {
    // A known to 3 from the left, one tape of sigma 4 from a held point: weights 1/9 and 1/16.
    const a = adjusted(
      [point('H', 0, 0, true), { ...point('A', 100, 0), covariance: { xx: 9, xy: 0, yy: 9 } }],
      [{ from: 'H', to: 'A', distance: 125, sigma: 4 }],
    );
    expect(a.points[0]!.at.x).toBeCloseTo((100 * 16 + 125 * 9) / 25, 9);
    expect(a.points[0]!.covariance.xx).toBeCloseTo((9 * 16) / 25, 9);
    expect(a.points[0]!.covariance.yy).toBeCloseTo(9, 9);
    expect(a.degreesOfFreedom).toBe(1);
    expect(a.chiSquare).toBeCloseTo(625 / 25, 9);
  });

  it('finds the scale of a tape from a known distance, and carries it to the unknown ones', () => {
    const a = adjusted(
      [point('H', 0, 0, true), point('K', 100, 0, true), point('P', 50, 80)],
      [
        { from: 'H', to: 'K', distance: 99, sigma: 0.1, tape: 't' },
        { from: 'H', to: 'P', distance: 99, sigma: 0.1, tape: 't' },
        { from: 'K', to: 'P', distance: 99, sigma: 0.1, tape: 't' },
      ],
      { tapes: [{ id: 't' }] },
    );
    expect(a.scales[0]!.scale).toBeCloseTo(100 / 99 - 1, 12);
    expect(a.points[0]!.at.y).toBeCloseTo(Math.sqrt(7500), 6);
  });
});

describe('a free network', () => {
  const truth: Record<string, Point> = {
    A: { x: 0, y: 0 },
    B: { x: 80, y: 5 },
    C: { x: 90, y: 75 },
    D: { x: -10, y: 60 },
  };
  const ids = Object.keys(truth);
  const random = seededRandom(4);
  const readings = ids.flatMap((from, i) =>
    ids.slice(i + 1).map((to) => {
      const d = Math.hypot(truth[from]!.x - truth[to]!.x, truth[from]!.y - truth[to]!.y);
      return { from, to, distance: d + 0.05 * random.normal(), sigma: 0.05 };
    }),
  );
  const held = adjusted(
    ids.map((id) =>
      point(id, truth[id]!.x, truth[id]!.y, id === 'A' ? true : id === 'B' ? 'y' : false),
    ),
    readings,
  );
  const inner = adjusted(
    ids.map((id) => point(id, truth[id]!.x, truth[id]!.y)),
    readings,
    { datum: 'inner' },
  );

  it('has the residuals and redundancy of the same network on three held coordinates', () => {
    expect(held.degreesOfFreedom).toBe(1);
    expect(inner.degreesOfFreedom).toBe(1);
    inner.readings.forEach((r, i) => {
      expect(r.residual).toBeCloseTo(held.readings[i]!.residual, 7);
      expect(r.redundancy).toBeCloseTo(held.readings[i]!.redundancy, 8);
    });
  });

  it('has the smaller trace, and its points keep their middle', () => {
    const trace = (a: typeof inner) =>
      a.points.reduce((sum, p) => sum + p.covariance.xx + p.covariance.yy, 0);
    expect(trace(inner)).toBeLessThan(trace(held));
    const mean = inner.points.reduce((sum, p) => sum + p.at.x, 0) / 4;
    expect(mean).toBeCloseTo(40, 9);
  });
});

describe('points that readings do not determine', () => {
  it('are all named: a pair that can swing together, and no other', () => {
    const result = adjustNetwork(
      [
        point('HP', 0, 0, true),
        point('2B', 0, 127, true),
        point('4', 60, 200),
        point('8', 10, 260),
        point('9', 30, 280),
      ],
      [
        { from: 'HP', to: '4', distance: 208, sigma: 0.05 },
        { from: '2B', to: '4', distance: 95, sigma: 0.05 },
        { from: '4', to: '8', distance: 78, sigma: 0.05 },
        { from: '4', to: '9', distance: 85, sigma: 0.05 },
        { from: '8', to: '9', distance: 28, sigma: 0.05 },
      ],
    );
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'network-singular', where: 'points 8, 9' });
  });

  it('are not blamed on a start that lies in line with both controls', () => {
    const a = adjusted(
      [point('HP', 0, 0, true), point('2B', 0, 100, true), point('4', 0, 50)],
      [
        { from: 'HP', to: '4', distance: 130, sigma: 0.05 },
        { from: '2B', to: '4', distance: 130, sigma: 0.05 },
      ],
    );
    expect(Math.abs(a.points[0]!.at.x)).toBeCloseTo(120, 9);
  });
});

describe('the limits of the tests', () => {
  // Published values: Baarda 1968, two-sided 0.1 % and power 80 %; chi-square tables of
  // Abramowitz & Stegun 26.8 (0.05: 3.84146 at 1, 18.3070 at 10, 124.342 at 100 degrees of freedom).
  it('are those printed in tables', () => {
    expect(twoSidedLimit(0.001)).toBeCloseTo(CRITICAL, 6);
    expect(chiSquareAbove((DETECTABLE - CRITICAL) ** 2, 1)).toBeCloseTo(2 * 0.2, 4);
    expect(chiSquareAbove(3.84146, 1)).toBeCloseTo(0.05, 5);
    expect(chiSquareAbove(18.307, 10)).toBeCloseTo(0.05, 5);
    expect(chiSquareAbove(124.342, 100)).toBeCloseTo(0.05, 5);
    expect(chiSquareAbove(-2 * Math.log(0.05), 2)).toBeCloseTo(0.05, 12);
  });
});
