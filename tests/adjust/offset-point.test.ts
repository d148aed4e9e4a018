/** Short offsets against an independent simulation of the crew's steps by differences. */
import { describe, expect, it } from 'vitest';
import { pointByChord, pointByOffset } from '../../src/adjust/offset-point';
import { preciseCovariance, type PrecisePoint } from '../../src/adjust/precise-point';

type Xy = readonly [number, number];

const TAPE = { readingSigmaIn: 0.25, proportional: 1 / 3750, scaleSigma: 1 / 5000, scaleCause: 0 };
const SQUARE = (0.5 * Math.PI) / 180;
const sigma = (ft: number): number => Math.hypot(0.25 / 12, ft / 3750);

/** Two places that share cause 1 and err on their own by causes 2 to 5, inches per unit. */
const A: PrecisePoint = {
  at: { x: 3, y: 200 },
  gx: [0.1, 0.7, 0.6, -0.2],
  gy: [0.4, 0.5, 0.1, 0.9],
  own: [],
};
const B: PrecisePoint = {
  at: { x: 14, y: 206 },
  gx: [0.15, 0.6, 0, 0, 0.8, 0.3],
  gy: [0.45, 0.6, 0, 0, -0.1, 0.7],
  own: [],
};

const moved = (p: PrecisePoint, cause: readonly number[]): Xy => [
  p.at.x + cause.reduce((sum, c, i) => sum + c * (p.gx[i] ?? 0), 0) / 12,
  p.at.y + cause.reduce((sum, c, i) => sum + c * (p.gy[i] ?? 0), 0) / 12,
];

interface Errors {
  /** Shared causes, the tape's scale first. */
  readonly shared: readonly number[];
  readonly along: number;
  readonly half: number;
  readonly offset: number;
  readonly square: number;
}

/** What the crew does: along the line as it lies, turn a right angle as well as it can, measure off. */
function layOff(e: Errors, along: number | null, offset: number): Xy {
  const [a, b] = [moved(A, e.shared), moved(B, e.shared)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const scale = 1 + e.shared[0]! / 5000;
  const foot =
    along === null
      ? (length + e.along * sigma(length)) / 2 + e.half * sigma(length / 2)
      : along * scale + e.along * sigma(along);
  const out = offset * scale + e.offset * sigma(Math.abs(offset));
  const turn = Math.atan2(b[1] - a[1], b[0] - a[0]);
  const away = turn + Math.PI / 2 + e.square * SQUARE;
  return [
    a[0] + foot * Math.cos(turn) + out * Math.cos(away),
    a[1] + foot * Math.sin(turn) + out * Math.sin(away),
  ];
}

/** Covariance, square inches, from a small step of every cause. */
function covariance(along: number | null, offset: number) {
  const none: Errors = { shared: [0, 0, 0, 0, 0, 0], along: 0, half: 0, offset: 0, square: 0 };
  const steps: ((s: number) => Errors)[] = [
    ...none.shared.map((_, k) => (s: number) => ({
      ...none,
      shared: none.shared.map((v, i) => (i === k ? s : v)),
    })),
    (s) => ({ ...none, along: s }),
    (s) => ({ ...none, half: s }),
    (s) => ({ ...none, offset: s }),
    (s) => ({ ...none, square: s }),
  ];
  const sum = { xx: 0, xy: 0, yy: 0 };
  for (const step of steps) {
    const [p, q] = [layOff(step(0.01), along, offset), layOff(step(-0.01), along, offset)];
    const [x, y] = [(12 * (p[0] - q[0])) / 0.02, (12 * (p[1] - q[1])) / 0.02];
    sum.xx += x * x;
    sum.xy += x * y;
    sum.yy += y * y;
  }
  return sum;
}

describe.each([3.2, -2.5])('an offset of %d ft', (offset) => {
  it('from a place along the line carries every error as steps of it do', () => {
    const point = pointByOffset(A, B, 4.5, offset, { tape: TAPE, squareSigma: SQUARE })!;
    const [x, y] = layOff(
      { shared: [0, 0, 0, 0, 0, 0], along: 0, half: 0, offset: 0, square: 0 },
      4.5,
      offset,
    );
    expect(Math.hypot(point.at.x - x, point.at.y - y)).toBeLessThan(1e-9);
    const own = preciseCovariance(point);
    const by = covariance(4.5, offset);
    for (const key of ['xx', 'xy', 'yy'] as const)
      expect(Math.abs(own[key] - by[key])).toBeLessThan(0.002 * (by.xx + by.yy));
  });

  it('from the middle of the chord does too', () => {
    const point = pointByChord(A, B, offset, { tape: TAPE, squareSigma: SQUARE })!;
    const [x, y] = layOff(
      { shared: [0, 0, 0, 0, 0, 0], along: 0, half: 0, offset: 0, square: 0 },
      null,
      offset,
    );
    expect(Math.hypot(point.at.x - x, point.at.y - y)).toBeLessThan(1e-9);
    const own = preciseCovariance(point);
    const by = covariance(null, offset);
    for (const key of ['xx', 'xy', 'yy'] as const)
      expect(Math.abs(own[key] - by[key])).toBeLessThan(0.002 * (by.xx + by.yy));
  });
});

it('places that are one have no line', () => {
  const tools = { tape: TAPE, squareSigma: SQUARE };
  expect(pointByOffset(A, A, 1, 1, tools)).toBeNull();
  expect(pointByChord(A, A, 1, tools)).toBeNull();
});
