import { describe, expect, it } from 'vitest';
import { formatFeetInches, formatLimit, parseLength, roundReading } from '../../src/base/quantity';

const ft = (text: string, system?: 'metric' | 'feet-inches'): number | null => {
  const result = parseLength(text, 'test', system);
  return result.ok ? result.value : null;
};

describe('feet and inches', () => {
  it('prints the rule-book distance from home to second to the printed eighth', () => {
    // Official Baseball Rules 2.01: 127 feet 3 3/8 inches.
    expect(formatFeetInches(127 + 3.375 / 12, 8)).toBe(`127' 3 3/8"`);
    expect(formatFeetInches(90 * Math.SQRT2, 8)).toBe(`127' 3 3/8"`);
  });

  it.each([
    [0, `0' 0"`],
    [3, `3' 0"`],
    [127 + 3.25 / 12, `127' 3 1/4"`],
    [9 + 11.9 / 12, `10' 0"`],
    [-2.5, `-2' 6"`],
    [0.5 / 12, `0' 0 1/2"`],
  ])('prints %f ft as %s', (value, text) => expect(formatFeetInches(value)).toBe(text));

  it.each([
    ['150', 150],
    ['150 6', 150.5],
    [`150'6`, 150.5],
    [`150' 6 1/2"`, 150 + 6.5 / 12],
    ['150-6 1/2', 150 + 6.5 / 12],
    ['187′ 4½″', 187 + 4.5 / 12],
    ['150.25', 150.25],
    ['7"', 7 / 12],
    ['7 1/2 in', 7.5 / 12],
    ['45.75m', 45.75 / 0.3048],
    ['45.75 m', 45.75 / 0.3048],
    ['30cm', 0.3 / 0.3048],
    ['-12', -12],
    [`12 ft 3 in`, 12.25],
    [`12ft`, 12],
  ])('reads %s', (text, value) => expect(ft(text)).toBeCloseTo(value, 12));

  it('reads a bare number in the system in use', () => {
    expect(ft('10', 'metric')).toBeCloseTo(10 / 0.3048, 12);
  });

  it.each([
    '',
    'abc',
    '12 1/0',
    '1e5',
    '--3',
    '3 4 5 6',
    'NaN',
    'Infinity',
    `5'6'7`,
    `5' 12"`,
    `5' 3 5/4"`,
  ])('refuses %j with a problem', (text) => {
    const result = parseLength(text, 'width');
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'length-unreadable', where: 'width' });
  });

  it('reads back every reading it prints', () => {
    for (let quarter = 0; quarter < 48 * 300; quarter += 7) {
      const reading = roundReading(quarter / 48, 'feet-inches');
      expect(ft(reading.text)).toBeCloseTo(reading.ft, 12);
      expect(reading.ft).toBeCloseTo(quarter / 48, 12);
    }
  });

  it('rounds metric readings to 5 mm and keeps the value of the text', () => {
    const reading = roundReading(100, 'metric');
    expect(reading.text).toBe('30.480 m');
    expect(reading.ft * 0.3048).toBeCloseTo(30.48, 12);
    expect(roundReading(100.01, 'metric').text).toBe('30.485 m');
  });

  it('rounds a limit up, never down', () => {
    expect(formatLimit(2.25, 'feet-inches')).toBe('2 1/4"');
    expect(formatLimit(2.26, 'feet-inches')).toBe('2 1/2"');
    expect(formatLimit(0.1, 'feet-inches')).toBe('1/4"');
    expect(formatLimit(1, 'metric')).toBe('26 mm');
  });
});
