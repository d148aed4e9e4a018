/** The direction of a guide line at its point nearest to a place on the grass. */
import Flatbush from 'flatbush';
import { pathFlatten, segmentEnd, segmentStart, type Path } from '../geometry/arc';
import { pointDistance, pointSubtract, vectorUnit, type Point } from '../geometry/point';
import { polylineResample } from '../geometry/polyline';
import { segmentNearest } from '../geometry/segment';
import { FLATTEN, SAME_POINT } from '../geometry/tolerance';

/** Chords are short, so that boxes order them nearly as true distance does. */
const LONGEST_CHORD_FT = 4;
const CANDIDATES = 6;

/** Unit tangent in the guide's own direction; null for a guide without length. */
export function guideTangent(guide: Path): (p: Point) => Point | null {
  const line = polylineResample(flatten(guide), LONGEST_CHORD_FT);
  const chords = line.slice(1).map((to, i) => ({ from: line[i]!, to }));
  if (chords.length === 0) return () => null;
  const index = new Flatbush(chords.length);
  for (const { from, to } of chords) {
    index.add(
      Math.min(from.x, to.x),
      Math.min(from.y, to.y),
      Math.max(from.x, to.x),
      Math.max(from.y, to.y),
    );
  }
  index.finish();
  return (p) => {
    let best = Infinity;
    let tangent: Point | null = null;
    for (const i of index.neighbors(p.x, p.y, CANDIDATES)) {
      const { from, to } = chords[i]!;
      const { distance } = segmentNearest(from, to, p);
      if (distance < best) {
        best = distance;
        tangent = vectorUnit(pointSubtract(to, from));
      }
    }
    return tangent;
  };
}

function flatten(guide: Path): Point[] {
  const open = pathFlatten(guide, false, FLATTEN);
  const first = guide[0];
  const last = guide[guide.length - 1];
  const isClosed =
    first && last && pointDistance(segmentStart(first), segmentEnd(last)) < SAME_POINT;
  return isClosed && open.length > 0 ? [...open.slice(0, -1), open[0]!] : open;
}
