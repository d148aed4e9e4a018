import { describe, expect, it } from 'vitest';
import {
  DEFAULT_STEEL,
  pullCorrection,
  sagCorrection,
  steelCorrection,
  steelRows,
  temperatureCorrection,
} from '../../src/adjust/steel-tape';

// Worked problems of a lecture on taping corrections (temperature, sag of a 2.8-lb 100-ft chain,
// pull), with their printed answers.
describe('corrections of a steel tape, worked problems', () => {
  it('temperature: 368.50 ft at 22 °F, true at 68 °F, is 0.11 ft too long', () => {
    expect(temperatureCorrection(368.5, 22, 68, 6.5 / 1_000_000).toFixed(2)).toBe('-0.11');
    expect((368.5 + temperatureCorrection(368.5, 22, 68, 6.5 / 1_000_000)).toFixed(2)).toBe(
      '368.39',
    );
  });

  it.each([
    [12, 100, '-0.71'],
    [18, 100, '-0.31'],
    [12, 50, '-0.20'],
  ])('sag: 348.75 ft at %d lb in spans of %d ft is %s ft', (pull, span, printed) => {
    expect(sagCorrection(348.75, span, 2.8 / 100, pull).toFixed(2)).toBe(printed);
  });

  it('pull: 18 lb on a tape true at 12 lb stretches 100 ft by 0.0014 ft', () => {
    expect(pullCorrection(100, 18, 12, 0.015).toFixed(4)).toBe('0.0014');
  });

  it('all three: 436.48 ft at 50 °F and 15 lb, the last 236.48 ft hanging', () => {
    // Inputs of Mahun, *Open Access Surveying*, Taping: true at 70 °F and 23 lb, 2.2 lb in 102 ft,
    // section 0.004 sq in. By hand: −0.0567, −0.0301, −0.1765.
    expect(temperatureCorrection(436.48, 50, 70, 6.5 / 1_000_000)).toBeCloseTo(-0.0567, 4);
    expect(pullCorrection(436.48, 15, 23, 0.004)).toBeCloseTo(-0.0301, 4);
    expect(sagCorrection(236.48, 100, 2.2 / 102, 15)).toBeCloseTo(-0.1765, 3);
  });

  it('15.5 °F make 0.01 ft in 100 ft', () => {
    // The textbooks' rule of thumb.
    expect(temperatureCorrection(100, 83.5, 68)).toBeCloseTo(0.01, 4);
  });
});

describe('the printed changes', () => {
  const step = 1 / 48;
  const cold = { ...DEFAULT_STEEL, temperatureF: 30 };

  it('add to readings on a cold day, when the tape is short', () => {
    const rows = steelRows(cold, 300, step);
    // 6.45 millionths × 38 °F × ft reaches half of 1/4 in at 42.5 ft and 1 1/2 of it at 127.5 ft.
    expect(rows.map((r) => [r.upToFt, Math.round(r.changeFt / step)])).toEqual([
      [42, 0],
      [127, 1],
      [212, 2],
      [297, 3],
      [300, 4],
    ]);
  });

  it('put the stake within half a step of the printed distance, wherever the pull ends', () => {
    const use = { ...cold, pullLb: 12, spanFt: 40 };
    const rows = steelRows(use, 200, step);
    for (let ft = 1; ft <= 200; ft++) {
      const { changeFt } = rows.find((r) => ft <= r.upToFt)!;
      const ground = ft + changeFt + steelCorrection(ft, use);
      expect(Math.abs(ground - ft)).toBeLessThanOrEqual(step / 2);
    }
    expect(rows[rows.length - 1]!.upToFt).toBe(200);
  });

  it('say nothing of a tape used as it was made', () => {
    expect(steelRows(DEFAULT_STEEL, 200, step)).toEqual([{ upToFt: 200, changeFt: 0 }]);
  });
});
