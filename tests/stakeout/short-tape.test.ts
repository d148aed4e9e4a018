import { describe, expect, it } from 'vitest';
import { methodControls } from '../../src/stakeout/ties';
import { demoCrew, DEMOS } from '../support/demo-crew';
import { oneTreeBound } from '../support/one-tree-bound';
import { setOut, type Place } from './support/crew';
import { groupedNearest, isShortTape, shortWalk, tiedWalk } from './support/crew-walk';

const away = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);

describe.each(DEMOS)('%s, stakes of the short tape', (file) => {
  const plan = demoCrew(file).stakes;
  const at = setOut(plan);
  const short = plan.stakes.filter(isShortTape);
  const byId = new Map(plan.stakes.map((s) => [s.id, s]));

  it('are a third of all stakes or more, pins and outline stakes, in the word by chord as well', () => {
    expect(short.length).toBeGreaterThan(plan.stakes.length / 3);
    expect(new Set(short.map((s) => s.kind))).toEqual(new Set(['outline', 'pin']));
    const methods = new Set(short.map((s) => s.set.method));
    expect(methods.has('offset')).toBe(true);
    if (file.includes('word')) expect(methods.has('chord')).toBe(true);
  });

  it('stand within a few feet of a line of at most 30 ft, two deep at most, within the target', () => {
    const depth = (id: string): number => {
      const s = byId.get(id);
      return s && isShortTape(s) ? 1 + Math.max(...methodControls(s.set).map(depth)) : 0;
    };
    for (const s of short) {
      if (s.set.method !== 'offset' && s.set.method !== 'chord') continue;
      const [a, b] = methodControls(s.set).map((id) => at.get(id)!) as [Place, Place];
      expect(away(a, b)).toBeLessThanOrEqual(30);
      expect(s.set.offset.ft).toBeLessThanOrEqual(6);
      expect(depth(s.id)).toBeLessThanOrEqual(2);
      expect(s.semiMajor95In).toBeLessThanOrEqual(plan.spec.target95In);
      // Error against its two ends, across and along, the carpenter's square at half a degree.
      const skew = 12 * s.set.offset.ft * ((0.5 * Math.PI) / 180);
      expect(2.4477 * Math.hypot(0.25, skew)).toBeLessThanOrEqual(plan.spec.toleranceIn / 2 + 0.1);
    }
  });

  it('on the wrong side always fail their check, 12 in along or off nearly always', () => {
    let slips = 0;
    let seen = 0;
    for (const s of short) {
      if (s.set.method !== 'offset' && s.set.method !== 'chord') continue;
      const [a, b] = methodControls(s.set).map((id) => at.get(id)!) as [Place, Place];
      const e = [(b[0] - a[0]) / away(a, b), (b[1] - a[1]) / away(a, b)] as const;
      const left = s.set.side === 'L' ? 1 : -1;
      const p = at.get(s.id)!;
      const from = at.get(s.check.from)!;
      const shown = (along: number, out: number): number => {
        const q: Place = [
          p[0] + along * e[0] - out * left * e[1],
          p[1] + along * e[1] + out * left * e[0],
        ];
        return 12 * Math.abs(away(q, from) - s.check.reading.ft);
      };
      expect(shown(0, -2 * s.set.offset.ft), s.id).toBeGreaterThan(1.5 * s.check.limitIn);
      for (const slip of [shown(1, 0), shown(-1, 0), shown(0, 1), shown(0, -1)]) {
        slips++;
        if (slip > s.check.limitIn) seen++;
      }
    }
    expect(seen / slips).toBeGreaterThan(0.95);
  });

  it('measured from their line’s other end always fail their check where that is a foot off', () => {
    let tried = 0;
    for (const s of short) {
      if (s.set.method !== 'offset') continue;
      const [a, b] = methodControls(s.set).map((id) => at.get(id)!) as [Place, Place];
      const e = [(a[0] - b[0]) / away(a, b), (a[1] - b[1]) / away(a, b)] as const;
      const from = at.get(s.check.from)!;
      for (const left of [1, -1]) {
        const [along, out] = [s.set.tie1.reading.ft, left * s.set.offset.ft];
        const q: Place = [b[0] + along * e[0] - out * e[1], b[1] + along * e[1] + out * e[0]];
        if (away(q, at.get(s.id)!) < 1) continue;
        tried++;
        const shown = 12 * Math.abs(away(q, from) - s.check.reading.ft);
        expect(shown, s.id).toBeGreaterThan(1.5 * s.check.limitIn);
      }
    }
    expect(tried).toBeGreaterThan(20);
  });

  it('come in rounds of their own behind all that they need, and are walked without long ways back', () => {
    for (const round of plan.rounds) {
      const kinds = new Set(round.stakes.map((id) => isShortTape(byId.get(id)!)));
      expect([...kinds]).toEqual([round.from === null]);
    }
    const walk = shortWalk(plan, at);
    expect(walk.seconds / oneTreeBound(walk.costs, 80)).toBeLessThan(1.35);
  });

  it('leave ties whose walk is within 5 % of the one-tree bound, and shorter than the nearest next', () => {
    const walk = tiedWalk(plan, at);
    expect(walk.seconds / oneTreeBound(walk.costs, 150)).toBeLessThan(1.05);
    expect(walk.seconds).toBeLessThan(groupedNearest(plan, at));
    const pairs = new Set(
      plan.rounds.filter((r) => r.from !== null).map((r) => [...r.from!].sort().join('+')),
    );
    expect(plan.rounds.filter((r) => r.from !== null).length).toBe(pairs.size);
  });
});
