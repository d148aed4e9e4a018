/**
 * The art's own frame: y up, about `ART_SPAN` across its longer side, centred on the origin. All art
 * is brought to this size before it becomes polygons, so that the planar tolerances (which are sizes
 * on the ground) mean the same for a drawing 1 unit wide and for one 100 000 units wide.
 */
import { affineCompose, affineScale, affineTranslate, type Affine } from '../geometry/affine';
import { boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box';

/** Units across the longer side of the art. */
export const ART_SPAN = 1000;

/**
 * Chord error when curves become polygons, in art units: 1/20 000 of the span, so 0.009 ft (0.1 in)
 * on art laid 180 ft wide.
 */
export const ART_CHORD = ART_SPAN / 20_000;

/** The map that brings `box` into the art frame; `flip` for sources whose y runs down. */
export function artFrame(box: Box, flip: boolean): Affine {
  const span = Math.max(boxWidth(box), boxHeight(box));
  const k = span > 0 ? ART_SPAN / span : 1;
  const centre = boxCentre(box);
  return affineCompose(affineScale(k, flip ? -k : k), affineTranslate(-centre.x, -centre.y));
}
