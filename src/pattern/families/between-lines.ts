/** A band between two lines: its strip, its passes flush with either line and even between, its lay. */
import type { Feet } from '../../base/units';
import { lineSegment, type Path } from '../../geometry/arc';
import { parallelLine } from '../../geometry/parallel-line';
import { pointLerp, type Point } from '../../geometry/point';
import type { Polyline } from '../../geometry/polyline';
import type { GuideBand } from '../guide-band';
import type { Way } from '../model';

/**
 * The band with `left` and `right` as its edges, both directed `out` and with as many points. Where
 * they come nearer than the passes are wide, passes overlap; they never leave the band as long as it
 * is one swath wide.
 */
export function bandBetween(
  index: number,
  left: Polyline,
  right: Polyline,
  passes: number,
  swathFt: Feet,
  way: Way,
): GuideBand {
  const directed = (line: Polyline): Polyline => (way === 'out' ? line : [...line].reverse());
  const lines = passLines(left, right, passes, swathFt).map(directed);
  return {
    index,
    way,
    strip: [[...left, ...[...right].reverse()]],
    lay: { guide: pathOf(directed(blend(left, right, 0.5))) },
    lanes: { kind: 'along', closed: false, lines },
  };
}

function passLines(left: Polyline, right: Polyline, passes: number, swathFt: Feet): Polyline[] {
  if (passes === 1) return [blend(left, right, 0.5)];
  const first = parallelLine(left, -swathFt / 2);
  const last = parallelLine(right, swathFt / 2);
  return Array.from({ length: passes }, (_, i) => blend(first, last, i / (passes - 1)));
}

const blend = (a: Polyline, b: Polyline, share: number): Point[] =>
  a.map((p, i) => pointLerp(p, b[i]!, share));

/** A line as a path of straight pieces. */
export const pathOf = (line: Polyline): Path =>
  line.slice(1).map((p, i) => lineSegment(line[i]!, p));
