/** Whether two swaths lie side by side. */
import type { Feet } from '../base/units';
import { polylineAt, polylineLength, polylineNearest, type Polyline } from '../geometry/polyline';

export interface Laid {
  readonly line: Polyline;
  readonly widthFt: Feet;
}

/** Swaths overlap by some inches, so that the middle of one is less than a cut from its neighbour. */
export function areBeside(a: Laid, b: Laid): boolean {
  return isNear(a, b) || isNear(b, a);
}

function isNear(a: Laid, b: Laid): boolean {
  const middle = polylineAt(b.line, polylineLength(b.line) / 2);
  return polylineNearest(a.line, middle).distance < a.widthFt;
}
