import { describe, expect, it } from 'vitest';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { cutFt, findMachines, swathFt } from '../../src/mowing/machines';
import type { MowingSpec } from '../../src/mowing/model';

const SPEC: MowingSpec = {
  wide: 'triplex-reel',
  narrow: 'rotary-roller-21',
  overrides: {},
  gate: { x: 250, y: 180 },
};
const withOwn = (own: MowingSpec['overrides'][string]): MowingSpec => ({
  ...SPEC,
  overrides: { 'triplex-reel': own },
});
const codes = (spec: MowingSpec) => findMachines(spec).problems.map((p) => `${p.code} ${p.where}`);

/**
 * Usual ranges of the classes: cut inches, mowing mph, overlap inches, turn seconds. From memory; no
 * published turn times of turf reels were found.
 */
const CLASSES: Record<string, readonly (readonly [number, number])[]> = {
  'triplex-reel': [
    [59, 72],
    [3, 5],
    [2, 4],
    [6, 12],
  ],
  'rotary-rider-roller-60': [
    [48, 72],
    [3, 6],
    [3, 6],
    [5, 10],
  ],
  'five-gang-reel': [
    [80, 100],
    [4, 7],
    [3, 6],
    [8, 15],
  ],
  'rotary-roller-21': [
    [21, 36],
    [2.5, 4],
    [2, 3],
    [4, 8],
  ],
  'greens-reel-22': [
    [18, 26],
    [2.5, 3.5],
    [1, 2],
    [4, 8],
  ],
  'hand-roller-24': [
    [12, 36],
    [0.5, 1.5],
    [0, 2],
    [2, 5],
  ],
  'push-broom-24': [
    [12, 36],
    [0.5, 1.5],
    [0, 2],
    [2, 5],
  ],
};

describe('the machine catalogue', () => {
  it('keeps every figure inside the usual range of its class', () => {
    expect(MACHINES.map((m) => m.id).sort()).toEqual(Object.keys(CLASSES).sort());
    for (const m of MACHINES) {
      [m.cutWidthIn, m.cuttingMph, m.overlapIn, m.turnSeconds].forEach((value, i) => {
        const [low, high] = CLASSES[m.id]![i]!;
        expect(value, `${m.id} figure ${i}`).toBeGreaterThanOrEqual(low);
        expect(value, `${m.id} figure ${i}`).toBeLessThanOrEqual(high);
      });
    }
  });

  it('gives every figure a source or the word assumption', () => {
    for (const m of MACHINES) {
      for (const key of Object.keys(m)) {
        if (['id', 'name', 'role', 'cutter', 'sources'].includes(key)) continue;
        expect(m.sources[key], `${m.id}.${key}`).toMatch(/assumption|from memory|no source/);
      }
    }
  });

  it('passes its own checks, with the body inside the cut', () => {
    for (const wide of MACHINES.filter((m) => m.role === 'wide')) {
      for (const narrow of MACHINES.filter((m) => m.role === 'narrow')) {
        const found = findMachines({ ...SPEC, wide: wide.id, narrow: narrow.id });
        expect(found).toEqual({ ok: true, value: { wide, narrow, further: [] }, problems: [] });
      }
    }
  });

  it('spaces passes by the cut less the overlap', () => {
    const found = findMachines(withOwn({ cutWidthIn: 60, overlapIn: 6 }));
    expect(found.ok && swathFt(found.value.wide)).toBe(4.5);
    expect(found.ok && cutFt(found.value.wide)).toBe(5);
    expect(found.ok && found.value.wide.sources.overlapIn).toBe('typed in');
  });

  it('refuses unknown machines, roles and figures, all at once and by place', () => {
    expect(codes({ ...SPEC, wide: 'steam-roller', narrow: 'triplex-reel' })).toEqual([
      'machine-unknown mowing.wide',
      'machine-role mowing.narrow',
    ]);
    expect(codes({ ...SPEC, overrides: { nobody: { people: 2 } } })).toEqual([
      'machine-unknown mowing.overrides.nobody',
    ]);
    expect(codes(withOwn({ cutWidthIn: 0, cuttingMph: -1, turnRadiusFt: NaN }))).toEqual([
      'machine-figure mowing.overrides.triplex-reel.cutWidthIn',
      'machine-figure mowing.overrides.triplex-reel.cuttingMph',
      'machine-figure mowing.overrides.triplex-reel.turnRadiusFt',
      'machine-overlap mowing.overrides.triplex-reel.overlapIn',
      'machine-body-wide mowing.overrides.triplex-reel.bodyWidthIn',
    ]);
    expect(codes(withOwn({ turnRadiusFt: -2 }))).toEqual([
      'machine-figure mowing.overrides.triplex-reel.turnRadiusFt',
    ]);
    expect(codes(withOwn({ overlapIn: 20, cutWidthIn: 18, bodyWidthIn: 18 }))).toEqual([
      'machine-overlap mowing.overrides.triplex-reel.overlapIn',
    ]);
  });

  it('warns, and goes on, when the body is wider than the cut', () => {
    const found = findMachines(withOwn({ bodyWidthIn: 70 }));
    expect(found.ok).toBe(true);
    expect(found.problems.map((p) => [p.code, p.severity])).toEqual([
      ['machine-body-wide', 'warning'],
    ]);
  });
});
