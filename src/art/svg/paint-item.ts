/** What a drawing paints, in the order in which it does: shapes in root units, y down. */
import { affineCompose, affineDeterminant, type Affine } from '../../geometry/affine';
import { boxGrow, boxOfPoints, type Box } from '../../geometry/box';
import type { Point } from '../../geometry/point';
import { outlineBox, outlineMap, type Outline } from '../outline';
import { largestStretch, type Pen } from './stroke';
import { overlap } from './viewport';

export interface PaintItem {
  /** In user space; `map` takes it to root units. */
  readonly outline: Outline;
  readonly map: Affine;
  readonly brush: Brush;
  readonly tone: 'dark' | 'white';
  /** Viewports round the shape, as corners in root units; what lies outside is not drawn. */
  readonly clips: readonly (readonly Point[])[];
  readonly subject: string;
  readonly line: number;
}

export type Brush =
  | { readonly kind: 'fill'; readonly rule: 'even-odd' | 'non-zero' }
  | { readonly kind: 'stroke'; readonly pen: Pen };

/** A box in root units that holds the visible part of the item; null when nothing is visible. */
export function itemBox(item: PaintItem): Box | null {
  const box = outlineBox(outlineMap(item.outline, item.map));
  if (!box || !Object.values(box).every(Number.isFinite)) return null;
  const grown =
    item.brush.kind === 'stroke' ? boxGrow(box, strokeReach(item, item.brush.pen)) : box;
  return item.clips.reduce<Box | null>((left, corners) => {
    const clip = boxOfPoints(corners);
    return left && clip ? overlap(left, clip) : null;
  }, grown);
}

const strokeReach = (item: PaintItem, pen: Pen): number =>
  (largestStretch(item.map) * pen.width * Math.SQRT2) / 2;

/** The item's map continued by `frame`; null when it flattens everything onto a line. */
export function itemFrame(item: PaintItem, frame: Affine): Affine | null {
  const map = affineCompose(frame, item.map);
  return Object.values(map).every(Number.isFinite) && affineDeterminant(map) !== 0 ? map : null;
}
