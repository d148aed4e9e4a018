/** Places in words that a crew can walk to. */
import type { Point } from '../geometry/point';

/** A place on the field: `212 ft from home, 14 ft left of the line through second base`. */
export function placeInWords(p: Point): string {
  const side = Math.round(Math.abs(p.x));
  const where =
    side === 0
      ? 'on the line through second base'
      : `${side} ft ${p.x < 0 ? 'left' : 'right'} of the line through second base`;
  return `${Math.round(Math.hypot(p.x, p.y))} ft from home, ${where}`;
}
