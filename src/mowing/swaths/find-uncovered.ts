/** What the narrow tool leaves of the graphic, and what it lays outside it. */
import { inches, type Feet } from '../../base/units';
import { placeInWords } from '../../field/place-in-words';
import type { Point } from '../../geometry/point';
import {
  lineBuffer,
  regionArea,
  regionBox,
  regionFrom,
  regionOffset,
  regionParts,
  regionSubtract,
  type Region,
} from '../../geometry/region';
import type { Uncovered } from '../model';
import type { Swath } from '../swath-model';

/** Smaller leftovers (square feet) are listed together: slivers along the outline. */
const LISTED_FROM = 0.25;

export interface GraphicCover {
  readonly uncovered: readonly Uncovered[];
  readonly graphicCovered: number;
  readonly laidOutside: number;
}

/** Exact areas from the swept rectangles of the narrow swaths against the graphic's outline. */
export function findUncovered(
  graphic: Region,
  swaths: readonly Swath[],
  toleranceIn: number,
): GraphicCover {
  const area = regionArea(graphic);
  if (area === 0) return { uncovered: [], graphicCovered: 1, laidOutside: 0 };
  const narrow = swaths.filter((s) => s.role === 'narrow');
  const swept = sweepRegion(narrow);
  const left = regionSubtract(graphic, swept);
  const reach = regionOffset(graphic, inches(toleranceIn));
  return {
    uncovered: listLeftovers(left),
    graphicCovered: 1 - regionArea(left) / area,
    laidOutside: regionArea(regionSubtract(swept, reach)) / area,
  };
}

/** Everything under the swaths, a rectangle per piece of line. */
const sweepRegion = (swaths: readonly Swath[]): Region =>
  regionFrom(
    swaths.flatMap((s) => lineBuffer(s.line, s.widthFt / 2, 'butt')),
    'non-zero',
  );

function listLeftovers(left: Region): Uncovered[] {
  const parts = regionParts(left).map((region) => ({ region, areaSqFt: regionArea(region) }));
  const large = parts.filter((p) => p.areaSqFt >= LISTED_FROM);
  const small = parts.filter((p) => p.areaSqFt < LISTED_FROM);
  const listed = large
    .sort((a, b) => b.areaSqFt - a.areaSqFt)
    .map(({ region, areaSqFt }) => {
      const at = middleOf(region);
      return { at, areaSqFt, place: placeInWords(at) };
    });
  if (small.length === 0) return listed;
  const areaSqFt = small.reduce((n, p) => n + p.areaSqFt, 0);
  const at = middleOf(small.flatMap((p) => p.region));
  const place = `${small.length} slivers along the outline, each under ${LISTED_FROM} sq ft`;
  return [...listed, { at, areaSqFt, place }];
}

function middleOf(region: Region): Point {
  const box = regionBox(region)!;
  const half = (a: Feet, b: Feet) => (a + b) / 2;
  return { x: half(box.minX, box.maxX), y: half(box.minY, box.maxY) };
}
