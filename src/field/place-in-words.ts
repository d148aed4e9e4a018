/** Places and distances on the field in words that a crew can walk to. */
import { feetToInches } from '../base/units';
import { boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import { regionArea, regionBox, regionParts, type Region } from '../geometry/region';

/** A place, field frame in feet: `212 ft from home, 14 ft left of the line through second base`. */
export function placeInWords(p: Point): string {
  const side = Math.round(Math.abs(p.x));
  const where =
    side === 0
      ? 'on the line through second base'
      : `${side} ft ${p.x < 0 ? 'left' : 'right'} of the line through second base`;
  return `${Math.round(Math.hypot(p.x, p.y))} ft from home, ${where}`;
}

/**
 * What sticks out over an edge: `up to 14 ft over the skin at 149 ft from home, …`. The length is the
 * short side of the deepest part, rounded up (inches below a foot), so that a move by it clears the
 * edge; the place is the middle of that part. `null` for a region without area.
 */
export function overhangInWords(over: Region, onto: string): string | null {
  let deepest: { readonly box: Box; readonly depth: number } | null = null;
  for (const part of regionParts(over)) {
    const box = regionArea(part) > 0 ? regionBox(part) : null;
    const depth = box ? Math.min(boxWidth(box), boxHeight(box)) : 0;
    if (box && depth > (deepest?.depth ?? 0)) deepest = { box, depth };
  }
  if (!deepest) return null;
  return `${upTo(deepest.depth)} ${onto} at ${placeInWords(boxCentre(deepest.box))}`;
}

const upTo = (feet: number): string =>
  feet >= 1 ? `up to ${Math.ceil(feet)} ft` : `up to ${Math.ceil(feetToInches(feet))} in`;
