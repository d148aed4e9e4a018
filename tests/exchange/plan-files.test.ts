/** The drawing files read back with other people's readers: a DXF parser and an SVG rasteriser. */
import { Resvg } from '@resvg/resvg-js';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../src/exchange/csv';
import { planDxf } from '../../src/exchange/plan-dxf';
import { planSvg } from '../../src/exchange/plan-svg';
import { planOf, readDemo } from '../contract/plan-of';
import { parseCsv } from '../support/stranger';

describe('drawing files', () => {
  const plan = planOf(readDemo('lantern-emblem.json'));

  it('gives a DXF in feet with every stake, string, swing and the fence', () => {
    const dxf = new DxfParser().parseSync(planDxf(plan))!;
    expect(dxf.header['$INSUNITS']).toBe(2); // 2 is feet: DXF reference, header variables
    const on = (layer: string, type: string) =>
      dxf.entities.filter((e) => e.layer === layer && e.type === type);
    const stakes = plan.stakes!;
    const set = stakes.stakes.filter((s) => s.kind !== 'control');
    expect(on('STAKES', 'POINT')).toHaveLength(set.length);
    expect(on('CONTROLS', 'POINT')).toHaveLength(stakes.controls.length);
    expect(on('STRINGS', 'LWPOLYLINE')).toHaveLength(stakes.strings);
    const arcs = on('SWINGS', 'ARC').length + on('SWINGS', 'CIRCLE').length;
    expect(arcs).toBe(stakes.swings);
    expect(on('FENCE', 'LWPOLYLINE')).toHaveLength(1);
    const texts = on('STAKES', 'TEXT').map((e) => (e as unknown as { text: string }).text);
    expect(texts.sort()).toEqual(set.map((s) => s.id).sort());
  });

  it('gives swing arcs whose ends are at their stakes', () => {
    const dxf = new DxfParser().parseSync(planDxf(plan))!;
    const at = new Map(plan.stakes!.stakes.map((s) => [s.id, s.at]));
    const swings = plan.stakes!.contours.flatMap((c) => c.pieces.filter((p) => p.kind === 'swing'));
    const arcs = dxf.entities.filter(
      (e) => e.type === 'ARC' && e.layer === 'SWINGS',
    ) as unknown as {
      center: { x: number; y: number };
      radius: number;
      startAngle: number;
      endAngle: number;
    }[];
    expect(arcs).toHaveLength(swings.length);
    swings.forEach((swing, i) => {
      const arc = arcs[i]!;
      const end = (angle: number) => ({
        x: arc.center.x + arc.radius * Math.cos(angle),
        y: arc.center.y + arc.radius * Math.sin(angle),
      });
      const ends = [end(arc.startAngle), end(arc.endAngle)];
      const want = [at.get(swing.from)!, at.get(swing.to)!];
      if (swing.sweep === 'cw') want.reverse();
      ends.forEach((p, k) => {
        const off = Math.hypot(p.x - want[k]!.x, p.y - want[k]!.y) * 12;
        expect(off).toBeLessThanOrEqual(0.76); // the step from stake to arc, at most 3/4 in
      });
    });
  });

  it('gives an SVG that another program draws, with the graphic where the plan has it', () => {
    const drawn = new Resvg(planSvg(plan), { fitTo: { mode: 'width', value: 2400 } }).render();
    const pixels = drawn.pixels;
    let dark = 0;
    for (let i = 0; i < pixels.length; i += 4) {
      if (pixels[i] === 0x4b && pixels[i + 1] === 0x7c && pixels[i + 2] === 0x38) dark++;
    }
    const [, , width] = /viewBox="(\S+) (\S+) (\S+)/.exec(planSvg(plan))!.slice(1).map(Number);
    const feetPerPixel = width! / 2400;
    const graphic = plan.design.patches
      .filter((p) => p.tool === 'narrow')
      .reduce((n, p) => n + p.areaSqFt, 0);
    const seen = dark * feetPerPixel * feetPerPixel;
    // Edges, stakes and strings lie over it: most of it must show, and never more than there is.
    expect(seen).toBeGreaterThan(0.5 * graphic);
    expect(seen).toBeLessThan(1.05 * graphic);
  });
});

describe('CSV', () => {
  it('quotes as RFC 4180 says, and reads back', () => {
    const rows = [
      ['a "b"', 'c,d', 'e\r\nf', 1 / 3, null],
      [`127' 3 1/4"`, '', ' spaced ', -0.5, 1e-7],
    ] as const;
    const text = writeCsv(['p', 'q', 'r', 's', 't'], rows);
    expect(text.startsWith('p,q,r,s,t\r\n"a ""b""","c,d","e\r\nf",')).toBe(true);
    const [first, second] = parseCsv(text.replaceAll('\r\nf', '\nf'));
    expect(first!['p']).toBe('a "b"');
    expect(Number(first!['s'])).toBe(1 / 3);
    expect(second!['p']).toBe(`127' 3 1/4"`);
    expect(Number(second!['t'])).toBeCloseTo(1e-7, 12);
  });

  it('refuses a figure that no reader accepts', () => {
    expect(() => writeCsv(['x'], [[NaN]])).toThrow(/NaN/);
  });
});
