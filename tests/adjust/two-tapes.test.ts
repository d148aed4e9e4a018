import { describe, expect, it } from 'vitest';
import {
  ELLIPSE_FACTOR_95,
  roundCovariance,
  semiMajor95,
  standardEllipse,
} from '../../src/adjust/ellipse';
import {
  crossCovariance,
  differenceSigmaIn,
  knownPoint,
  pointByTies,
  pointOnLine,
  preciseCovariance,
  sharePoint,
  tapeSigmaIn,
} from '../../src/adjust/precise-point';
import { seededRandom } from '../../src/base/random';

const evenTape = { readingSigmaIn: 1, proportional: 0 };

describe('the tape', () => {
  it('is good to 0.65 in at 150 ft and 0.84 in at 200 ft for 1/4 in and 1:3000', () => {
    // sqrt(0.25² + (150·12/3000)²), by hand.
    const tape = { readingSigmaIn: 0.25, proportional: 1 / 3000 };
    expect(tapeSigmaIn(tape, 150)).toBeCloseTo(0.65, 12);
    expect(tapeSigmaIn(tape, 200)).toBeCloseTo(Math.sqrt(0.0625 + 0.64), 12);
  });
});

describe('two-tape error by the angle at which the circles meet', () => {
  // Semi-axes sigma/(√2·sin(γ/2)), sigma/(√2·cos(γ/2)); the root of both variances √2·sigma/sin γ:
  // the error ellipse of Wolf & Ghilani, Adjustment Computations, for two equal distances.
  const table = [
    [15, 5.417, 0.713, 5.464],
    [20, 4.072, 0.718, 4.135],
    [30, 2.732, 0.732, 2.828],
    [45, 1.848, 0.765, 2.0],
    [60, 1.414, 0.816, 1.633],
    [90, 1.0, 1.0, 1.414],
    [120, 1.414, 0.816, 1.633],
    [150, 2.732, 0.732, 2.828],
  ] as const;

  it.each(table)('%i degrees', (degrees, major, minor, drms) => {
    const half = (degrees * Math.PI) / 360;
    const a = knownPoint(
      { x: -100 * Math.sin(half), y: -100 * Math.cos(half) },
      roundCovariance(0),
      0,
    );
    const b = knownPoint(
      { x: 100 * Math.sin(half), y: -100 * Math.cos(half) },
      roundCovariance(0),
      2,
    );
    const p = pointByTies(a, b, { x: 0, y: 0 }, evenTape)!;
    const c = preciseCovariance(p);
    const ellipse = standardEllipse(c);
    const [long, short] = [ellipse.semiMajor, ellipse.semiMinor];
    expect(long).toBeCloseTo(major, 3);
    expect(short).toBeCloseTo(minor, 3);
    expect(Math.sqrt(c.xx + c.yy)).toBeCloseTo(drms, 3);
    expect(semiMajor95(c)).toBeCloseTo(major * 2.44775, 2);
  });

  it('uses the 95 % factor of chi-square with two degrees of freedom, 5.991465', () => {
    expect(ELLIPSE_FACTOR_95 ** 2).toBeCloseTo(5.991465, 6);
  });
});

describe('a tape of wrong scale', () => {
  it.each([40, 60, 90, 120, 150])(
    'moves a stake whose tapes meet at %i degrees along the middle between them only',
    (degrees) => {
      // By hand: both pulls of 100 ft err by s·d, so u·dP = v·dP = s·d, dP = s·d / cos(γ/2).
      const half = (degrees * Math.PI) / 360;
      const end = (sign: number, cause: number) =>
        knownPoint(
          { x: sign * 100 * Math.sin(half), y: -100 * Math.cos(half) },
          roundCovariance(0),
          cause,
        );
      const tape = { readingSigmaIn: 0, proportional: 0, scaleSigma: 1 / 5000 };
      const p = pointByTies(end(-1, 2), end(1, 4), { x: 0, y: 0 }, tape)!;
      const c = preciseCovariance(p);
      expect(Math.sqrt(c.yy)).toBeCloseTo((100 * 12) / 5000 / Math.cos(half), 9);
      expect(Math.abs(c.xx)).toBeLessThan(1e-12);
    },
  );

  it('reads what it set itself without a difference', () => {
    const a = knownPoint({ x: 0, y: 0 }, roundCovariance(0), 2);
    const b = knownPoint({ x: 0, y: 127 }, roundCovariance(0), 4);
    const tape = { readingSigmaIn: 0, proportional: 0, scaleSigma: 1 / 500 };
    const k = pointOnLine(b, a, -100, tape)!;
    expect(differenceSigmaIn(k, b, tape)).toBeCloseTo(0, 9);
    // From home it errs over the 100 ft that it set, and reads 227 ft: 127 ft of it show.
    expect(differenceSigmaIn(k, a, tape)).toBeCloseTo((127 * 12) / 500, 9);
  });
});

/** Where two circles about a and b meet, the meeting nearer to `near`: written for this test. */
function meet(a: number[], r: number, b: number[], s: number, near: number[]): [number, number] {
  const [ax, ay, bx, by] = [a[0]!, a[1]!, b[0]!, b[1]!];
  const d = Math.hypot(bx - ax, by - ay);
  const t = (r * r - s * s + d * d) / (2 * d);
  const h = Math.sqrt(r * r - t * t);
  const [ex, ey] = [(bx - ax) / d, (by - ay) / d];
  const one: [number, number] = [ax + ex * t - ey * h, ay + ey * t + ex * h];
  const two: [number, number] = [ax + ex * t + ey * h, ay + ey * t - ex * h];
  const far = (p: number[]) => Math.hypot(p[0]! - near[0]!, p[1]! - near[1]!);
  return far(one) < far(two) ? one : two;
}

describe('errors carried through a chain of control stakes', () => {
  const tape = { readingSigmaIn: 0.25, proportional: 1 / 3000 };
  const home = { x: 0, y: 0 };
  const second = { x: 0, y: 127.279 };
  const first = { x: 63.64, y: 63.64 };
  const hp = knownPoint(home, roundCovariance(0.5), 0);
  const b2 = knownPoint(second, roundCovariance(0.5), 2);
  const b1 = knownPoint(first, roundCovariance(0.5), 4);
  const k1 = sharePoint(pointOnLine(b2, hp, -120, tape)!, 6);
  const k2 = sharePoint(pointByTies(b1, k1, { x: 120, y: 170 }, tape)!, 8);
  const stake = pointByTies(k1, k2, { x: 60, y: 275 }, tape)!;
  const twin = pointByTies(k1, k2, { x: 75, y: 280 }, tape)!;

  it('agrees with simulated crews who tape every point with errors', () => {
    const random = seededRandom(20_240_611);
    const sigma = (ft: number) => Math.hypot(0.25, (ft * 12) / 3000) / 12;
    const err = (s: number) => random.normal() * s;
    const n = 40_000;
    const sums = { x: 0, y: 0, xx: 0, xy: 0, yy: 0, dd: 0 };
    const planned = Math.hypot(15, 5);
    for (let i = 0; i < n; i++) {
      const h = [err(0.5 / 12), err(0.5 / 12)];
      const s = [err(0.5 / 12), 127.279 + err(0.5 / 12)];
      const f = [63.64 + err(0.5 / 12), 63.64 + err(0.5 / 12)];
      const along = Math.hypot(s[0]! - h[0]!, s[1]! - h[1]!);
      const e = [(s[0]! - h[0]!) / along, (s[1]! - h[1]!) / along];
      const out = 120 + err(sigma(120));
      const side = err(Math.hypot(0.25, (120 * 12) / 4000) / 12);
      const K1 = [s[0]! + e[0]! * out - e[1]! * side, s[1]! + e[1]! * out + e[0]! * side];
      const d = (a: { x: number; y: number }, b: { x: number; y: number }) =>
        Math.hypot(a.x - b.x, a.y - b.y);
      const pull = (ft: number) => ft + err(sigma(ft));
      const K2 = meet(f, pull(d(first, k2.at)), K1, pull(d(k1.at, k2.at)), [120, 170]);
      const P = meet(K1, pull(d(k1.at, stake.at)), K2, pull(d(k2.at, stake.at)), [60, 275]);
      const Q = meet(K1, pull(d(k1.at, twin.at)), K2, pull(d(k2.at, twin.at)), [75, 280]);
      const x = (P[0] - 60) * 12;
      const y = (P[1] - 275) * 12;
      sums.x += x;
      sums.y += y;
      sums.xx += x * x;
      sums.xy += x * y;
      sums.yy += y * y;
      sums.dd +=
        ((Math.hypot(P[0] - Q[0], P[1] - Q[1]) - planned) * 12 + err(sigma(planned)) * 12) ** 2;
    }
    const simulated = {
      xx: sums.xx / n - (sums.x / n) ** 2,
      xy: sums.xy / n - (sums.x * sums.y) / n / n,
      yy: sums.yy / n - (sums.y / n) ** 2,
    };
    const claimed = semiMajor95(preciseCovariance(stake));
    expect(Math.abs(claimed / semiMajor95(simulated) - 1)).toBeLessThan(0.02);
    // The check between the two stakes: errors of the shared controls cancel.
    const check = differenceSigmaIn(stake, twin, tape);
    expect(Math.abs(check / Math.sqrt(sums.dd / n) - 1)).toBeLessThan(0.02);
  });

  it('knows what two stakes from the same controls share', () => {
    const shared = crossCovariance(stake, twin);
    const own = preciseCovariance(stake);
    expect(shared.xx).toBeGreaterThan(0);
    expect(shared.xx).toBeLessThan(own.xx);
  });
});
