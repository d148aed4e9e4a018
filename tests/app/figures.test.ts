import { describe, expect, test } from 'vitest';
import {
  compact,
  designLength,
  limit,
  minutesClock,
  oddsText,
  parseClock,
  percent,
  spanText,
  withPrimes,
} from '../../src/app/text/figures';
import { handOut } from '../../src/app/text/tasks';
import type { Task } from '../../src/labour/model';

const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('figures on the screen', () => {
  test('lengths in true primes, the fraction in one glyph or full size', () => {
    expect(plain(compact(`187' 4 1/2"`))).toBe('187′ 4½″');
    expect(plain(withPrimes(`94' 11 1/4"`))).toBe('94′ 11 1/4″');
    expect(plain(designLength(150, 'feet-inches'))).toBe('150′ 0″');
    // 150 ft is 45.72 m exactly by the international foot.
    expect(plain(designLength(150, 'metric'))).toBe('45.72 m');
  });

  test('a tolerance is rounded up, never down', () => {
    expect(limit(2.26, 'feet-inches')).toBe('±2½″');
    expect(limit(2.25, 'feet-inches')).toBe('±2¼″');
  });

  test('clocks as people type and read them', () => {
    expect(['6:30', '630', '1 pm', '13:00', '12 am', '6.30x', '25:00'].map(parseClock)).toEqual([
      '06:30',
      '06:30',
      '13:00',
      '13:00',
      '00:00',
      null,
      null,
    ]);
    expect(plain(minutesClock(13 * 60 + 24))).toBe('1:24 pm');
    expect(plain(minutesClock(24 * 60 + 5))).toBe('12:05 am next day');
    expect(plain(spanText(390))).toBe('6 h 30 min');
  });

  test('a share short of the whole never reads 100 %', () => {
    expect(plain(percent(0.9999))).toBe('99 %');
    expect(plain(percent(1))).toBe('100 %');
  });

  test('odds in words', () => {
    expect(oddsText(0.2)).toBe('1 day in 5');
    expect(oddsText(0.001)).toBe('less than 1 day in 100');
  });
});

describe('handOut', () => {
  const task = (id: string, startMin: number, endMin: number, people: number): Task => ({
    id,
    name: id,
    visit: 1,
    quantity: 1,
    unit: '',
    rate: { low: 1, likely: 1, high: 1, unit: 'min', source: 'assumption' },
    people,
    after: [],
    minutesP50: endMin - startMin,
    minutesP90: endMin - startMin,
    startMin,
    endMin,
  });

  test('nobody is in two places, and every task has its people', () => {
    const tasks = [
      task('a', 0, 10, 2),
      task('b', 0, 20, 1),
      task('c', 10, 30, 2),
      task('d', 20, 25, 1),
    ];
    const bars = handOut(tasks, 3);
    for (const t of tasks) expect(bars.filter((b) => b.task === t)).toHaveLength(t.people);
    for (const a of bars) {
      for (const b of bars) {
        if (a === b || a.row !== b.row) continue;
        expect(a.task.endMin <= b.task.startMin || b.task.endMin <= a.task.startMin).toBe(true);
      }
    }
  });
});
