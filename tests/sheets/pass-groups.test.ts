/** Passes as they are handed to drivers: order of the groups, and what follows each pass. */
import { describe, expect, it } from 'vitest';
import type { Leg, Pass, PassPlan } from '../../src/mowing/model';
import { groupPasses } from '../../src/sheets/pass-groups';
import { planFixture } from './plan-fixture';

const base = planFixture().passes;
const line = [
  { x: 200, y: 200 },
  { x: 200, y: 260 },
];
const way = [
  { x: 150, y: 200 },
  { x: 200, y: 200 },
];

/** The fixture's plan, whose wide mower goes on with one clean-up lap as soon as the count is signed. */
function withBorder(): { plan: PassPlan; last: number } {
  const wide = base.passes.filter((pass) => pass.machine === 'triplex');
  const last = wide.length;
  const hold = base.legs.find((leg) => leg.kind === 'hold')!;
  const lap: Pass = { ...wide[0]!, number: last + 1, phase: 'border', line, lengthFt: 60 };
  const after = hold.startS + hold.seconds;
  const own = (leg: Partial<Leg>): Leg => ({ ...hold, machine: 'triplex', ...leg });
  const legs: Leg[] = [
    own({ seq: 9001, phase: 'carry' }),
    own({ seq: 9002, phase: 'border', kind: 'run', points: way, startS: after - 1, seconds: 0.5 }),
    own({
      seq: 9003,
      phase: 'border',
      kind: 'mow',
      pass: last + 1,
      points: line,
      startS: after - 0.5,
      seconds: 12,
    }),
  ];
  return {
    plan: { ...base, passes: [...base.passes, lap], legs: [...base.legs, ...legs] },
    last,
  };
}

describe('groups of passes', () => {
  it('come in the order of work after the count, though both machines start at once', () => {
    const groups = groupPasses(withBorder().plan, 'feet-inches');
    expect(groups.map((group) => [group.phase, group.afterHold])).toEqual([
      ['background', false],
      ['graphic', true],
      ['border', true],
    ]);
  });

  it('never send a driver past the hold point to the next pass', () => {
    const { plan, last } = withBorder();
    const [background] = groupPasses(plan, 'feet-inches');
    expect(background!.thenText.get(last)).toBe('off grass, hold');
    expect([...background!.thenText.values()].filter((text) => /hold/.test(text))).toHaveLength(1);
    expect(background!.thenText.get(last + 1)).toBe('done');
  });

  it('name where every empty run leads, in whole metres on a metric sheet', () => {
    for (const group of groupPasses(base, 'metric'))
      for (const text of group.thenText.values())
        expect(text).toMatch(/^(turn to \d+|empty \d+ m to \d+|done)$/);
  });
});
