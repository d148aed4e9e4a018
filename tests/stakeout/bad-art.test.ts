import { describe, expect, it } from 'vitest';
import type { Region } from '../../src/geometry/region';
import { planStakes } from '../../src/stakeout/plan-stakes';
import { expectWholePlan, nastyArt } from './support/nasty-art';
import { defaultField, SPEC } from './support/plans';

const box = (x: number, y: number, w: number, h: number): Region => [
  [
    { x, y },
    { x: x + w, y },
    { x: x + w, y: y + h },
    { x, y: y + h },
  ],
];
const plan = (graphic: Region, spec = SPEC) => planStakes({ field: defaultField(), graphic, spec });
const codes = (graphic: Region, spec = SPEC) => plan(graphic, spec).problems.map((p) => p.code);

describe('art that cannot be set out is refused in words', () => {
  it('with nothing in it', () => {
    expect(codes([])).toEqual(['graphic-empty']);
    expect(
      codes([
        [
          { x: 0, y: 250 },
          { x: 9, y: 250 },
        ],
      ]),
    ).toEqual(['graphic-empty']);
  });
  it('larger than the grass', () =>
    expect(codes(box(-400, -100, 800, 800))).toEqual(['art-larger-than-grass']));
  it('over the skin', () => expect(codes(box(-20, 130, 40, 60))).toContain('art-over-skin'));
  it('over the track', () => expect(codes(box(-20, 370, 40, 25))).toContain('art-over-track'));
  it('beyond the fence', () => expect(codes(box(-20, 395, 40, 40))).toContain('art-off-grass'));
  it('out of reach of a short tape, by count and place', () => {
    const short = plan(box(-20, 300, 40, 20), { ...SPEC, tape: { ...SPEC.tape, limitFt: 30 } });
    expect(short.ok).toBe(false);
    expect(short.problems[0]).toMatchObject({ code: 'stake-out-of-reach', severity: 'error' });
    expect(short.problems[0]!.where).toMatch(/^\d+ of \d+ stakes/);
  });
});

describe('art that can be set out in part says where it cannot', () => {
  it('leaves out a speck and names its place', () => {
    const result = plan([...box(-20, 260, 40, 20), ...box(60, 270, 0.4, 0.4)]);
    expect(result.ok).toBe(true);
    expect(result.problems.map((p) => p.code)).toEqual(['detail-too-small']);
    // The speck is at (60, 270): 276.6 ft from home.
    expect(result.problems[0]!.where).toMatch(/, 277 ft from home, 60 ft right of the line/);
  });
  it('marks every stake above a target that this tape cannot meet', () => {
    const result = plan(box(-20, 260, 40, 20), { ...SPEC, target95In: 1.2 });
    if (!result.ok) throw new Error('expected a plan');
    expect(result.value.overTarget.length).toBeGreaterThan(0);
    // One warning names them all, as runs of numbers.
    const [named, ...others] = result.problems.filter((p) => p.code === 'stake-over-target');
    expect(others).toEqual([]);
    expect(namedIds(named!.where)).toEqual(result.value.overTarget);
    expect(result.problems.every((p) => p.severity === 'warning')).toBe(true);
  });
});

/** The ids behind `stakes K1, 3 to 6, 9`. */
const namedIds = (where: string): string[] =>
  where
    .replace(/^stakes? /, '')
    .split(', ')
    .flatMap((part) => {
      const [from, to] = part.split(' to ');
      if (to === undefined) return [from!];
      return Array.from({ length: Number(to) - Number(from) + 1 }, (_, i) =>
        String(Number(from) + i),
      );
    });

describe('nasty art', () => {
  it.each([100, 101, 103, 105, 106])('never breaks the plan (draw %i)', (seed) => {
    expectWholePlan(plan(nastyArt(seed)));
  });
});
