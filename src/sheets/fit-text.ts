/** Text that must keep inside a width. */
import type { FontMetrics } from './fonts';
import type { FontName } from './marks';

/** Blanks at which a line may end: not between a figure and its unit. */
const BREAK = /(?<!\d)\s+|\s+(?!(?:in|ft|mm|m|min)\b)/;

/** Lines no wider than `width`; a word that is wider alone is cut. */
export function wrapText(
  metrics: FontMetrics,
  text: string,
  size: number,
  font: FontName,
  width: number,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAK).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (metrics.width(longer, size, font) <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = cutText(metrics, word, size, font, width);
    }
  }
  return line === '' ? lines : [...lines, line];
}

/** The text, cut with three dots when it is wider than `width`. */
export function cutText(
  metrics: FontMetrics,
  text: string,
  size: number,
  font: FontName,
  width: number,
): string {
  if (metrics.width(text, size, font) <= width) return text;
  const characters = [...text];
  while (characters.length > 0) {
    characters.pop();
    const shorter = `${characters.join('').trimEnd()}...`;
    if (metrics.width(shorter, size, font) <= width) return shorter;
  }
  return '';
}
