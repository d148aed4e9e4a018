import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateHours } from '../../src/labour/estimate-hours';
import type { Hours, LabourSpec, Task } from '../../src/labour/model';
import { outlineDrawnFt } from '../../src/labour/outline-length';
import { MINUTES_PER_RATE, RATES, type RateId, type RateUnit } from '../../src/labour/rates';
import { setOutSeconds } from '../../src/labour/set-out-time';
import { lognormalAt, lognormalOf, NORMAL_90, pertMoments } from '../../src/labour/spread';
import type { StakePlan } from '../../src/stakeout/model';
import { DESIGN, FIELD, passPlan, PASSES, SPEC, stakePlan } from './fixtures';

const run = (
  change: Partial<LabourSpec> = {},
  stakes: StakePlan | null = stakePlan(),
  passes = PASSES,
) => estimateHours({ field: FIELD, design: DESIGN, passes, stakes, spec: { ...SPEC, ...change } });

function hoursOf(...args: Parameters<typeof run>): Hours {
  const result = run(...args);
  if (!result.ok) throw new Error(result.problems.map((p) => p.code).join());
  return result.value;
}

const codes = (change: Partial<LabourSpec>): string[] => run(change).problems.map((p) => p.code);
const task = (hours: Hours, id: string): Task => hours.tasks.find((t) => t.id === id)!;
const fixed = (value: number) => ({ low: value, likely: value, high: value });

const SET_OUT = [
  'flag-heads',
  'prove-controls',
  'set-controls',
  'move-tapes',
  'set-stakes',
  'set-pins',
  'set-short',
  'tie-strings',
  'pull-strings',
  'draw-swings',
  'draw-bends',
  'transfer',
  'pull',
  'count',
];
const CHAIN = [
  ['erase'],
  ['background'],
  ...SET_OUT.slice(0, 7).map((id) => [id]),
  ['tie-strings', 'pull-strings', 'draw-swings', 'draw-bends'],
  ['transfer'],
  ['pull'],
  ['count'],
  ['graphic'],
  ['edge'],
  ['border'],
  ['clean-up', 'irrigation-on'],
];

describe('machines that share a phase', () => {
  it('have a task and an operator each, told apart by id, and the next stage waits for all', () => {
    const plan = passPlan({ background: 3600, graphic: 600 });
    const second = { ...plan.machines[0]!, id: 'wide-2' };
    const shared = {
      ...plan,
      machines: [...plan.machines, second],
      totals: [...plan.totals, { ...plan.totals[0]!, machine: 'wide-2', seconds: 3000 }],
    };
    const hours = hoursOf({}, stakePlan(), shared);
    const own = hours.tasks.filter((t) => t.id.startsWith('background'));
    expect(own.map((t) => [t.id, t.quantity, t.people])).toEqual([
      ['background-wide', 60, 1],
      ['background-wide-2', 50, 1],
    ]);
    const next = task(hours, 'flag-heads');
    expect(next.after).toEqual(expect.arrayContaining(own.map((t) => t.id)));
  });
});

describe('the order of work', () => {
  it('cannot be broken by any rates, crew or phases', () => {
    const times = fc
      .tuple(fc.nat(50), fc.nat(50), fc.nat(50))
      .map((t) => [...t].sort((a, b) => a - b))
      .map(([low, likely, high]) => ({ low: low!, likely: likely!, high: high! + 1 }));
    const ids = Object.keys(RATES) as RateId[];
    fc.assert(
      fc.property(
        fc.dictionary(fc.constantFrom(...ids), times),
        fc.integer({ min: 2, max: 7 }),
        fc.constantFrom(2 as const, 3 as const, 4 as const),
        fc.boolean(),
        (rates, people, crew, erases) => {
          const seconds = { background: 900, graphic: 600, edge: 300, border: 300 };
          const passes = passPlan(erases ? { erase: 500, ...seconds } : seconds);
          expectOrder(hoursOf({ rates, people }, stakePlan(crew), passes));
        },
      ),
      { seed: 21, numRuns: 8 },
    );
  });

  function expectOrder(hours: Hours): void {
    let ready = 0;
    for (const stage of CHAIN) {
      const tasks = hours.tasks.filter((t) => stage.includes(t.id));
      for (const t of tasks) expect(t.startMin).toBeGreaterThanOrEqual(ready);
      ready = Math.max(ready, ...tasks.map((t) => t.endMin));
    }
  }

  it('has nothing powered in the set-out area between the first flag and the signed count', () => {
    const hours = hoursOf();
    const first = task(hours, 'flag-heads').startMin;
    const signed = task(hours, 'count').endMin;
    for (const id of ['background', 'graphic', 'edge', 'border']) {
      const t = task(hours, id);
      expect(t.endMin <= first || t.startMin >= signed).toBe(true);
    }
  });

  it('follows only from the quantities: no stakes, no set-out', () => {
    const ids = hoursOf({ people: 1 }, null).tasks.map((t) => t.id);
    expect(ids).not.toContain('prepare');
    for (const id of SET_OUT) expect(ids).not.toContain(id);
    expect(ids).toContain('background');
  });
});

describe('quantities', () => {
  it('come from the plan', () => {
    const hours = hoursOf();
    const counts = ['set-controls', 'set-stakes', 'set-pins', 'move-tapes', 'draw-swings'];
    expect(counts.map((id) => task(hours, id).quantity)).toEqual([2, 4, 1, 2, 2]);
    expect(task(hours, 'background').quantity).toBe(60);
    expect(task(hours, 'prove-controls').quantity).toBe(FIELD.proving.length);
    expect(task(hours, 'pull').quantity).toBe(7 + task(hours, 'flag-heads').quantity);
  });

  it('measure the line drawn: strings, half circle and full circle', () => {
    expect(outlineDrawnFt(stakePlan())).toBeCloseTo(90 + 15 * Math.PI + 10 * Math.PI, 9);
  });

  it('split a phase that two machines share', () => {
    const passes = passPlan({ background: 600, border: 600 });
    const both = {
      ...passes,
      totals: [...passes.totals, { ...passes.totals[1]!, machine: 'narrow' }],
    };
    const ids = hoursOf({}, null, both).tasks.map((t) => t.id);
    expect(ids).toEqual(expect.arrayContaining(['border-wide', 'border-narrow']));
  });
});

describe('hours', () => {
  it('with certain rates are exactly quantity × rate × people', () => {
    const rates = Object.fromEntries(Object.keys(RATES).map((id) => [id, fixed(2)]));
    const hours = hoursOf({ rates });
    const minutes = (t: Task): number => t.quantity * 2 * MINUTES_PER_RATE[t.rate.unit as RateUnit];
    const person = hours.tasks.reduce((sum, t) => sum + t.people * minutes(t), 0) / 60;
    expect(hours.totals.personHoursP50).toBeCloseTo(person, 9);
    expect(hours.totals.personHoursP90).toBeCloseTo(person, 9);
    for (const t of hours.tasks) expect(t.minutesP50).toBeCloseTo(minutes(t), 9);
    const clock = Math.max(...hours.tasks.map((t) => t.endMin)) / 60;
    expect(hours.totals.clockHoursP50).toBeCloseTo(clock, 9);
    expect(hours.visits).toEqual([{ visit: 1, ...hours.totals }]);
  });

  it('of one uncertain task follow its closed form', () => {
    const only = { low: 5, likely: 8, high: 14 };
    const rates = Object.fromEntries(Object.keys(RATES).map((id) => [id, fixed(0.001)]));
    const hours = hoursOf({ people: 1, rates: { ...rates, background: only } }, null);
    const { mean, sd } = pertMoments(only);
    const spread = lognormalOf(mean * 60, sd * 60);
    const extra = hours.tasks
      .filter((t) => t.id !== 'background')
      .reduce((sum, t) => sum + t.minutesP50, 0);
    // Four standard errors of a quantile of 2000 draws: √(p(1 − p) ÷ n) ÷ φ(z), in normal units.
    for (const [p, z, got] of [
      [0.5, 0, hours.totals.clockHoursP50],
      [0.9, NORMAL_90, hours.totals.clockHoursP90],
    ] as const) {
      const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
      const error = 4 * spread.sigma * (Math.sqrt((p * (1 - p)) / 2000) / density);
      const wanted = (lognormalAt(spread, z) + extra) / 60;
      expect(Math.abs(Math.log(got / wanted))).toBeLessThan(error);
    }
  });

  it('are surer of the middle than of the tail, and the same every time', () => {
    const hours = hoursOf();
    expect(hours.totals.clockHoursP90).toBeGreaterThan(hours.totals.clockHoursP50);
    expect(hours.totals.personHoursP90).toBeGreaterThan(hours.totals.personHoursP50);
    for (const t of hours.tasks) expect(t.minutesP90).toBeGreaterThan(t.minutesP50);
    expect([...hours.simulated].sort((a, b) => a - b)).toEqual(hours.simulated);
    expect(hoursOf()).toEqual(hours);
  });

  it('never grow with more people', () => {
    for (const crew of [2, 3, 4] as const) {
      let before = Infinity;
      for (let people = 2; people <= 6; people++) {
        const { clockHoursP90 } = hoursOf({ people }, stakePlan(crew)).totals;
        expect(clockHoursP90).toBeLessThanOrEqual(before);
        before = clockHoursP90;
      }
    }
  });

  it('grow with the plan', () => {
    const more = { ...stakePlan(), swings: 20, stringFt: 900 };
    expect(hoursOf({}, more).totals.clockHoursP50).toBeGreaterThan(hoursOf().totals.clockHoursP50);
  });
});

describe('the window', () => {
  it('agrees with the simulated days', () => {
    const { window, simulated, totals } = hoursOf({ opens: '06:00', closes: '11:00' });
    expect(window.spareMinutesP90).toBe(Math.floor(300 - totals.clockHoursP90 * 60));
    expect(window.fitsP90).toBe(window.chance >= 0.9);
    expect(window.chance).toBe(simulated.filter((h) => h <= 5).length / simulated.length);
  });

  it('says by how much the work is over', () => {
    const result = run({ opens: '06:00', closes: '07:00' });
    expect(result.ok && result.value.window.spareMinutesP90).toBeLessThan(0);
    expect(result.ok && result.value.window.fitsP90).toBe(false);
    expect(result.problems.map((p) => [p.code, p.severity])).toEqual([['window-short', 'warning']]);
  });

  it('names the finish after midnight as such', () => {
    const { window } = hoursOf({ opens: '22:30', closes: '24:00' });
    expect(window.finishP90).toMatch(/^\d\d:\d\d next day$/);
  });
});

describe('nonsense', () => {
  it('is refused with every problem named', () => {
    expect(codes({ people: 0 })).toEqual(['crew-size']);
    expect(codes({ people: 2.5 })).toEqual(['crew-size']);
    expect(codes({ people: 1 })).toEqual(['crew-short']);
    expect(codes({ opens: '6am' })).toEqual(['window-clock']);
    expect(codes({ opens: '25:00', closes: '12:61' })).toEqual(['window-clock', 'window-clock']);
    expect(codes({ opens: '18:00', closes: '06:00' })).toEqual(['window-order']);
    expect(codes({ rates: { pull: { low: 3, likely: 2, high: 5 } } })).toEqual(['rate-range']);
    expect(codes({ rates: { pull: { low: -1, likely: 2, high: 5 } } })).toEqual(['rate-range']);
    expect(codes({ rates: { pull: { low: 1, likely: NaN, high: 5 } } })).toEqual(['rate-range']);
    expect(codes({ people: 0, opens: '' })).toEqual(['crew-size', 'window-clock']);
  });

  it('in the name of a task is a warning only', () => {
    const result = run({ rates: { juggle: fixed(1) } });
    expect(result.ok).toBe(true);
    expect(result.problems.map((p) => [p.code, p.severity])).toEqual([['rate-unknown', 'warning']]);
  });
});

describe('the time stakes stand in the grass', () => {
  it('is the schedule from first flag to signed count', () => {
    const hours = hoursOf({ people: 3 });
    const span = task(hours, 'count').endMin - task(hours, 'flag-heads').startMin;
    expect(setOutSeconds(stakePlan(), { ...SPEC, people: 3 })).toBeCloseTo(span * 60, 6);
    expect(setOutSeconds(null, SPEC)).toBe(0);
  });
});

describe('the rates', () => {
  it('all carry a source and a range', () => {
    for (const [id, { rate }] of Object.entries(RATES)) {
      expect(rate.source, id).not.toBe('');
      expect(rate.low <= rate.likely && rate.likely <= rate.high, id).toBe(true);
    }
  });

  // sportsfieldmanagementmagazine.com, "Line of attack": preparation takes double the painting.
  it('keep strings at double the line', () => {
    expect(RATES['pull-strings'].rate.likely).toBe(2 * RATES.transfer.rate.likely);
  });
});
