/** The edges of the outfield grass as a tape is laid along them, each from its zero. */
import type { Feet } from '../base/units';
import { grassSides, type GrassSide } from '../field/grass-sides';
import type { Field } from '../field/model';
import {
  pathLength,
  pathReverse,
  segmentAt,
  segmentEnd,
  segmentLength,
  segmentStart,
  type ArcSegment,
  type LineSegment,
  type Path,
  type PathSegment,
} from '../geometry/arc';
import { angleNormalise, unitFromBearing } from '../geometry/angle';
import {
  pointDistance,
  pointSubtract,
  vectorCross,
  vectorDot,
  type Point,
} from '../geometry/point';
import { SAME_POINT, SINGULAR } from '../geometry/tolerance';
import type { EdgeName } from './model';

export interface GrassEdge {
  readonly name: EdgeName;
  /** From the zero to the other end. */
  readonly path: Path;
  readonly lengthFt: Feet;
}

/** Where a straight line meets an edge of the grass. */
export interface EdgeCrossing {
  readonly edge: EdgeName;
  readonly alongFt: Feet;
  readonly at: Point;
}

const ORDER: readonly EdgeName[] = ['track', 'left-line', 'right-line', 'skin'];
/** Sides run counter-clockwise round the grass; these are taped the other way. */
const TURNED: ReadonlySet<EdgeName> = new Set(['track', 'right-line']);

/**
 * Track side and skin from the left foul line to the right one; each foul line from the track side
 * toward home.
 */
export function grassEdges(field: Field): GrassEdge[] {
  const sides = startAtTrack(grassSides(field));
  return ORDER.flatMap((name) => {
    const path = sides.filter((side) => side.name === name).flatMap((side) => side.path);
    if (path.length === 0) return [];
    const taped = TURNED.has(name) ? pathReverse(path) : path;
    return [{ name, path: taped, lengthFt: pathLength(taped) }];
  });
}

/** The same sides, begun where the track's first one follows another side. */
function startAtTrack(sides: readonly GrassSide[]): GrassSide[] {
  const at = sides.findIndex(
    (side, i) =>
      side.name === 'track' && sides[(i + sides.length - 1) % sides.length]!.name !== 'track',
  );
  return at < 0 ? [...sides] : [...sides.slice(at), ...sides.slice(0, at)];
}

export const edgeStart = (edge: GrassEdge): Point => segmentStart(edge.path[0]!);
export const edgeEnd = (edge: GrassEdge): Point => segmentEnd(edge.path[edge.path.length - 1]!);

/** The point at a distance along the edge from its zero, held to its ends. */
export function edgePoint(edge: GrassEdge, alongFt: Feet): Point {
  let left = Math.max(0, alongFt);
  for (const segment of edge.path) {
    const length = segmentLength(segment);
    if (left <= length && length > 0) return segmentAt(segment, left / length);
    left -= length;
  }
  return edgeEnd(edge);
}

/** Every place where the line through `on` with that bearing meets the edges, edge by edge. */
export function crossEdges(
  edges: readonly GrassEdge[],
  on: Point,
  bearingDeg: number,
): EdgeCrossing[] {
  const along = unitFromBearing(bearingDeg);
  return edges.flatMap((edge) => {
    const found: EdgeCrossing[] = [];
    let before = 0;
    for (const segment of edge.path) {
      const length = segmentLength(segment);
      for (const share of sharesMet(segment, on, along)) {
        const crossing = {
          edge: edge.name,
          alongFt: before + share * length,
          at: segmentAt(segment, share),
        };
        if (!found.some((f) => pointDistance(f.at, crossing.at) < SAME_POINT)) found.push(crossing);
      }
      before += length;
    }
    return found.sort((a, b) => a.alongFt - b.alongFt);
  });
}

/** Where on a segment, 0 to 1, the line through `on` along the unit vector `along` meets it. */
const sharesMet = (segment: PathSegment, on: Point, along: Point): number[] =>
  segment.kind === 'line' ? lineShares(segment, on, along) : arcShares(segment, on, along);

function lineShares({ from, to }: LineSegment, on: Point, along: Point): number[] {
  const d = pointSubtract(to, from);
  const turn = vectorCross(d, along);
  if (Math.abs(turn) < SINGULAR) return [];
  const share = vectorCross(pointSubtract(on, from), along) / turn;
  return share >= 0 && share <= 1 ? [share] : [];
}

function arcShares(arc: ArcSegment, on: Point, along: Point): number[] {
  const to = pointSubtract(on, arc.centre);
  const foot = vectorDot(to, along);
  const off2 = vectorDot(to, to) - foot * foot;
  const half2 = arc.radius * arc.radius - off2;
  if (half2 < 0) return [];
  return [-1, 1].flatMap((sign) => {
    const t = -foot + sign * Math.sqrt(half2);
    const angle = Math.atan2(to.y + t * along.y, to.x + t * along.x);
    const turned = angleNormalise(Math.sign(arc.sweep) * (angle - arc.startAngle));
    const share = turned / Math.abs(arc.sweep);
    return share <= 1 ? [share] : [];
  });
}
