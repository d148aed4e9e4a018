/** Guide lines held against the ground: the edges are walked anew, strings measured from the machine. */
import { describe, expect, it } from 'vitest';
import type { LengthSystem } from '../../src/base/quantity';
import type { Field } from '../../src/field/model';
import { DEFAULT_GUIDES } from '../../src/guide/drift';
import type { EdgeName, GuidePlan, GuideSpec } from '../../src/guide/model';
import { planGuides } from '../../src/guide/plan-guides';
import type { Stroke } from '../../src/design/model';
import { compose, fieldWith, machines, must } from '../design/grass';

interface Pt {
  readonly x: number;
  readonly y: number;
}

const SWATH = (62 - 3) / 12;

function guidesOf(
  pattern: { bearingDeg: number; passesPerBand: number },
  spec: Partial<GuideSpec> = {},
  system: LengthSystem = 'feet-inches',
): { plan: GuidePlan; field: Field; strokes: readonly Stroke[] } {
  const field = fieldWith();
  const design = compose({
    values: { bearing: pattern.bearingDeg, band: { passes: pattern.passesPerBand } },
  });
  const plan = must(
    planGuides({
      field,
      design,
      wide: machines().wide,
      system,
      spec: { ...DEFAULT_GUIDES, ...spec },
    }),
  );
  return { plan, field, strokes: design.strokes };
}

/** The value of a printed reading, read from its text alone. */
function readText(text: string): number {
  const metric = /^(\d+\.\d+) m$/.exec(text);
  if (metric) return Number(metric[1]) / 0.3048;
  const m = /^(\d+)' (\d+)(?: (\d)\/(\d))?"$/.exec(text)!;
  return Number(m[1]) + (Number(m[2]) + (m[3] ? Number(m[3]) / Number(m[4]) : 0)) / 12;
}

const HALF = Math.SQRT1_2;

/** Corners of the grass: where the track side of its outline meets the foul lines. */
function outlineOf(field: Field): readonly Pt[] {
  const grass = field.surfaces.find((s) => s.kind === 'outfield-grass')!;
  return grass.region[0]!;
}

/** The track side as a fine polygon from the left foul line to the right one. */
function trackWalk(field: Field): Pt[] {
  const ring = outlineOf(field);
  const corner = (side: -1 | 1) =>
    ring.reduce((a, b) => (side * b.x + b.y > side * a.x + a.y && onFoul(b, side) ? b : a), {
      x: 0,
      y: 0,
    });
  const [left, right] = [corner(-1), corner(1)];
  const from = ring.indexOf(left);
  const walk: Pt[] = [];
  for (let i = 0; i <= ring.length; i++) {
    // The outline runs counter-clockwise, so the walk from left to right goes against it.
    const p = ring[(from - i + 2 * ring.length) % ring.length]!;
    walk.push(p);
    if (p === right) return walk;
  }
  throw new Error('the walk missed the right corner');
}

const onFoul = (p: Pt, side: -1 | 1): boolean => Math.abs(p.x - side * p.y) < 0.01;

function walkTo(line: readonly Pt[], distance: number): Pt {
  let left = distance;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (left <= length)
      return { x: a.x + ((b.x - a.x) * left) / length, y: a.y + ((b.y - a.y) * left) / length };
    left -= length;
  }
  return line[line.length - 1]!;
}

/** Where a printed distance along an edge is, by the rule book's circle, the lines, or the polygon. */
function place(field: Field, edge: EdgeName, zeroFromHome: number, along: number): Pt {
  if (edge === 'track') return walkTo(trackWalk(field), along);
  if (edge === 'skin') {
    const { x, y } = field.skinArcCentre;
    const start = Math.atan2(zeroFromHome * HALF - y, -zeroFromHome * HALF - x);
    const angle = start - along / 95;
    return { x: x + 95 * Math.cos(angle), y: y + 95 * Math.sin(angle) };
  }
  const out = zeroFromHome - along;
  return { x: (edge === 'left-line' ? -1 : 1) * out * HALF, y: out * HALF };
}

const across = (p: Pt, bearingDeg: number): number => {
  const a = (bearingDeg * Math.PI) / 180;
  return p.x * Math.cos(a) - p.y * Math.sin(a);
};

/** An eighth of an inch of rounding at each of zero and reading, and the polygon's 1/16 in. */
const PRINTED_FT = (0.125 + 0.125 + 0.0625) / 12;
const CASES = [
  { bearingDeg: 0, passesPerBand: 3 },
  { bearingDeg: 45, passesPerBand: 2 },
  { bearingDeg: 20, passesPerBand: 1 },
  { bearingDeg: -30, passesPerBand: 4 },
];

describe('running distances', () => {
  it.each(CASES)('mark every band edge where it meets the edge: %o', (pattern) => {
    const { plan, field } = guidesOf(pattern);
    const width = pattern.passesPerBand * SWATH;
    const origin = across(field.bases.second, pattern.bearingDeg);
    for (const table of plan.tables) {
      const zero = readText(table.zeroFromHome.text);
      for (const mark of table.marks.filter((m) => m.kind === 'band')) {
        const at = place(field, table.edge, zero, readText(mark.along.text));
        const bands = (across(at, pattern.bearingDeg) - origin) / width;
        expect(Math.abs(bands - Math.round(bands)) * width).toBeLessThan(PRINTED_FT);
      }
    }
  });

  it.each(CASES)('leave no meeting of a band edge with the outline out: %o', (pattern) => {
    const { plan, field } = guidesOf(pattern);
    const ring = outlineOf(field);
    const marks = plan.tables.flatMap((t) => t.marks.filter((m) => m.kind === 'band'));
    let met = 0;
    for (const edge of plan.families[0]!.edges) {
      const side = ring.map((p) => across(p, plan.families[0]!.bearingDeg) - edge.offsetFt);
      const crossings = side.filter((s, i) => s * side[(i + 1) % side.length]! < 0).length;
      expect(marks.filter((m) => m.name === edge.name)).toHaveLength(crossings);
      met += crossings;
    }
    expect(marks).toHaveLength(met);
    expect(met).toBeGreaterThan(20);
  });

  it('have totals that are the lengths of the edges', () => {
    const { plan, field } = guidesOf(CASES[0]!);
    const walk = trackWalk(field);
    const length = walk
      .slice(1)
      .reduce((sum, p, i) => sum + Math.hypot(p.x - walk[i]!.x, p.y - walk[i]!.y), 0);
    const total = (edge: EdgeName) =>
      readText(plan.tables.find((t) => t.edge === edge)!.total.text);
    expect(Math.abs(total('track') - length)).toBeLessThan(0.05);
    // From the rule book's arc: 95 ft about the front of the plate, cut by the foul lines.
    const { x, y } = field.skinArcCentre;
    const out = (x + y) * HALF + Math.sqrt(95 ** 2 - ((y - x) * HALF) ** 2);
    const half = Math.atan2(out * HALF - x, out * HALF - y);
    expect(Math.abs(total('skin') - 2 * half * 95)).toBeLessThan(0.02);
  });

  it('ask for pins so near that chords between them lose a quarter inch at most', () => {
    const { plan, field } = guidesOf(CASES[0]!);
    for (const edge of ['track', 'skin'] as const) {
      const table = plan.tables.find((t) => t.edge === edge)!;
      const total = readText(table.total.text);
      const zero = readText(table.zeroFromHome.text);
      const pins = Math.ceil(total / table.pinEveryFt!);
      let chords = 0;
      for (let i = 0; i < pins; i++) {
        const [a, b] = [i, i + 1].map((k) => place(field, edge, zero, (k * total) / pins));
        chords += Math.hypot(b!.x - a!.x, b!.y - a!.y);
      }
      expect(total - chords).toBeLessThan(0.3 / 12 + PRINTED_FT);
      expect(table.pinEveryFt).toBeGreaterThan(3);
    }
    expect(plan.tables.find((t) => t.edge === 'left-line')!.pinEveryFt).toBeNull();
  });

  it('are printed in metres for a metric job', () => {
    const { plan } = guidesOf(CASES[0]!, {}, 'metric');
    expect(plan.tables[0]!.marks.every((m) => /^\d+\.\d\d[05] m$/.test(m.along.text))).toBe(true);
  });
});

describe('guide strings', () => {
  it.each(CASES)('keep half the machine and 12 in from the middle of their pass: %o', (pattern) => {
    for (const system of ['feet-inches', 'metric'] as const) {
      const { plan, field, strokes } = guidesOf(pattern, {}, system);
      expect(plan.strings.length).toBeGreaterThan(2);
      for (const string of plan.strings) {
        const zero = (edge: EdgeName) => plan.tables.find((t) => t.edge === edge)!;
        const end = (s: typeof string.from) =>
          place(field, s.edge, readText(zero(s.edge).zeroFromHome.text), readText(s.along.text));
        const own = strokes.filter(
          (s) =>
            string.patches.includes(s.patch) &&
            Math.abs(
              across(s.line[0]!, string.bearingDeg) - across(string.middle, string.bearingDeg),
            ) < 0.01,
        );
        expect(own.length).toBeGreaterThan(0);
        for (const at of [end(string.from), end(string.to)]) {
          const off = across(at, string.bearingDeg) - across(string.middle, string.bearingDeg);
          expect(Math.sign(off)).toBe(string.side === 'right' ? 1 : -1);
          // The machine is 62 in wide; 1/4 in for the printed figures of zero and polygon.
          expect(Math.abs(off)).toBeGreaterThan((62 / 2 + 12 - 0.25) / 12);
          expect(Math.abs(off)).toBeLessThan((62 / 2 + 12 + 0.75) / 12);
        }
      }
    }
  });

  it('bring every band edge within the tolerance, by counting passes from lane to lane', () => {
    for (const pattern of CASES) {
      for (const toleranceIn of [4, 6, 12]) {
        const { plan } = guidesOf(pattern, { toleranceIn });
        const family = plan.families[0]!;
        for (const edge of family.edges) {
          const passes = family.strung.map((lane) => {
            const from = family.lanes[lane]!.offsetFt;
            return Math.round((Math.abs(edge.offsetFt - from) - SWATH / 2) / SWATH);
          });
          const least = Math.min(...passes);
          const drift = 0.25 * least + 1.96 * Math.sqrt(1 + least);
          expect(drift).toBeLessThanOrEqual(toleranceIn);
          expect(edge.driftIn).toBeCloseTo(drift, 6);
        }
      }
    }
  });

  it('serve each of two crossing mowings, and leave curves out by name', () => {
    const field = fieldWith();
    const one = compose({ values: { bearing: 45 } }).strokes.filter((s) => s.band);
    const other = compose({ values: { bearing: -45 } }).strokes.filter((s) => s.band);
    const curve: Stroke = {
      ...one[0]!,
      band: 99,
      group: 2,
      line: [
        { x: -50, y: 200 },
        { x: 0, y: 220 },
        { x: 50, y: 200 },
      ],
    };
    const strokes = [...one, ...other.map((s) => ({ ...s, group: 1 })), curve];
    const input = { field, wide: machines().wide, system: 'feet-inches', spec: DEFAULT_GUIDES };
    const plan = must(planGuides({ ...input, system: 'feet-inches', design: { strokes } }));
    expect(plan.families.map((f) => [f.letter, Math.round(f.bearingDeg)])).toEqual([
      ['A', 45],
      ['B', 135],
    ]);
    const alone = must(planGuides({ ...input, system: 'feet-inches', design: { strokes: one } }));
    expect(plan.families[0]!.strung).toEqual(alone.families[0]!.strung);
    expect(new Set(plan.strings.map((s) => s.family))).toEqual(new Set(['A', 'B']));
    expect(plan.notes.join()).toContain('1 band is not straight');
    const names = plan.tables.flatMap((t) => t.marks.map((m) => m.name));
    expect(names.some((n) => /^A\d+-\d+$/.test(n)) && names.some((n) => /^B\d+-\d+$/.test(n))).toBe(
      true,
    );
  });

  it('are none on request, with the running distances still there', () => {
    const { plan } = guidesOf(CASES[0]!, { strings: 'none' });
    expect(plan.strings).toEqual([]);
    expect(plan.worstDriftIn).toBeNull();
    expect(plan.tables.length).toBe(4);
  });

  it('are none with a warning where a strung pass itself strays too far', () => {
    const design = compose({});
    const spec = { ...DEFAULT_GUIDES, toleranceIn: 1.5 };
    const made = planGuides({
      field: fieldWith(),
      design,
      wide: machines().wide,
      system: 'feet-inches',
      spec,
    });
    expect(made.problems.map((p) => [p.code, p.severity])).toEqual([
      ['guide-tolerance', 'warning'],
    ]);
  });
});
