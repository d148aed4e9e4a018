/** Guide strings against the route: when they stand, what comes near them, what is driven over them. */
import { beforeAll, describe, expect, it } from 'vitest';
import { passesAimed, stringTurns, type StringTurn } from '../../src/guide/string-turns';
import { makePlan } from '../../src/plan/make-plan';
import type { Plan } from '../../src/plan/model';
import { defaultProject } from '../../src/project/default-project';
import type { Project } from '../../src/project/model';
import { must } from '../design/grass';

interface Pt {
  readonly x: number;
  readonly y: number;
}

const planOf = (change: Partial<Project> = {}): Plan =>
  must(makePlan({ ...defaultProject(), ...change }, { fonts: {}, files: {} }));

/** Distance from a point to a segment. */
function apart(p: Pt, a: Pt, b: Pt): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
  const k = Math.min(1, Math.max(0, t));
  return Math.hypot(p.x - a.x - k * dx, p.y - a.y - k * dy);
}

/** Corners and sides of a 62-in machine, 2 ft ahead and 5.5 ft behind, every half foot along a line. */
function bodyPoints(line: readonly Pt[]): Pt[] {
  const out: Pt[] = [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    for (let s = -5.5; s <= length + 2; s += 0.5)
      for (const side of [-31 / 12, 31 / 12])
        out.push({ x: a.x + ux * s - uy * side, y: a.y + uy * s + ux * side });
  }
  return out;
}

/** Band passes off any string with no earlier one less than a cut away, across the bearing of 45 degrees. */
function aloneByOffset(of: Plan, strung: readonly StringTurn[]): number {
  const bands = of.passes.passes.filter((p) => /^band-/.test(p.patch));
  const guided = new Set(strung.map(({ pass }) => pass.number));
  const offset = (p: Pt) => (p.x - p.y) * Math.SQRT1_2;
  return bands.filter((pass, i) => {
    const near = bands
      .slice(0, i)
      .some((p) => Math.abs(offset(p.line[0]!) - offset(pass.line[0]!)) < 62 / 12);
    return !near && !guided.has(pass.number);
  }).length;
}

let plan: Plan;
let turns: StringTurn[];
beforeAll(() => {
  plan = planOf();
  turns = stringTurns(plan.guides, plan.passes);
});

describe('a guide string on the grass', () => {
  it('stands for its own pass alone, driven without a break, 12 in clear of the machine', () => {
    expect(turns.length).toBeGreaterThan(3);
    for (const { string, pass } of turns) {
      const legs = plan.passes.legs.filter((leg) => leg.pass === pass.number && leg.kind === 'mow');
      const own = legs.filter((leg) => leg.machine === pass.machine);
      own.slice(1).forEach((leg, i) => {
        expect(leg.startS).toBeCloseTo(own[i]!.startS + own[i]!.seconds, 6);
      });
      for (const p of own.flatMap((leg) => bodyPoints(leg.points))) {
        // A twentieth of an inch for the printed figures of the two end stakes.
        expect(apart(p, string.from.at, string.to.at)).toBeGreaterThan((12 - 0.05) / 12);
      }
    }
  });

  it('is lifted before the machine moves on, and before whatever is driven over its place', () => {
    for (const { string, pass, liftBefore, over } of turns) {
      const later = plan.passes.passes.filter((p) => p.number > pass.number);
      expect(liftBefore).toBe(pass.number + 1);
      const over62 = later.find((p) =>
        bodyPoints(p.line).some((_, i, all) => {
          if (i % 2 === 1) return false;
          const middle = { x: (all[i]!.x + all[i + 1]!.x) / 2, y: (all[i]!.y + all[i + 1]!.y) / 2 };
          return apart(middle, string.from.at, string.to.at) < 30 / 12;
        }),
      );
      expect(over).not.toBeNull();
      expect(over!).toBeGreaterThanOrEqual(liftBefore!);
      expect(over!).toBeLessThanOrEqual(over62!.number);
    }
  });

  it('comes before every other band pass of its mowing, so that those follow it', () => {
    const guided = new Set(turns.map(({ pass }) => pass.number));
    const bands = plan.passes.passes.filter((p) => /^band-/.test(p.patch));
    const first = bands.slice(0, guided.size).map((p) => p.number);
    expect(new Set(first)).toEqual(guided);
  });

  it('leads every other band pass to its place: one beside it is there before', () => {
    expect(passesAimed(plan.guides, plan.passes)).toBe(0);
    expect(aloneByOffset(plan, turns)).toBe(0);
  });

  it('leaves as many passes to be aimed as are counted, where the shortest way is asked for', () => {
    const short = planOf({ guides: { order: 'shortest' } });
    const alone = aloneByOffset(short, stringTurns(short.guides, short.passes));
    expect(alone).toBeGreaterThan(0);
    // A lane in two pieces may have a neighbour beside one of them only.
    expect(Math.abs(passesAimed(short.guides, short.passes) - alone)).toBeLessThanOrEqual(2);
  });

  it('changes no pass but their order', () => {
    const without = planOf({ guides: { strings: 'none' } });
    expect(without.guides.strings).toEqual([]);
    const ends = (p: Plan) =>
      p.passes.passes
        .map(({ line }) => line.map(({ x, y }) => `${x.toFixed(3)} ${y.toFixed(3)}`).join())
        .sort();
    expect(ends(without)).toEqual(ends(plan));
    const ids = (p: Plan) => p.hours.tasks.map((task) => task.id);
    expect(ids(plan).indexOf('edge-marks')).toBeLessThan(ids(plan).indexOf('guide-strings'));
    expect(ids(plan).indexOf('guide-strings')).toBeLessThan(ids(plan).indexOf('background'));
    expect(ids(without)).not.toContain('guide-strings');
  });
});
