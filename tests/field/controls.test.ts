import { describe, expect, it } from 'vitest';
import { parseLength } from '../../src/base/quantity';
import { seededRandom } from '../../src/base/random';
import { buildField } from '../../src/field/build-field';
import { checkScale } from '../../src/field/prove-controls';
import { pointDistance } from '../../src/geometry/point';
import { fieldWith, specWith } from './fixtures';

const at = (field: ReturnType<typeof fieldWith>, id: string) => {
  const found = field.controls.find((c) => c.id === id);
  if (!found) throw new Error(`no control ${id}`);
  return found;
};

describe('controls', () => {
  it('stand at the outer back corners with the bases in (NCAA Rule 1-2a)', () => {
    const field = fieldWith();
    expect(field.controls.map((c) => c.id)).toEqual(['HP', '1B', '2B', '3B']);
    expect(at(field, '1B').at.x).toBeCloseTo(63.63961, 5);
    expect(at(field, '1B').at.y).toBeCloseTo(63.63961, 5);
    expect(at(field, '3B').at.x).toBeCloseTo(-63.63961, 5);
    expect(at(field, '1B').touch).toContain('outer back corner');
    expect(at(field, '2B').at).toEqual({ x: 0, y: field.bases.second.y });
    expect(at(field, 'HP').covariance).toEqual({ xx: 0.25, xy: 0, yy: 0.25 });
  });

  it.each([15, 18] as const)('stand in the socket of a %d-in base with the bases out', (size) => {
    const field = fieldWith({ bases: 'out', baseSizeIn: size });
    const half = size / 24;
    // Half a base back toward home along the foul line, and half a base inward square to it.
    for (const [id, corner] of [
      ['1B', field.bases.first],
      ['3B', field.bases.third],
    ] as const) {
      const socket = at(field, id);
      const alongFoulLine = (Math.abs(socket.at.x) + socket.at.y) / Math.SQRT2;
      const insideFoulLine = (socket.at.y - Math.abs(socket.at.x)) / Math.SQRT2;
      expect(alongFoulLine).toBeCloseTo(90 - half, 9);
      expect(insideFoulLine).toBeCloseTo(half, 9);
      expect(pointDistance(socket.at, corner)).toBeCloseTo(half * Math.SQRT2, 9);
      expect(socket.touch).toContain('anchor socket');
    }
    expect(at(field, '2B').at).toEqual(field.bases.second);
  });

  it('take in a foul pole only once it has been measured, with its own precision', () => {
    const poles = { left: { distanceFt: 329.5, sigmaIn: 1.5 }, right: null };
    const field = fieldWith({ poles });
    expect(field.controls.map((c) => c.id)).toEqual(['HP', '1B', '2B', '3B', 'LP']);
    const pole = at(field, 'LP');
    expect(Math.hypot(pole.at.x, pole.at.y)).toBeCloseTo(329.5, 9);
    expect(pole.at.x).toBeCloseTo(-pole.at.y, 9);
    expect(pole.covariance.xx).toBeCloseTo(2.25, 9);
    expect(pole.touch).toContain('inner face');
  });
});

describe('proving tapes', () => {
  it.each(['in', 'out'] as const)('say what the tape must read, bases %s', (bases) => {
    const field = fieldWith({ bases });
    const pairs = field.proving.map((t) => `${t.from}-${t.to}`);
    expect(pairs).toEqual(['HP-1B', 'HP-3B', '1B-2B', '2B-3B', 'HP-2B', '1B-3B']);
    for (const tape of field.proving) {
      const exact = pointDistance(at(field, tape.from).at, at(field, tape.to).at);
      const read = parseLength(tape.text);
      expect(read.ok && Math.abs(read.value - exact) <= 1 / 96 + 1e-9).toBe(true);
      expect(read.ok && read.value).toBeCloseTo(tape.ft, 9);
    }
  });

  it('are written in metres when asked', () => {
    const built = buildField(specWith(), 'metric');
    // 90 ft is 27.432 m; read to 5 mm.
    expect(built.ok && built.value.proving[0]!.text).toBe('27.430 m');
  });

  it('have a limit of three times the spread that a simulated crew shows', () => {
    const field = fieldWith({ controlSigmaIn: 0.7 });
    const random = seededRandom(19);
    for (const tape of field.proving) {
      const a = at(field, tape.from).at;
      const b = at(field, tape.to).at;
      const exact = pointDistance(a, b);
      const inch = 1 / 12;
      let sum = 0;
      const days = 12000;
      for (let i = 0; i < days; i++) {
        const shift = (p: typeof a) => ({
          x: p.x + 0.7 * inch * random.normal(),
          y: p.y + 0.7 * inch * random.normal(),
        });
        const pull = 0.25 * inch * random.normal() + (exact / 3750) * random.normal();
        sum += (pointDistance(shift(a), shift(b)) + pull - exact) ** 2;
      }
      const spreadIn = 12 * Math.sqrt(sum / days);
      expect(tape.limitIn / (3 * spreadIn)).toBeGreaterThan(0.97);
      expect(tape.limitIn / (3 * spreadIn)).toBeLessThan(1.03);
    }
  });

  it('together have a scale limit of three times the spread of the mean of simulated days', () => {
    const field = fieldWith({ controlSigmaIn: 0.4 });
    const random = seededRandom(23);
    const tape = { readingSigmaIn: 0.25, proportional: 1 / 3750 };
    const check = checkScale(field.controls, tape)!;
    const days = 12000;
    let sum = 0;
    for (let i = 0; i < days; i++) {
      const today = new Map(
        field.controls.map((c) => [
          c.id,
          { x: c.at.x + (0.4 / 12) * random.normal(), y: c.at.y + (0.4 / 12) * random.normal() },
        ]),
      );
      const off = field.proving.map(({ from, to }) => {
        const exact = pointDistance(at(field, from).at, at(field, to).at);
        const pull = (0.25 / 12) * random.normal() + (exact / 3750) * random.normal();
        return pointDistance(today.get(from)!, today.get(to)!) + pull - exact;
      });
      sum += (off.reduce((a, b) => a + b, 0) / off.length) ** 2;
    }
    expect(check.count).toBe(6);
    expect(check.limitIn / (3 * 12 * Math.sqrt(sum / days))).toBeGreaterThan(0.97);
    expect(check.limitIn / (3 * 12 * Math.sqrt(sum / days))).toBeLessThan(1.03);
    // Four sides of about 90 ft and two diagonals of about 127 ft.
    expect(check.meanFt).toBeGreaterThan(100);
    expect(check.meanFt).toBeLessThan(105);
  });
});
