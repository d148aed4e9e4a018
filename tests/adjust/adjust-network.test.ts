import { describe, expect, it } from 'vitest';
import { adjustNetwork } from '../../src/adjust/adjust-network';
import type { NetworkPoint } from '../../src/adjust/network-model';

const fixed = (id: string, x: number, y: number): NetworkPoint => ({
  id,
  at: { x, y },
  fixed: true,
});
const free = (id: string, x: number, y: number): NetworkPoint => ({
  id,
  at: { x, y },
  fixed: false,
});
const reading = (from: string, to: string, distance: number, sigma: number) => ({
  from,
  to,
  distance,
  sigma,
});

function adjusted(...args: Parameters<typeof adjustNetwork>) {
  const result = adjustNetwork(...args);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('one point from three tapes: Strang & Borre 1997, example 10.1 (p. 345) and 12.4 (p. 411)', () => {
  // Numbers as collected in Krumm, Geodetic Network Adjustment Examples, Univ. Stuttgart 2020.
  const a = adjusted(
    [
      fixed('1', 170.71, 270.71),
      fixed('2', 100, 100),
      fixed('3', 241.42, 100),
      free('P', 170.71, 170.71),
    ],
    [
      reading('1', 'P', 100.01, 0.01),
      reading('2', 'P', 100.02, 0.01),
      reading('3', 'P', 100.03, 0.01),
    ],
  );
  const p = a.points[0]!;

  it('gives the published point', () => {
    expect(p.at.x.toFixed(4)).toBe('170.7029');
    expect(p.at.y.toFixed(4)).toBe('170.7234');
  });

  it('gives the published precision: 3.303 and 2.335, together 4.045 hundredths', () => {
    const scale = a.sigma0 * 100;
    expect((Math.sqrt(p.covariance.xx) * scale).toFixed(3)).toBe('3.303');
    expect((Math.sqrt(p.covariance.yy) * scale).toFixed(3)).toBe('2.335');
    expect((Math.sqrt(p.covariance.xx + p.covariance.yy) * scale).toFixed(3)).toBe('4.045');
  });

  it('gives the published residuals, redundancy numbers and variance factor', () => {
    expect(a.readings.map((r) => r.residual.toFixed(5))).toEqual([
      '-0.02336',
      '-0.01652',
      '-0.01651',
    ]);
    expect(a.readings.map((r) => r.redundancy.toFixed(4))).toEqual(['0.5000', '0.2500', '0.2499']);
    expect(a.sigma0.toFixed(3)).toBe('3.303');
    expect(a.degreesOfFreedom).toBe(1);
  });

  it('cannot say which of the three is wrong: all standardised residuals are equal', () => {
    const sizes = a.readings.map((r) => Math.abs(r.standardised));
    expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThan(0.001);
  });
});

describe('one point from five tapes: Benning 2011, example 8-8 (pp. 285-291)', () => {
  const a = adjusted(
    [
      fixed('1', 3000, 2000),
      fixed('2', 1000, 2000),
      fixed('3', 3000, 2100),
      fixed('4', 1000, 2100),
      fixed('5', 2000, 1000),
      free('6', 2000, 2000),
    ],
    [1000, 1000, 1005, 1005, 1000].map((d, i) => reading('6', String(i + 1), d, 0.02)),
  );
  const p = a.points[0]!;

  it('gives the published point', () => {
    expect(p.at.x.toFixed(4)).toBe('2000.0000');
    expect(p.at.y.toFixed(4)).toBe('1999.9976');
    expect(p.at.y.toFixed(5)).toBe('1999.99757');
  });

  it('gives the published precision: 0.504 and 0.996, together 1.116 cm', () => {
    const scale = a.sigma0 * 100;
    expect((Math.sqrt(p.covariance.xx) * scale).toFixed(3)).toBe('0.504');
    expect((Math.sqrt(p.covariance.yy) * scale).toFixed(3)).toBe('0.996');
    expect((Math.sqrt(p.covariance.xx + p.covariance.yy) * scale).toFixed(3)).toBe('1.116');
  });

  it('gives the published residuals, redundancy numbers and standardised residuals', () => {
    const absolute = (n: number, digits: number) => Math.abs(n).toFixed(digits);
    expect(a.readings.map((r) => absolute(r.residual, 5))).toEqual([
      '0.00000',
      '0.00000',
      '0.01220',
      '0.01220',
      '0.00243',
    ]);
    expect(a.readings.map((r) => r.redundancy.toFixed(4))).toEqual([
      '0.7488',
      '0.7488',
      '0.7415',
      '0.7415',
      '0.0194',
    ]);
    // Published after scaling by the estimated variance factor.
    const scaled = a.readings.map((r) => absolute(r.standardised / a.sigma0, 3));
    expect(scaled).toEqual(['0.000', '0.000', '1.408', '1.408', '1.732']);
    expect((a.sigma0 * 0.02).toFixed(7)).toBe('0.0100564');
  });
});

describe('what the adjustment refuses', () => {
  it('names a point that the readings do not determine', () => {
    const result = adjustNetwork(
      [fixed('HP', 0, 0), free('7', 10, 50)],
      [reading('HP', '7', 51, 0.02)],
    );
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'network-singular', where: 'point 7' });
  });

  it('names a reading to a point that does not exist, and one that is not positive', () => {
    const result = adjustNetwork([fixed('HP', 0, 0)], [reading('HP', '9', -1, 0.02)]);
    expect(result.problems.map((p) => p.code)).toEqual([
      'network-point-unknown',
      'network-reading-bad',
    ]);
  });
});

describe('redundancy numbers', () => {
  it('sum to the degrees of freedom in a chained network', () => {
    const a = adjusted(
      [
        fixed('HP', 0, 0),
        fixed('2B', 0, 127),
        fixed('1B', 64, 64),
        free('A', 30, 200),
        free('B', 60, 190),
      ],
      [
        reading('HP', 'A', 202.3, 0.05),
        reading('2B', 'A', 79.0, 0.03),
        reading('1B', 'A', 140.2, 0.04),
        reading('1B', 'B', 126.1, 0.04),
        reading('2B', 'B', 87.0, 0.03),
        reading('A', 'B', 31.7, 0.02),
      ],
    );
    expect(a.readings.reduce((sum, r) => sum + r.redundancy, 0)).toBeCloseTo(a.degreesOfFreedom, 9);
  });
});
