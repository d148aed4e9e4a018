/** Printed codes, read from the picture of the sheet by another program. */
import jsQR from 'jsqr';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { decodeCrewList } from '../../src/exchange/crew-code';
import { codeMark } from '../../src/sheets/code-marks';
import { composePacket } from '../../src/sheets/compose-packet';
import type { FillMark, Mark, Sheet } from '../../src/sheets/marks';
import { textMarks } from '../../src/sheets/printable';
import { planFixture } from './plan-fixture';
import { sheetFonts } from './sheet-fonts';

const ADDRESS = 'https://grounds.fernmoor.example/swathscribe/crew/';
/** Dots of a plain office printer's draft. */
const DPI = 150;

const isFill = (mark: Mark): mark is FillMark => mark.kind === 'fill';

/** What a decoder sees in a square of the sheet at `DPI`, a white spot of radius `spot` in its middle. */
function scan(fill: FillMark, size: number, spot = 0): string | null {
  const points = fill.rings.flat();
  const [x, y] = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))];
  const path = fill.rings.map((r) => `M${r.map((p) => `${p.x} ${p.y}`).join('L')}Z`).join('');
  const box = `${x - 12} ${y - 12} ${size} ${size}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" width="${size}" height="${size}"><path fill="#fff" d="M${x - 12} ${y - 12}h${size}v${size}h${-size}z"/><path fill-rule="evenodd" d="${path}"/><circle cx="${x - 12 + size / 2}" cy="${y - 12 + size / 2}" r="${spot}" fill="#fff"/></svg>`;
  const image = new Resvg(svg, { fitTo: { mode: 'zoom', value: DPI / 72 } }).render();
  const found = jsQR(new Uint8ClampedArray(image.pixels), image.width, image.height);
  return found?.data ?? null;
}

describe('the sheet of codes', () => {
  const fixture = planFixture({});
  const stakes = fixture.stakes!;
  const plan = { ...fixture, project: { ...fixture.project, crewAddress: ADDRESS } };
  const without = composePacket(fixture, sheetFonts());
  const sheets = composePacket(plan, sheetFonts());
  const isCodes = (sheet: Sheet) => sheet.title === 'Codes for the phone';

  it('is there only when the job has an address', () => {
    expect(without.filter(isCodes)).toEqual([]);
    expect(sheets.filter(isCodes)).toHaveLength(1);
    expect(sheets.length).toBe(without.length + 1);
  });

  it('gives codes that a decoder reads back to the address and every round, in order', () => {
    const fills = sheets.filter(isCodes).flatMap((sheet) => sheet.marks.filter(isFill));
    const lists = fills.map((fill) => {
      const text = scan(fill, 172)!;
      expect(text.startsWith(`${ADDRESS}#`)).toBe(true);
      const list = decodeCrewList(text.slice(ADDRESS.length + 1));
      if (!list.ok) throw new Error(list.problems[0]?.code);
      return list.value;
    });
    const set = lists.flatMap((list) => list.stakes.map((s) => s.id));
    expect(set).toEqual(stakes.stakes.map((s) => s.id));
    const labels = sheets.filter(isCodes).flatMap((s) => textMarks(s.marks).map((m) => m.text));
    for (const list of lists) {
      expect(labels.some((label) => label.startsWith(`Round ${list.round}`))).toBe(true);
    }
  });
});

describe('one code', () => {
  const longest = `https://${'a'.repeat(112)}/#${'-_0aZ'.repeat(120)}`;

  it('of the longest address and list is still of half-millimetre modules, and is read', () => {
    const mark = codeMark(longest, 0, 0, 172, 3);
    const xs = mark.rings.flat().map((p) => p.x);
    const steps = [...new Set(xs.map((x) => x.toFixed(6)))].map(Number).sort((a, b) => a - b);
    const module = Math.min(...steps.slice(1).map((x, i) => x - steps[i]!));
    expect((module / 72) * 25.4).toBeGreaterThan(0.5);
    expect(scan(mark, 172)).toBe(longest);
  });

  it('is read with a spot of 3/8 in worn off it', () => {
    expect(scan(codeMark(longest, 0, 0, 172, 3), 172, 13.5)).toBe(longest);
  });
});
