/** Drops what no eye can see, so that the file stays small: the picture is the same. */
import type { Box } from '../geometry/box';
import { boxOfPoints } from '../geometry/box';
import type { Point } from '../geometry/point';
import { polylineSimplify, ringSimplify } from '../geometry/polyline';
import type { Mark } from './marks';
import { boxesMeet } from './place-labels';

/** A tenth of a point is 0.035 mm: under the width of the thinnest line. */
const INVISIBLE = 0.1;

/** The marks with needless points left out, and those wholly outside their clip dropped. */
export function tidyMarks(marks: readonly Mark[], clip?: Box): Mark[] {
  return marks.flatMap((mark): Mark[] => {
    const box = clip ? markBox(mark) : null;
    if (clip && box && !boxesMeet(box, clip)) return [];
    return tidyOne(mark);
  });
}

function tidyOne(mark: Mark): Mark[] {
  if (mark.kind === 'clip') {
    const marks = tidyMarks(mark.marks, mark.clip);
    return marks.length === 0 ? [] : [{ ...mark, marks }];
  }
  if (mark.kind === 'polyline') {
    const simplify = mark.closed ? ringSimplify : polylineSimplify;
    return [{ ...mark, points: simplify(mark.points, INVISIBLE) }];
  }
  if (mark.kind !== 'fill') return [mark];
  const rings = mark.rings.map((ring) => ringSimplify(ring, INVISIBLE));
  const seen = rings.filter((ring) => ring.length > 2);
  return seen.length === 0 ? [] : [{ ...mark, rings: seen }];
}

/** Box of a mark with half its stroke; null for text, whose width needs the type. */
function markBox(mark: Mark): Box | null {
  if (mark.kind === 'circle') return aroundPoints([mark.centre], mark.radius + 1);
  if (mark.kind === 'polyline') return aroundPoints(mark.points, mark.stroke.width);
  return mark.kind === 'fill' ? aroundPoints(mark.rings.flat(), 1) : null;
}

function aroundPoints(points: readonly Point[], by: number): Box | null {
  const box = boxOfPoints(points);
  return (
    box && { minX: box.minX - by, maxX: box.maxX + by, minY: box.minY - by, maxY: box.maxY + by }
  );
}
