/** Words against a renderer that lays out the same font files itself. */
import { existsSync, readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { artFrame } from '../../src/art/art-frame';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { loadArtwork } from '../../src/art/load-artwork';
import { artworkBox } from '../../src/art/place-artwork';
import { textToOutline } from '../../src/art/text-to-outline';
import {
  affineApply,
  affineCompose,
  affineScale,
  affineTranslate,
} from '../../src/geometry/affine';
import { boxCentre, boxHeight, boxOfPoints, boxWidth } from '../../src/geometry/box';
import {
  regionArea,
  regionEdgeDistance,
  regionParts,
  type Region,
} from '../../src/geometry/region';
import { assetsWith, fontBytes, fontPath } from './support/assets';
import { coverageSum, overlapShare, regionAsSvg, renderCoverage } from './support/raster';

const WORD = 'Lanterns';
const PAGE = { width: 1200, height: 400 };
const IDS = FONT_CATALOGUE.map((f) => f.id);

function outline(text: string, id: string): Region {
  const result = textToOutline(text, id, fontBytes(id));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.region;
}

describe('the catalogue', () => {
  it.each(FONT_CATALOGUE)('$id is installed under an open licence', (font) => {
    expect(existsSync(`node_modules/${font.package}/${font.file}`)).toBe(true);
    // The font's own licence entry in its name table, plain Latin text in two-byte units.
    const bytes = readFileSync(`node_modules/${font.package}/${font.file}`);
    const text = bytes.toString('latin1').replaceAll('\0', '');
    expect(text).toContain('SIL Open Font License, Version 1.1');
    expect(font.licence).toBe('OFL-1.1');
  });

  it('has no id twice', () => expect(new Set(IDS).size).toBe(IDS.length));
});

describe('a word in a font', () => {
  it.each(IDS)('%s covers what a renderer paints', (id) => {
    const name = FONT_CATALOGUE.find((f) => f.id === id)!.name;
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE.width}" height="${PAGE.height}"><text x="60" y="260" font-family="${name}" font-size="220">${WORD}</text></svg>`;
    const fonts = { fontFiles: [fontPath(id)], loadSystemFonts: false };
    const theirs = new Resvg(text, { font: fonts }).getBBox()!;
    const region = outline(WORD, id);
    const box = artworkBox({ region });
    expect(boxHeight(box) / boxWidth(box)).toBeCloseTo(theirs.height / theirs.width, 3);
    const k = boxWidth(box) / theirs.width;
    const centre = boxCentre(box);
    const toArt = affineCompose(
      affineCompose(affineTranslate(centre.x, centre.y), affineScale(k, -k)),
      affineTranslate(-theirs.x - theirs.width / 2, -theirs.y - theirs.height / 2),
    );
    const painted = renderCoverage(text, 900, [fontPath(id)]);
    const ours = renderCoverage(regionAsSvg(region, toArt, PAGE), 900);
    expect(Math.abs(coverageSum(ours) / coverageSum(painted) - 1)).toBeLessThan(0.005);
    expect(overlapShare(painted, ours)).toBeGreaterThan(0.985);
  });

  it('joins the letters of a connected script into one piece', () => {
    expect(regionParts(outline('lantern', 'pacifico'))).toHaveLength(1);
    expect(regionParts(outline('HHH', 'alfa-slab-one'))).toHaveLength(3);
  });

  it('kerns: AV stands closer than its two letters side by side', () => {
    const height = (text: string): number => {
      const box = artworkBox({ region: outline(text, 'oleo-script') });
      return boxWidth(box) / boxHeight(box);
    };
    expect(height('AVAVAV')).toBeLessThan(height('AAAVVV'));
  });

  it('stacks lines and centres them', () => {
    const box = artworkBox({ region: outline('HH\nHH', 'graduate') });
    const parts = regionParts(outline('HHHH\nHH', 'graduate'));
    expect(boxHeight(box)).toBeGreaterThan(boxWidth(box));
    const middles = parts.map((part) => boxCentre(artworkBox({ region: part })).x);
    expect(middles.reduce((a, b) => a + b, 0) / 6).toBeCloseTo(0, 1);
  });

  it("stays within 0.02 ft of the font's own curves at 180 ft wide", () => {
    const font = create(fontBytes('pacifico')) as Font;
    const commands = font.layout('o').glyphs[0]!.path.commands;
    const ends = commands.filter((c) => c.args.length > 0);
    const points = ends.flatMap((c) =>
      c.args.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: c.args[i + 1]! }] : [])),
    );
    const frame = artFrame(boxOfPoints(points)!, false);
    const region = outline('o', 'pacifico');
    const ftPerUnit = 180 / boxWidth(artworkBox({ region }));
    let worst = 0;
    ends.forEach((command, i) => {
      if (command.command !== 'quadraticCurveTo') return;
      const [cx, cy, x, y] = command.args as [number, number, number, number];
      const [fx, fy] = ends[i - 1]!.args.slice(-2) as [number, number];
      for (let t = 0; t <= 1; t += 0.05) {
        const mix = (a: number, b: number, c: number): number =>
          (1 - t) ** 2 * a + 2 * t * (1 - t) * b + t * t * c;
        const at = affineApply(frame, { x: mix(fx, cx, x), y: mix(fy, cy, y) });
        worst = Math.max(worst, regionEdgeDistance(region, at) * ftPerUnit);
      }
    });
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(0.02);
  });
});

describe('words that cannot be drawn', () => {
  const codes = (text: string, id: string, bytes = fontBytes(id)): string[] =>
    textToOutline(text, id, bytes).problems.map((p) => p.code);

  it.each(['', '   ', '\n\n', '\u00a0'])('blank text %j', (text) => {
    expect(codes(text, 'pacifico')).toEqual(['text-empty']);
  });

  it('names each character without a glyph', () => {
    const result = textToOutline('Go 灯 \u{1F3EE} team', 'graduate', fontBytes('graduate'));
    expect(result.ok).toBe(false);
    expect(result.problems[0]).toMatchObject({ code: 'glyph-missing', where: 'font graduate' });
    expect(result.problems[0]!.what).toContain('"灯" (U+706F), "\u{1F3EE}" (U+1F3EE)');
  });

  it('refuses a text that is too long', () => {
    expect(codes('x'.repeat(61), 'pacifico')).toEqual(['text-too-long']);
  });

  it('names a font that is missing and lists what there is', () => {
    const assets = assetsWith(['pacifico', 'graduate']);
    const result = loadArtwork({ kind: 'text', text: 'A', font: 'cursive-nine' }, assets);
    expect(result.problems[0]).toMatchObject({ code: 'font-missing', where: 'font cursive-nine' });
    expect(result.problems[0]!.fix).toContain('graduate, pacifico');
    const inherited = loadArtwork({ kind: 'text', text: 'A', font: 'constructor' }, assets);
    expect(inherited.problems[0]!.code).toBe('font-missing');
  });

  it('says so when bytes are not a font, or half a font, and never throws', () => {
    expect(codes('A', 'own', new TextEncoder().encode('not a font'))).toEqual(['font-unreadable']);
    expect(codes('A', 'own', new Uint8Array())).toEqual(['font-unreadable']);
    const whole = fontBytes('graduate');
    for (const share of [0.01, 0.1, 0.3, 0.6, 0.9]) {
      const half = whole.slice(0, Math.floor(whole.length * share));
      const result = textToOutline('Lanterns', 'own', half);
      if (!result.ok)
        expect(result.problems[0]!.code).toMatch(/font-unreadable|glyph-missing|text-blank/);
    }
  });
});

describe('loading', () => {
  it('gives equal outlines for equal input', () => {
    const assets = assetsWith(['kaushan-script']);
    const source = { kind: 'text', text: WORD, font: 'kaushan-script' } as const;
    expect(loadArtwork(source, assets)).toEqual(loadArtwork(source, assets));
    const { region } = (loadArtwork(source, assets) as { value: { region: Region } }).value;
    expect(regionArea(region)).toBeGreaterThan(0);
  });
});
