/** Where marks lie on the sheet, for tests: boxes that hold all of their ink. */
import type { Box } from '../../src/geometry/box';
import type { FontMetrics } from '../../src/sheets/fonts';
import type { Mark, TextMark } from '../../src/sheets/marks';

/** Ascent and descent of the fonts' figures and letters, in ems (read off their tables: OS/2). */
const ASCENT = 0.74;
const DESCENT = 0.22;

export function textBox(mark: TextMark, metrics: FontMetrics): Box {
  const width = metrics.width(mark.text, mark.size, mark.font);
  const share = mark.align === 'left' ? 0 : mark.align === 'right' ? 1 : 0.5;
  const minX = mark.at.x - share * width;
  return {
    minX,
    maxX: minX + width,
    minY: mark.at.y - ASCENT * mark.size,
    maxY: mark.at.y + DESCENT * mark.size,
  };
}

export function markBox(mark: Mark, metrics: FontMetrics): Box {
  if (mark.kind === 'text') return textBox(mark, metrics);
  if (mark.kind === 'clip') return mark.clip;
  if (mark.kind === 'circle') {
    const r = mark.radius + (mark.stroke?.width ?? 0) / 2;
    const { x, y } = mark.centre;
    return { minX: x - r, maxX: x + r, minY: y - r, maxY: y + r };
  }
  const points = mark.kind === 'fill' ? mark.rings.flat() : mark.points;
  const half = mark.kind === 'fill' ? 0 : mark.stroke.width / 2;
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return {
    minX: Math.min(...xs) - half,
    maxX: Math.max(...xs) + half,
    minY: Math.min(...ys) - half,
    maxY: Math.max(...ys) + half,
  };
}

/** How far two boxes reach into each other; 0 when apart. */
export const overlap = (a: Box, b: Box): number =>
  Math.max(
    0,
    Math.min(
      Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX),
      Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY),
    ),
  );
