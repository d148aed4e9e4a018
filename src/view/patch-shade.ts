/**
 * How light a patch of the pattern is drawn in a plan: a drawing's convention, which shows the bands
 * wherever they lie. How they look from a seat is the light model's business (`light.ts`).
 */
import { bearingDifference } from '../geometry/angle';
import type { Lay, Patch } from '../design/model';
import { burnedInLay } from './lay';

/** A bearing this near to square on (degrees) counts by its way across, not by its way out. */
const SQUARE_DEG = 0.01;

/**
 * From −1, dark, to 1, light, of the burned-in state. A bearing away from home is light, one toward it
 * dark; square to that, rightward is light. Along curves, a band laid with its lines is light, one
 * against them dark. Crossing lays give the tones between.
 */
export function patchShade(patch: Patch): number {
  const ordered = [...patch.lays].sort((a, b) => a.order - b.order);
  return burnedInLay(ordered.map((lay) => ({ x: laySide(lay), y: 0 }))).x;
}

/** Light (1) or dark (−1) of one lay alone. */
export function laySide(lay: Lay): 1 | -1 {
  if (!('bearingDeg' in lay)) return (lay.way ?? 'out') === 'out' ? 1 : -1;
  const fromAway = bearingDifference(lay.bearingDeg, 0);
  if (Math.abs(fromAway - 90) > SQUARE_DEG) return fromAway < 90 ? 1 : -1;
  return bearingDifference(lay.bearingDeg, 90) < 90 ? 1 : -1;
}
