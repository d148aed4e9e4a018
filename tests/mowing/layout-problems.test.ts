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
const lost = (patch: string, lostFt: number) => ({ patch, lostFt, at: { x: -120, y: 160 } });
const codes = (layout: Partial<SwathLayout>) =>
  layoutProblems({ ...fine, ...layout }, design).map((p) => p.code);

describe('what the layout leaves undone', () => {
  it('is nothing at the limits', () => {
    expect(codes({})).toEqual([]);
    expect(codes({ blocked: [lost('band-01', 0.5)] })).toEqual([]);
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
    const blocked = [lost('band-01', 2), lost('edge-skin', 9), lost('band-01', 1)];
    const said = layoutProblems({ ...fine, blocked }, design);
    expect(said.map((p) => p.code)).toEqual(['pass-trimmed']);
    expect(said[0]!.what).toContain('3 ft short in all');
    expect(said[0]!.what).toMatch(/: band-01 \(200 ft from home, 120 ft left of the line[^()]*\)$/);
    expect(codes({ blocked: [lost('edge-skin', 3)] })).toEqual([]);
  });
});
