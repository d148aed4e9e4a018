/** The inner edge of the warning track: the fence moved in by the track's width. */
import { arcBetween, lineSegment, type Path } from '../geometry/arc';
import {
  pointAlong,
  pointSubtract,
  vectorDot,
  vectorLength,
  vectorUnit,
  type Point,
} from '../geometry/point';
import type { Polyline, Ring } from '../geometry/polyline';
import { clipLines, lineBuffer, type Region } from '../geometry/region';
import { FLATTEN, SAME_POINT } from '../geometry/tolerance';
import { alongToCircle, FOUL_DIRECTION, FOUL_OUTWARD, foulPoint, type Side } from './foul-lines';
import { fencePath, type FenceShape } from './shape-fence';

/**
 * Right foul line to left foul line, `width` feet inside the fence, which is thought to run on past
 * the poles; null when the track leaves no single edge. `inside`: fair ground out to the fence.
 */
export function insetFence(fence: FenceShape, width: number, inside: Region): Path | null {
  if (width === 0) return fencePath(fence);
  return fence.kind === 'circle' ? insetCircle(fence, width) : insetLine(fence.line, width, inside);
}

function insetCircle(fence: Extract<FenceShape, { kind: 'circle' }>, width: number): Path | null {
  const { centre } = fence.arc;
  const radius = fence.arc.radius - width;
  const right = alongToCircle('right', centre, radius);
  const left = alongToCircle('left', centre, radius);
  if (right === null || left === null || vectorLength(centre) >= radius) return null;
  return [arcBetween(centre, foulPoint('right', right), foulPoint('left', left), 1)];
}

function insetLine(line: Polyline, width: number, inside: Region): Path | null {
  const band = lineBuffer(runOn(line, 2 * width + 1), width, 'butt', 'round', FLATTEN);
  const edges = band.flatMap((ring) => clipLines([openOutside(ring)], inside));
  const edge = edges.length === 1 ? edges[0]! : null;
  if (!edge || edge.length < 2) return null;
  const ordered =
    offFoul(edge[0]!, 'right') < offFoul(edge[0]!, 'left') ? edge : [...edge].reverse();
  return joinFoulLines(ordered);
}

/** The line carried on straight past both ends. */
function runOn(line: Polyline, by: number): Point[] {
  const n = line.length;
  const back = vectorUnit(pointSubtract(line[0]!, line[1]!)) ?? { x: 0, y: 0 };
  const ahead = vectorUnit(pointSubtract(line[n - 1]!, line[n - 2]!)) ?? { x: 0, y: 0 };
  return [pointAlong(line[0]!, back, by), ...line, pointAlong(line[n - 1]!, ahead, by)];
}

/** The ring opened at its point deepest in right-hand foul ground, so that no inner edge is split. */
function openOutside(ring: Ring): Point[] {
  let start = 0;
  ring.forEach((p, i) => {
    if (vectorDot(p, FOUL_OUTWARD.right) > vectorDot(ring[start]!, FOUL_OUTWARD.right)) start = i;
  });
  return [...ring.slice(start), ...ring.slice(0, start), ring[start]!];
}

const offFoul = (p: Point, side: Side): number => Math.abs(vectorDot(p, FOUL_OUTWARD[side]));

/** Ends put exactly on the foul lines; null when the edge does not reach from one to the other. */
function joinFoulLines(edge: Polyline): Path | null {
  const first = edge[0]!;
  const last = edge[edge.length - 1]!;
  if (offFoul(first, 'right') > SAME_POINT || offFoul(last, 'left') > SAME_POINT) return null;
  const points = [
    foulPoint('right', vectorDot(first, FOUL_DIRECTION.right)),
    ...edge.slice(1, -1),
    foulPoint('left', vectorDot(last, FOUL_DIRECTION.left)),
  ];
  return points.slice(1).map((to, i) => lineSegment(points[i]!, to));
}
