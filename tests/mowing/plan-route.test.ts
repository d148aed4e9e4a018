import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import type { Phase } from '../../src/mowing/model';
import { planRoute } from '../../src/mowing/plan-route';
import type { Swath } from '../../src/mowing/swath-model';
import type { Point } from '../../src/geometry/point';
import { polylineLength } from '../../src/geometry/polyline';

const machine = (id: string) => MACHINES.find((m) => m.id === id)!;
const WIDE = machine('triplex-reel');
const GRAPHIC = [
  { x: -20, y: 240 },
  { x: 20, y: 240 },
  { x: 20, y: 260 },
  { x: -20, y: 260 },
];
const built = buildField(defaultFieldSpec(), 'feet-inches');
if (!built.ok) throw new Error('the default field must build');
const field = built.value;

let count = 0;
const swath = (
  role: 'wide' | 'narrow',
  phase: Phase,
  group: number,
  from: Point,
  to: Point,
): Swath => ({
  id: `${phase}/${++count}`,
  patch: phase,
  role,
  phase,
  line: [from, to],
  widthFt: role === 'wide' ? 62 / 12 : 21 / 12,
  group,
});
const up = (phase: Phase, group: number, x: number) =>
  swath('wide', phase, group, { x, y: 200 }, { x, y: 300 });
const down = (phase: Phase, group: number, x: number) =>
  swath('wide', phase, group, { x, y: 300 }, { x, y: 200 });
const row = (y: number) => swath('narrow', 'graphic', 0, { x: -20, y }, { x: 20, y });

function drive(
  swaths: readonly Swath[],
  narrow = 'rotary-roller-21',
  graphic = [GRAPHIC],
  wide = WIDE,
) {
  const design = { patches: [], guides: {}, graphic, quiet: [], strokes: [] };
  const layout = { swaths, blocked: [], uncovered: [], graphicCovered: 1, laidOutside: 0 };
  const gate = { x: 200, y: 160 };
  const setOutSeconds = 3600;
  const input = { field, design, wide, narrow: machine(narrow), gate, setOutSeconds };
  return planRoute(input, layout);
}

function driven(...args: Parameters<typeof drive>) {
  const result = drive(...args);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

describe('the order of work', () => {
  it('cannot be broken by the order, the groups or the mix of the swaths', () => {
    const random = seededRandom(11);
    const swaths = [
      up('background', 5, -10),
      down('background', 9, -5),
      up('erase', 7, 0),
      down('border', 0, 30),
      up('border', -3, 40),
      swath('wide', 'edge', 1, { x: -30, y: 232 }, { x: 30, y: 232 }),
      row(245),
      row(246.6),
    ];
    for (let i = 0; i < 4; i++) {
      const shuffled = [...swaths].sort(() => random.uniform() - 0.5);
      const { legs } = driven(shuffled);
      const hold = legs.find((leg) => leg.kind === 'hold')!;
      expect(hold.seconds).toBe(3600);
      const mown = legs.filter((leg) => leg.kind === 'mow');
      expect(mown).toHaveLength(swaths.length);
      for (const leg of mown) {
        const before = leg.phase === 'erase' || leg.phase === 'background';
        if (before) expect(leg.startS + leg.seconds).toBeLessThanOrEqual(hold.startS);
        else expect(leg.startS).toBeGreaterThanOrEqual(hold.startS + hold.seconds);
      }
    }
  });

  it('makes both machines wait off the set-out area, unpowered tools too', () => {
    const { legs } = driven([up('background', 0, 0), row(250)], 'hand-roller-24');
    const holds = legs.filter((leg) => leg.kind === 'hold');
    expect(holds.map((h) => h.machine)).toEqual(['triplex-reel', 'hand-roller-24']);
    expect(holds[0]!.startS).toBe(holds[1]!.startS);
    for (const { points } of holds) expect(Math.abs(points[0]!.x)).toBeGreaterThan(30);
  });

  it('counts the stakes of a graphic that no tool can mow before the laps are driven', () => {
    const { legs } = driven([up('background', 0, 0), up('border', 3, 60)]);
    const hold = legs.find((leg) => leg.kind === 'hold')!;
    const lap = legs.find((leg) => leg.kind === 'mow' && leg.phase === 'border')!;
    expect(hold.seconds).toBe(3600);
    expect(lap.startS).toBeGreaterThanOrEqual(hold.startS + hold.seconds);
  });

  it('has no count without a graphic', () => {
    const { legs } = driven([up('background', 0, 0), up('border', 1, 40)], undefined, []);
    expect(legs.some((leg) => leg.kind === 'hold')).toBe(false);
    expect(legs.filter((leg) => leg.kind === 'mow').map((leg) => leg.phase)).toEqual([
      'background',
      'border',
    ]);
  });
});

describe('driving order', () => {
  it('goes out in one band and comes back in the next, without an empty run', () => {
    const swaths = [0, 1, 2, 3, 4, 5].flatMap((band) =>
      [0, 1, 2].map((i) => {
        const x = -60 + 4.9 * (3 * band + i);
        return { ...(band % 2 === 0 ? up : down)('background', 0, x), band };
      }),
    );
    const { passes, legs } = driven(swaths, undefined, []);
    const ways = passes.map((p) => Math.sign(p.line[1]!.y - p.line[0]!.y));
    for (let i = 1; i < ways.length; i++) expect(ways[i]).toBe(-ways[i - 1]!);
    // The way on to the grass may be long; from then on no way is as long as a pass.
    const first = legs.findIndex((leg) => leg.kind === 'mow');
    for (const leg of legs.slice(first)) {
      if (leg.kind === 'mow' || leg.phase === 'carry') continue;
      expect(polylineLength(leg.points)).toBeLessThan(60);
    }
    expect(passes.map((p) => p.number)).toEqual(passes.map((_, i) => i + 1));
  });

  it('never turns a pass round', () => {
    const swaths = [up('background', 0, -10), up('background', 0, -5), up('background', 0, 0)];
    const { passes, legs } = driven(swaths, undefined, []);
    for (const p of passes) expect(p.line[1]!.y).toBeGreaterThan(p.line[0]!.y);
    // One lay: every return is an empty run of the passes' length at least.
    const runs = legs.filter((leg) => leg.kind === 'run' && leg.phase === 'background');
    expect(runs.length).toBeGreaterThanOrEqual(2);
  });
});

describe('what cannot be driven', () => {
  it('is said, not forced', () => {
    const overSkin = swath('wide', 'background', 0, { x: 0, y: 100 }, { x: 0, y: 220 });
    const result = drive([overSkin, up('background', 0, 20)], undefined, []);
    expect(result.problems.map((p) => p.code)).toEqual(['pass-trimmed']);
    // From y 100, where the swath starts, to the trimmed start below.
    expect(result.problems[0]!.what).toMatch(/passes of Triplex reel.* are 61 ft short in all/);
    expect(result.problems[0]!.what).toMatch(/: background \(100 ft from home, on the line/);
    // The skin's arc ends 95 ft from the pitcher's plate, 155 ft 6 in from home; the tail is 5.5 ft.
    const trimmed = result.ok && result.value.passes.find((p) => p.line[0]!.x === 0);
    expect(trimmed && trimmed.line[0]!.y).toBeGreaterThan(155.5 + 5.5 - 0.01);
    expect(trimmed && trimmed.line[0]!.y).toBeLessThan(155.5 + 5.5 + 0.3);
  });

  it('stops the plan when the wide machine cannot leave before the stakes are set', () => {
    // Ends facing the fence, 25 ft off: no half turn of 40 ft radius, and it cannot back up.
    const nose = swath('wide', 'background', 0, { x: 0, y: 200 }, { x: 0, y: 375 });
    const clumsy = { ...WIDE, turnRadiusFt: 40, mayReverse: false };
    const result = drive([nose], undefined, undefined, clumsy);
    expect(result.ok).toBe(false);
    expect(result.problems.map((p) => [p.code, p.severity])).toContainEqual([
      'machine-stranded',
      'error',
    ]);
    expect(result.problems[0]!.what).toMatch(/before the stakes are set: it stands 375 ft from/);
    const bandsOnly = drive([nose], undefined, [], clumsy);
    expect(bandsOnly.ok).toBe(true);
    expect(bandsOnly.problems.map((p) => [p.code, p.severity])).toEqual([
      ['machine-stranded', 'warning'],
    ]);
  });

  it('is named when a drum that stays down spoils the graphic', () => {
    const rows = Array.from({ length: 12 }, (_, i) => row(240.9 + 1.6 * i));
    const reel = drive(rows, 'greens-reel-22');
    expect(reel.problems.map((p) => p.code)).toEqual(['graphic-disturbed']);
    const lifted = drive(rows, 'rotary-roller-21');
    expect(lifted.problems).toEqual([]);
    expect(lifted.ok && lifted.value.disturbed).toBe(0);
    const ways = reel.ok ? reel.value.legs.filter((leg) => /turn|run/.test(leg.kind)) : [];
    const own = ways.filter((leg) => leg.machine === 'greens-reel-22');
    expect(own.length).toBeGreaterThan(11);
    expect(own.every((leg) => leg.lays)).toBe(true);
  });
});
