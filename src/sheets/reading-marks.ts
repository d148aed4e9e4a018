/** A reading in a table: feet, inches and fraction each in its own place, so that columns scan. */
import type { LengthSystem } from '../base/quantity';
import { inkText, type TextStyle } from './ink';
import type { TextMark } from './marks';

const FEET_INCHES = /^(\d+') (\d+)("| (\d+\/\d+"))$/;

/** Right ends of feet and inches, left end of the fraction, in ems from the left. */
const PLACES = { feet: 2.2, inches: 3.72, fraction: 3.95 } as const;
/** Room that a reading up to 999 ft, or 999 m, takes, in ems. */
export const readingEms = (system: LengthSystem): number => (system === 'metric' ? 5.1 : 5.9);

/**
 * Marks of a printed reading, `x` its left end. The text joined with single blanks is the reading
 * itself. Metric readings, which all have three decimals, end at one place.
 */
export function readingMarks(
  x: number,
  y: number,
  text: string,
  style: TextStyle & { readonly size: number },
  digitWidth: number,
): TextMark[] {
  const { size } = style;
  const right = { ...style, align: 'right' } as const;
  const parts = FEET_INCHES.exec(text);
  if (!parts) return [inkText(x + readingEms('metric') * size, y, text, right)];
  const feet = inkText(x + PLACES.feet * size, y, parts[1]!, right);
  const inchesEnd = x + PLACES.inches * size;
  if (parts[4] === undefined) {
    const left = inchesEnd - digitWidth * size * parts[2]!.length;
    return [feet, inkText(left, y, `${parts[2]!}"`, style)];
  }
  return [
    feet,
    inkText(inchesEnd, y, parts[2]!, right),
    inkText(x + PLACES.fraction * size, y, parts[4], style),
  ];
}
