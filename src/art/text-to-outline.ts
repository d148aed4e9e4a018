/** Words to outlines: glyphs laid out by the font's own kerning and joins, then united. */
import { create, type Font, type Glyph, type PathCommand } from 'fontkit';
import { fail, invariant, problem, succeed, type Result } from '../base/result';
import { affineTranslate } from '../geometry/affine';
import { boxOfPoints } from '../geometry/box';
import { point, type Point } from '../geometry/point';
import { regionFrom, regionUnionAll, type Region } from '../geometry/region';
import { ART_CHORD, artFrame } from './art-frame';
import { flattenFill } from './flatten-outline';
import type { Artwork } from './model';
import {
  cubicTo,
  lineTo,
  outlineMap,
  outlinePoints,
  quadraticTo,
  type Curve,
  type Outline,
  type Subpath,
} from './outline';

/** Longer texts cannot be mown at any size that fits a field, and take minutes to unite. */
export const TEXT_LIMIT = 60;

/**
 * The word as clean outlines in the art frame. `fontBytes` is a TrueType, OpenType or WOFF file.
 * Lines broken by a newline are stacked and centred. Problems: `text-empty`, `text-too-long`,
 * `font-unreadable`, `glyph-missing` (naming every character), `text-blank-outline`.
 */
export function textToOutline(
  text: string,
  fontId: string,
  fontBytes: Uint8Array,
): Result<Artwork> {
  const lines = text.normalize('NFC').split(/\r\n|\r|\n/);
  const refused = checkText(lines);
  if (refused) return refused;
  const font = openFont(fontId, fontBytes);
  if (!font.ok) return font;
  const missing = missingCharacters(font.value, lines.join(''));
  if (missing.length > 0) return failMissing(missing, fontId);
  const glyphs = layOut(font.value, lines);
  if (!glyphs) return failUnreadable(fontId);
  const region = uniteGlyphs(glyphs);
  return region.length > 0 ? succeed({ region }) : failBlank(text, fontId);
}

function checkText(lines: readonly string[]): Result<never> | null {
  const text = lines.join('');
  if (text.trim() === '') {
    return fail(
      problem('text-empty', 'text', 'there is no word to draw', 'type at least one letter'),
    );
  }
  const length = [...text].length;
  if (length <= TEXT_LIMIT) return null;
  return fail(
    problem(
      'text-too-long',
      'text',
      `the text has ${length} characters, the most is ${TEXT_LIMIT}`,
      'use a shorter word',
    ),
  );
}

function openFont(fontId: string, bytes: Uint8Array): Result<Font> {
  try {
    const font = create(bytes);
    if ('layout' in font && font.unitsPerEm > 0) return succeed(font);
  } catch {
    // fontkit throws on bytes that it cannot read; the problem below says so.
  }
  return failUnreadable(fontId);
}

const failUnreadable = (fontId: string): Result<never> =>
  fail(
    problem(
      'font-unreadable',
      `font ${fontId}`,
      'the file is not a font that can be read',
      'give a single TrueType, OpenType or WOFF font file',
    ),
  );

/** Distinct characters without a glyph, in order of appearance. */
function missingCharacters(font: Font, text: string): string[] {
  return [...new Set(text)].filter((c) => !font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0));
}

function failMissing(missing: readonly string[], fontId: string): Result<never> {
  const names = missing.map(characterName).join(', ');
  return fail(
    problem(
      'glyph-missing',
      `font ${fontId}`,
      `the font has no letter for ${names}`,
      'leave these characters out or choose another font',
    ),
  );
}

/** Visible characters in quotes, all with their code, since some cannot be seen. */
function characterName(character: string): string {
  const code = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  return /[\p{L}\p{N}\p{P}\p{S}]/u.test(character) ? `"${character}" (U+${code})` : `U+${code}`;
}

const failBlank = (text: string, fontId: string): Result<never> =>
  fail(
    problem(
      'text-blank-outline',
      `font ${fontId}`,
      `"${text}" has no outline in this font`,
      'type letters that the font draws',
    ),
  );

interface Placed {
  readonly outline: Outline;
  readonly advance: number;
}

/** Every glyph where the font puts it, y up, font units; null when the font breaks on the way. */
function layOut(font: Font, lines: readonly string[]): Outline[] | null {
  try {
    const leading = font.ascent - font.descent + font.lineGap;
    const runs = lines.map((line) => layOutLine(font, line));
    return runs.flatMap((run, i) =>
      run.glyphs.map((g) => outlineMap(g, affineTranslate(-run.width / 2, -i * leading))),
    );
  } catch {
    return null;
  }
}

function layOutLine(
  font: Font,
  line: string,
): { readonly glyphs: readonly Outline[]; readonly width: number } {
  const run = font.layout(line);
  const glyphs: Outline[] = [];
  let x = 0;
  run.glyphs.forEach((glyph, i) => {
    const at = run.positions[i]!;
    const placed = placeGlyph(glyph, x + at.xOffset, at.yOffset, at.xAdvance);
    glyphs.push(placed.outline);
    x += placed.advance;
  });
  return { glyphs, width: x };
}

const placeGlyph = (glyph: Glyph, x: number, y: number, advance: number): Placed => ({
  outline: outlineMap(glyphOutline(glyph.path.commands), affineTranslate(x, y)),
  advance,
});

function glyphOutline(commands: readonly PathCommand[]): Outline {
  const subs: Subpath[] = [];
  let start: Point | null = null;
  let at = point(0, 0);
  let curves: Curve[] = [];
  const finish = (): void => {
    if (start && curves.length > 0) subs.push({ start, curves, closed: true });
    curves = [];
  };
  for (const command of commands) {
    if (command.command === 'closePath') continue;
    const to = argument(command, command.args.length / 2 - 1);
    if (command.command === 'moveTo') {
      finish();
      start = to;
    } else curves.push(glyphCurve(command, at, to));
    at = to;
  }
  finish();
  return subs;
}

function argument(command: PathCommand, index: number): Point {
  const [x, y] = [command.args[2 * index], command.args[2 * index + 1]];
  invariant(x !== undefined && y !== undefined, `${command.command} has its points`);
  return point(x, y);
}

function glyphCurve(command: PathCommand, from: Point, to: Point): Curve {
  if (command.command === 'quadraticCurveTo') return quadraticTo(from, argument(command, 0), to);
  if (command.command === 'bezierCurveTo') {
    return cubicTo(argument(command, 0), argument(command, 1), to);
  }
  return lineTo(to);
}

/** Each glyph by its own winding first, so that a letter's hole can only be filled by a neighbour. */
function uniteGlyphs(glyphs: readonly Outline[]): Region {
  const box = boxOfPoints(glyphs.flatMap(outlinePoints));
  if (!box) return [];
  const frame = artFrame(box, false);
  const regions = glyphs.map((g) =>
    regionFrom(flattenFill(outlineMap(g, frame), ART_CHORD), 'non-zero'),
  );
  return regionUnionAll(regions);
}
