import { describe, expect, test } from 'vitest';
import { GROUP } from '../../src/design/model';
import { drumAndWindow } from '../design/grass';
import { judge, paintRings, paintSwath, windowOf } from '../design/raster';
import { layOut, layShare, type Over } from './lay-out';

const drum = drumAndWindow();

describe('swaths on a raster', () => {
  test.each<[string, Over]>([
    ['slanted bands, five-gang', { values: { bearing: 33 }, wide: 'five-gang-reel' }],
    ['a shape on quiet ground', { graphic: drum }],
  ])('%s: covered, with the wanted lay, reels over grass', (_, over) => {
    const { design, field, layout, widths } = layOut(over);
    const w = windowOf(-245, 60, 245, 400, 0.8);
    const rows = judge(design, layout.swaths, w, widths, 7);
    for (const row of rows) {
      if (row.tool === 'wide') expect(row.covered, row.id).toBeGreaterThanOrEqual(0.995);
    }
    expect(layShare(rows)).toBeGreaterThanOrEqual(0.98);
    const grass = new Uint8Array(w.nx * w.ny);
    paintRings(w, field.outfieldGrass, (cell) => (grass[cell] = 1));
    let beyond = 0;
    for (const s of layout.swaths) {
      // Drawn in by the 2 in that reels may stand over the edge, nothing may be off the grass.
      paintSwath(w, s.line, s.widthFt - 4 / 12, (cell) => (beyond += grass[cell] ? 0 : 1));
    }
    expect(beyond).toBe(0);
  });

  test.each<[string, Over]>([
    ['quiet ground', { graphic: drum }],
    ['counter-change', { graphic: drum, design: { ground: { kind: 'counter-change' } } }],
    ['across the bands', { graphic: drum, design: { ground: { kind: 'square' } } }],
    ['half an inch of tolerance', { graphic: drum, toleranceIn: 0.5 }],
  ])('the narrow tool covers the shape and stays inside it: %s', (_, over) => {
    const { design, layout, widths } = layOut(over);
    const w = windowOf(-24, 240, 24, 280, 0.1);
    const inside = new Uint8Array(w.nx * w.ny);
    const cut = new Uint8Array(w.nx * w.ny);
    paintRings(w, drum, (cell) => (inside[cell] = 1));
    const narrow = layout.swaths.filter((s) => s.role === 'narrow');
    for (const s of narrow) paintSwath(w, s.line, s.widthFt, (cell) => (cut[cell] = 1));
    const tally = { area: 0, covered: 0, outside: 0 };
    const far = ((over.toleranceIn ?? 3) / 12 + w.h) ** 2;
    inside.forEach((v, cell) => {
      if (v) {
        tally.area++;
        tally.covered += cut[cell]!;
      } else if (cut[cell] && farFrom(inside, w, cell, far)) tally.outside++;
    });
    expect(tally.covered / tally.area).toBeGreaterThanOrEqual(0.95);
    expect(tally.covered / tally.area).toBeCloseTo(layout.graphicCovered, 2);
    expect(tally.outside / tally.area).toBeLessThanOrEqual(0.01);
    expect(layout.laidOutside).toBeLessThanOrEqual(0.01);
    const listed = layout.uncovered.reduce((n, u) => n + u.areaSqFt, 0);
    expect(listed / (tally.area * w.h * w.h)).toBeCloseTo(1 - layout.graphicCovered, 2);
    const rows = judge(design, narrow, w, widths).filter((r) => r.tool === 'narrow');
    expect(layShare(rows)).toBeGreaterThanOrEqual(0.98);
  });
});

/** No cell of the shape within √`far` feet. */
function farFrom(
  inside: Uint8Array,
  w: { nx: number; ny: number; h: number },
  cell: number,
  far: number,
): boolean {
  const reach = Math.ceil(Math.sqrt(far) / w.h);
  const [c, r] = [cell % w.nx, Math.floor(cell / w.nx)];
  for (let dr = -reach; dr <= reach; dr++) {
    for (let dc = -reach; dc <= reach; dc++) {
      if ((dr * dr + dc * dc) * w.h * w.h > far) continue;
      const [x, y] = [c + dc, r + dr];
      if (x >= 0 && y >= 0 && x < w.nx && y < w.ny && inside[y * w.nx + x]) return false;
    }
  }
  return true;
}

describe('the body', () => {
  test('stands off the skin and the keep-outs at every point of every swath', () => {
    const keepOuts = [{ id: 'pump', name: 'Pump cover', centre: { x: -70, y: 240 }, radiusFt: 3 }];
    const { layout, pair, field } = layOut({ field: { keepOuts } });
    const skin = field.surfaces.filter((s) => s.kind === 'skin').flatMap((s) => s.region);
    const w = windowOf(-245, 60, 245, 400, 0.25);
    const blocked = new Uint8Array(w.nx * w.ny);
    paintRings(w, skin, (cell) => (blocked[cell] = 1));
    paintRings(w, field.keepOuts[0]!.region, (cell) => (blocked[cell] = 1));
    const body = pair.wide;
    let hits = 0;
    for (const { line } of layout.swaths.filter((s) => s.role === 'wide')) {
      for (let i = 1; i < line.length; i++) {
        const [a, b] = [line[i - 1]!, line[i]!];
        const length = Math.hypot(b.x - a.x, b.y - a.y);
        const u = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
        const along = (p: typeof a, s: number) => ({ x: p.x + u.x * s, y: p.y + u.y * s });
        const reach = [along(a, -body.rearOverhangIn / 12), along(b, body.frontOverhangIn / 12)];
        paintSwath(w, reach, body.bodyWidthIn / 12 - 2 * w.h, (cell) => (hits += blocked[cell]!));
      }
    }
    expect(hits).toBe(0);
    expect(layout.blocked.map((b) => b.patch)).toContain('edge-right-line');
  });
});

describe('the list', () => {
  test('names every swath once, in phases and groups that relay the earlier ones', () => {
    const { layout, design } = layOut({ graphic: drum });
    const ids = new Set(layout.swaths.map((s) => s.id));
    expect(ids.size).toBe(layout.swaths.length);
    const tools = new Map(design.patches.map((p) => [p.id, p.tool]));
    for (const s of layout.swaths) {
      expect(tools.get(s.patch)).toBe(s.role);
      const phases = s.role === 'wide' ? s.group < GROUP.foulLines : s.group === 0;
      const wide = phases ? 'background' : 'border';
      const narrow = phases ? 'graphic' : 'edge';
      expect(s.phase).toBe(s.role === 'wide' ? wide : narrow);
    }
  });

  test('bands are driven with their lay, fill with the graphic', () => {
    const { layout, design } = layOut({ graphic: drum, values: { bearing: 20 } });
    const lays = new Map(design.patches.map((p) => [p.id, p.lays[0]!]));
    for (const s of layout.swaths) {
      const lay = lays.get(s.patch)!;
      if (!('bearingDeg' in lay)) continue;
      const [a, b] = [s.line[0]!, s.line[s.line.length - 1]!];
      const bearing = (Math.atan2(b.x - a.x, b.y - a.y) * 180) / Math.PI;
      expect(Math.cos(((bearing - lay.bearingDeg) * Math.PI) / 180)).toBeCloseTo(1, 9);
    }
  });

  test('outline stretches are driven with the graphic, never against it', () => {
    const { layout } = layOut({ graphic: drum });
    const outline = layout.swaths.filter((s) => s.phase === 'edge');
    expect(outline.length).toBeGreaterThan(3);
    for (const { line } of outline) expect(line[line.length - 1]!.y).toBeLessThan(line[0]!.y);
  });
});
