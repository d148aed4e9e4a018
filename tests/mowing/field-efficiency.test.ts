import { describe, expect, it } from 'vitest';
import {
  efficiencyProblems,
  fieldEfficiency,
  handbookEfficiency,
} from '../../src/mowing/field-efficiency';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import type { Leg } from '../../src/mowing/model';

const machine = (id: string) => MACHINES.find((m) => m.id === id)!;
const TRIPLEX = machine('triplex-reel');

/** Long straight passes with short turns between them. */
function block(passes: number, passFt: number, turnSeconds: number): Leg[] {
  const leg = (kind: Leg['kind'], lengthFt: number, seconds: number): Leg => ({
    seq: 0,
    machine: TRIPLEX.id,
    visit: 1,
    phase: 'background',
    kind,
    pass: null,
    patch: null,
    widthFt: 62 / 12,
    points: [
      { x: 0, y: 0 },
      { x: lengthFt, y: 0 },
    ],
    startS: 0,
    seconds,
    reels: kind === 'mow' ? 'down' : 'up',
    lays: kind === 'mow',
  });
  // 4 mph is 88 / 15 feet a second (a mile is 5280 ft).
  const one = [leg('mow', passFt, passFt / (88 / 15)), leg('turn', 10, turnSeconds)];
  return Array.from({ length: passes }, () => one).flat();
}

describe('field efficiency', () => {
  it('is the share of the time that mows times what the overlap leaves of the cut', () => {
    const { reached, mowing, turning, empty } = fieldEfficiency(TRIPLEX, block(10, 88, 5));
    // 88 ft at 4 mph are 15 s; a turn takes 5 s; 59 of 62 in are new ground.
    expect(mowing).toBeCloseTo(15 / 20, 9);
    expect(turning).toBeCloseTo(5 / 20, 9);
    expect(empty).toBe(0);
    expect(reached).toBeCloseTo((15 / 20) * (59 / 62), 9);
  });

  it('above the handbook is a warning that names the machine, the share and the range', () => {
    const usual = fieldEfficiency(TRIPLEX, block(10, 88, 5));
    expect(efficiencyProblems(TRIPLEX, usual)).toEqual([]);
    const good = fieldEfficiency(TRIPLEX, block(10, 880, 1));
    const [warning, ...rest] = efficiencyProblems(TRIPLEX, good);
    expect(rest).toEqual([]);
    expect(warning).toMatchObject({
      code: 'efficiency-above-handbook',
      where: 'mowing.wide',
      severity: 'warning',
    });
    expect(warning!.what).toBe(
      'Triplex reel mower, 62 in gets 95 % out of its width and speed, more than the 75 % to 85 % that handbooks give for open fields',
    );
    expect(warning!.fix).toMatch(/seconds lost at a turn/);
  });

  it('is given by handbooks for what cuts, by nobody for what rolls or brushes', () => {
    for (const m of MACHINES) {
      const range = handbookEfficiency(m);
      if (m.cutter === 'none') expect(range).toBeNull();
      else expect(range!.source).toMatch(/ASAE D497\.7/);
    }
    const broom = machine('push-broom-24');
    const swept = { ...fieldEfficiency(TRIPLEX, block(10, 880, 1)), handbook: null };
    expect(efficiencyProblems(broom, swept)).toEqual([]);
  });
});
