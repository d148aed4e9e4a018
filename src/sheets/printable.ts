/** Characters that the fonts lack. They would print as an empty box without a word. */
import type { FontMetrics } from './fonts';
import type { Mark, Sheet, TextMark } from './marks';

/** Every text mark of a sheet, also inside clipped drawings. */
export const textMarks = (marks: readonly Mark[]): TextMark[] =>
  marks.flatMap((mark) =>
    mark.kind === 'text' ? [mark] : mark.kind === 'clip' ? textMarks(mark.marks) : [],
  );

/** Code points without a glyph, in ascending order, each once. */
export function unprintable(sheets: readonly Sheet[], metrics: FontMetrics): number[] {
  const missing = new Set<number>();
  for (const text of sheets.flatMap((sheet) => textMarks(sheet.marks))) {
    for (const character of text.text) {
      const code = character.codePointAt(0)!;
      if (!metrics.has(text.font, code)) missing.add(code);
    }
  }
  return [...missing].sort((a, b) => a - b);
}

/** The sheet with `?` in place of every character that its font lacks. */
export function replaceUnprintable(sheet: Sheet, metrics: FontMetrics): Sheet {
  const safe = (mark: TextMark): TextMark => ({
    ...mark,
    text: [...mark.text].map((c) => (metrics.has(mark.font, c.codePointAt(0)!) ? c : '?')).join(''),
  });
  return { ...sheet, marks: sheet.marks.map((mark) => (mark.kind === 'text' ? safe(mark) : mark)) };
}
