import { describe, expect, it } from 'vitest';
import type { Design, Patch } from '../../src/design/model';
import { layoutProblems } from '../../src/mowing/layout-problems';
import type { SwathLayout } from '../../src/mowing/swath-model';

const patch = (id: string, kind: Patch['kind']): Patch => ({
  id,
  kind,
  layer: 0,
  tool: 'wide',
  lays: [],
  region: [],
  areaSqFt: 0,
});
const design: Design = {
  patches: [patch('band-01', 'background'), patch('edge-skin', 'border')],
  guides: {},
  graphic: [],
  quiet: [],
  strokes: [],
};
const fine: SwathLayout = {
  swaths: [],
  blocked: [],
  uncovered: [],
  graphicCovered: 0.95,
  laidOutside: 0.01,
};
const codes = (layout: Partial<SwathLayout>) =>
  layoutProblems({ ...fine, ...layout }, design).map((p) => p.code);

describe('what the layout leaves undone', () => {
  it('is nothing at the limits', () => {
    expect(codes({})).toEqual([]);
    expect(codes({ blocked: [{ patch: 'band-01', lostFt: 0.5 }] })).toEqual([]);
  });

  it('is said beyond them, with the places', () => {
    const uncovered = [{ at: { x: 0, y: 250 }, areaSqFt: 4, place: 'the tail of the L' }];
    const said = layoutProblems({ ...fine, graphicCovered: 0.9, uncovered }, design);
    expect(said.map((p) => p.code)).toEqual(['graphic-uncovered']);
    expect(said[0]!.what).toContain('90.0 %');
    expect(said[0]!.what).toContain('the tail of the L');
    expect(codes({ laidOutside: 0.011 })).toEqual(['laid-outside']);
  });

  it('counts bands cut short by the body, but not edge laps, which overlap', () => {
    expect(codes({ blocked: [{ patch: 'band-01', lostFt: 3 }] })).toEqual(['pass-trimmed']);
    expect(codes({ blocked: [{ patch: 'edge-skin', lostFt: 3 }] })).toEqual([]);
  });
});
