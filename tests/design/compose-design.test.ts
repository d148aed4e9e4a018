import { describe, expect, test } from 'vitest';
import { composeDesign } from '../../src/design/compose-design';
import type { Design } from '../../src/design/model';
import { regionArea, regionIntersect, regionSubtract } from '../../src/geometry/region';
import { compose, composeInput, drumAndWindow, placeWord } from './grass';

const drum = drumAndWindow();
const codes = (over: Parameters<typeof composeInput>[0]) => {
  const result = composeDesign(composeInput(over));
  return { ok: result.ok, codes: result.problems.map((p) => p.code), problems: result.problems };
};
const lay = (design: Design, id: string) => {
  const first = design.patches.find((p) => p.id === id)!.lays[0]!;
  return 'bearingDeg' in first ? first.bearingDeg : first.guides;
};
const union = (design: Design, layers: readonly number[]) =>
  design.patches.filter((p) => layers.includes(p.layer)).flatMap((p) => p.region);

describe('ground behind a graphic', () => {
  test('quiet ground lies opposite to the graphic, whichever way that is', () => {
    for (const [wish, graphic, quiet] of [
      ['toward', 180, 0],
      ['away', 0, 180],
    ] as const) {
      const design = compose({ graphic: drum, design: { graphicLay: wish } });
      expect(lay(design, 'graphic')).toBe(graphic);
      expect(lay(design, 'quiet')).toBe(quiet);
    }
  });

  test('the graphic stands on quiet ground with at least the margin all round', () => {
    for (const shape of ['offset', 'box', 'oval'] as const) {
      const design = compose({
        graphic: drum,
        design: { ground: { kind: 'quiet', shape, marginFt: 7 } },
      });
      const still = [
        ...design.patches.find((p) => p.id === 'quiet')!.region,
        ...union(design, [3, 4]),
      ];
      // Every point 6.9 ft from the drum's outline, by its own formula: outside the oval outline.
      for (let i = 0; i < 72; i++) {
        const t = (2 * Math.PI * i) / 72;
        const [a, b] = [20, 16];
        const normal = Math.hypot(Math.cos(t) / a, Math.sin(t) / b);
        const p = {
          x: a * Math.cos(t) + (6.9 * Math.cos(t)) / a / normal,
          y: 260 + b * Math.sin(t) + (6.9 * Math.sin(t)) / b / normal,
        };
        const odd = still.filter((ring) => crosses(ring, p)).length % 2;
        expect(odd, `${shape} ${i}`).toBe(1);
      }
    }
  });

  test('counter-change turns every band round inside the graphic', () => {
    const design = compose({ graphic: drum, design: { ground: { kind: 'counter-change' } } });
    const parts = design.patches.filter((p) => p.kind === 'graphic');
    expect(parts.length).toBeGreaterThan(2);
    for (const part of parts) {
      const band = lay(design, part.id.replace('graphic-', ''));
      expect(Math.abs((lay(design, part.id) as number) - (band as number))).toBe(180);
    }
    expect(union(design, [1])).toEqual([]);
  });

  test('square ground lays the graphic across the bands', () => {
    const over = { graphic: drum, values: { bearing: 60 } } as const;
    const toward = compose({ ...over, design: { ground: { kind: 'square' } } });
    expect(lay(toward, 'graphic')).toBe(150);
    const away = compose({ ...over, design: { ground: { kind: 'square' }, graphicLay: 'away' } });
    expect(lay(away, 'graphic')).toBe(330);
  });

  test('plain ground is done, with a warning that names the bands on which it vanishes', () => {
    const result = composeDesign(
      composeInput({ graphic: drum, design: { ground: { kind: 'plain' } } }),
    );
    expect(result.ok).toBe(true);
    const warning = result.problems.find((p) => p.code === 'graphic-vanishes')!;
    expect(warning.severity).toBe('warning');
    expect(warning.where).toMatch(/^bands \d+/);
    // Bands of 14.75 ft under a 40-ft drum centred on a band edge: about half of it.
    const share = Number(/(\d+) %/.exec(warning.what)![1]);
    expect(share).toBeGreaterThan(40);
    expect(share).toBeLessThan(60);
  });

  test('the graphic patches are the graphic, no more and no less', () => {
    for (const kind of ['quiet', 'counter-change', 'plain', 'square'] as const) {
      const ground =
        kind === 'quiet' ? ({ kind, shape: 'offset', marginFt: 8 } as const) : ({ kind } as const);
      const design = compose({ graphic: drum, design: { ground } });
      const whole = union(design, [3, 4]);
      expect(regionArea(regionSubtract(drum, whole))).toBeLessThan(0.05);
      const rest = design.patches.filter((p) => p.layer < 3);
      for (const p of rest) expect(regionArea(regionIntersect(p.region, drum))).toBeLessThan(0.01);
    }
  });
});

function crosses(ring: readonly { x: number; y: number }[], p: { x: number; y: number }): boolean {
  let odd = false;
  ring.forEach((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x))
      odd = !odd;
  });
  return odd;
}

describe('what cannot be composed', () => {
  test.each([
    ['parameter-value', { values: { bearing: Number.NaN } }],
    ['band-passes', { values: { band: { passes: 0 } } }],
    ['parameter-value', { values: { band: { passes: 2.5 } } }],
    ['parameter-value', { values: { shift: Number.POSITIVE_INFINITY } }],
    ['parameter-unknown', { values: { bering: 30 } }],
    ['band-narrow', { values: { band: { feet: 4 } } }],
    ['edge-laps', { design: { edgeLaps: -1 } }],
    ['edge-laps', { design: { edgeLaps: 7 } }],
    [
      'quiet-margin',
      { graphic: drum, design: { ground: { kind: 'quiet', shape: 'box', marginFt: -3 } } },
    ],
    [
      'quiet-margin',
      { graphic: drum, design: { ground: { kind: 'quiet', shape: 'box', marginFt: 9999 } } },
    ],
    ['tolerance', { graphic: drum, toleranceIn: -1 }],
    ['art-over-skin', { graphic: drumAndWindow({ x: 0, y: 120 }) }],
    ['art-off-grass', { graphic: drumAndWindow({ x: 900, y: 900 }) }],
    ['art-larger-than-grass', { graphic: placeWord('Lanterns', 'pacifico', 560) }],
    ['art-on-edge-laps', { graphic: drumAndWindow({ x: 0, y: 364 }) }],
  ] as const)('%s', (code, over) => {
    const result = codes(over);
    expect(result.ok).toBe(false);
    expect(result.codes).toEqual([code]);
    const [p] = result.problems;
    expect(p!.where).not.toBe('');
    expect(p!.fix.length).toBeGreaterThan(10);
  });

  test('art over the skin is told so, and how far', () => {
    const { problems } = codes({ graphic: drumAndWindow({ x: 0, y: 158 }) });
    // The grass starts 95 ft from the plate's front at 60.5 ft: y 155.5; the drum's low end is at 142.
    expect(problems[0]!.what).toMatch(/over the skin/);
    expect(Number(/up to (\d+) ft/.exec(problems[0]!.what)![1])).toBeGreaterThanOrEqual(13);
  });

  test('grass that hardly shows a pattern, and lines crossed at an angle, are told', () => {
    const turf = (grass: 'cool-season' | 'bermuda' | 'other', heightIn: number) => ({
      field: { turf: { grass, heightIn } },
    });
    expect(codes(turf('cool-season', 1.5)).codes).toEqual([]);
    // From memory, extension ranges: bluegrass and ryegrass outfields are cut at 1.25 to 2.5 in.
    expect(codes(turf('cool-season', 1)).codes).toEqual(['pattern-faint']);
    expect(codes(turf('bermuda', 0.75)).codes).toEqual(['pattern-faint']);
    expect(codes(turf('other', 0.5)).codes).toEqual([]);
    const bare = { design: { edgeLaps: 0 } };
    expect(codes({ ...bare, values: { bearing: 20 } }).codes).toContain('lines-wavy');
    expect(codes({ ...bare, values: { bearing: 45 } }).codes).not.toContain('lines-wavy');
    const bermuda = { ...turf('bermuda', 0.75), ...bare, values: { bearing: 20 } };
    expect(codes(bermuda).codes).not.toContain('lines-wavy');
  });

  test('no laps is done with a warning', () => {
    const { ok, codes: all } = codes({ design: { edgeLaps: 0 } });
    expect(ok).toBe(true);
    expect(all).toEqual(['lines-wavy', 'no-edge-laps']);
  });
});

describe('composing', () => {
  test('equal input gives equal output, and the input is not written to', () => {
    const input = composeInput({ graphic: drum });
    const before = JSON.stringify(input);
    const first = JSON.stringify(composeDesign(input));
    expect(JSON.stringify(input)).toBe(before);
    expect(JSON.stringify(composeDesign(input))).toBe(first);
  });

  test('a mirrored shape gives a mirrored partition of the quiet ground', () => {
    const lop = drumAndWindow({ x: 70, y: 250 });
    const mirrored = lop.map((ring) => ring.map((p) => ({ x: -p.x, y: p.y })).reverse());
    const area = (graphic: typeof lop, id: string) =>
      compose({ graphic }).patches.find((p) => p.id === id)!.areaSqFt;
    for (const id of ['quiet', 'quiet-lap-1']) {
      expect(area(mirrored, id)).toBeCloseTo(area(lop, id), 0);
    }
  });
});
