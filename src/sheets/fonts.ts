/**
 * Type on the sheets: three fonts handed in as TTF bytes, and their measures. Numbers are set in
 * tabular figures without kerning, so that a text's width is the sum of its characters' widths and a
 * reading occupies the same place in every row.
 */
import fontkit from '@pdf-lib/fontkit';
import type { FontName } from './marks';

/** TTF files: body, bold (numbers and words that must be seen), headings. */
export type SheetFonts = Readonly<Record<FontName, Uint8Array>>;

export const FONT_NAMES: readonly FontName[] = ['regular', 'bold', 'heading'];

/** OpenType features used both when measuring and when writing. */
export const FONT_FEATURES = { tnum: true, kern: false, liga: false, calt: false, clig: false };

export interface FontMetrics {
  /** Width of the text in paper points. */
  readonly width: (text: string, size: number, font: FontName) => number;
  /** Whether the font has a glyph for the code point. */
  readonly has: (font: FontName, codePoint: number) => boolean;
}

/** Reads the three fonts. Throws when a file is not a font: the shell ships them. */
export function readFontMetrics(fonts: SheetFonts): FontMetrics {
  const one = {
    regular: readOne(fonts.regular),
    bold: readOne(fonts.bold),
    heading: readOne(fonts.heading),
  };
  return {
    width: (text, size, font) => size * one[font].ems(text),
    has: (font, codePoint) => one[font].has(codePoint),
  };
}

function readOne(bytes: Uint8Array) {
  const font = fontkit.create(bytes);
  const known = new Set(font.characterSet);
  const widths = new Map<string, number>();
  const measure = (character: string): number => {
    const found = widths.get(character);
    if (found !== undefined) return found;
    const { glyphs } = font.layout(character, FONT_FEATURES);
    const ems = glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / font.unitsPerEm;
    widths.set(character, ems);
    return ems;
  };
  return {
    has: (codePoint: number) => known.has(codePoint),
    ems: (text: string) => [...text].reduce((sum, character) => sum + measure(character), 0),
  };
}
