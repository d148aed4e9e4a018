import { describe, expect, it } from 'vitest';
import { alongOf, clockOf, driveAxis } from '../../src/app/drive/drive-axis';
import type { Leg } from '../../src/mowing/model';

const leg = (kind: Leg['kind'], startS: number, seconds: number): Leg => ({
  seq: 0,
  machine: 'wide',
  visit: 1,
  phase: 'background',
  kind,
  pass: null,
  patch: null,
  widthFt: 5,
  points: [{ x: 0, y: 100 }],
  startS,
  seconds,
  reels: 'up',
  lays: false,
});

describe('the line of the visit', () => {
  const axis = driveAxis([leg('mow', 0, 600), leg('hold', 600, 18000), leg('mow', 18600, 400)]);

  it('is to scale while machines drive, and short for the count', () => {
    expect(axis.endS).toBe(19000);
    expect(axis.length - axis.holdLength).toBe(1000);
    expect(axis.holdLength).toBeLessThan(1000 / 4);
    expect(alongOf(axis, 300)).toBe(300);
    expect(alongOf(axis, 18700) - alongOf(axis, 18600)).toBeCloseTo(100, 9);
    expect(alongOf(axis, 9600)).toBeCloseTo(600 + axis.holdLength / 2, 9);
    expect(alongOf(axis, axis.endS)).toBe(axis.length);
  });

  it('is read both ways', () => {
    for (let t = 0; t <= 19000; t += 37) expect(clockOf(axis, alongOf(axis, t))).toBeCloseTo(t, 6);
  });

  it('is the clock itself without a count, and draws a short count no longer than it is', () => {
    const plain = driveAxis([leg('mow', 0, 600)]);
    expect([plain.hold, plain.length, clockOf(plain, 250)]).toEqual([null, 600, 250]);
    const short = driveAxis([leg('mow', 0, 600), leg('hold', 600, 10), leg('mow', 610, 400)]);
    expect(short.holdLength).toBe(10);
    expect(short.length).toBe(1010);
  });

  it('is empty without legs', () => {
    expect(driveAxis([])).toEqual({ endS: 0, hold: null, holdLength: 0, length: 0 });
  });
});
