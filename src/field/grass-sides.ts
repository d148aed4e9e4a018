/** The outfield's edge as named sides: the track side, the two foul lines, the skin's arc. */
import { invariant } from '../base/result';
import { findSurface } from './find-surface';
import type { Field } from './model';
import { angleDifference, vectorAngle } from '../geometry/angle';
import {
  pathFlatten,
  pathSignedArea,
  segmentAt,
  segmentLength,
  type Path,
  type PathSegment,
} from '../geometry/arc';
import { pointDistance, pointSubtract, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';

export type SideName = 'track' | 'skin' | 'left-line' | 'right-line';

export interface GrassSide {
  readonly name: SideName;
  /** True edge, grass on its left. */
  readonly path: Path;
  readonly line: Polyline;
}

/** A turn sharper than this (50°) is a corner: no mower follows it in one lap. */
const CORNER = (50 * Math.PI) / 180;
/** How far from a foul line or the arc a segment's middle may lie and still be on it. */
const ON_LINE = 1;

/** Sides of the outfield grass's outer edge, counter-clockwise. */
export function grassSides(field: Field): GrassSide[] {
  const { boundary } = findSurface(field.surfaces, 'outfield-grass');
  const outer = [...boundary].sort(
    (a, b) => Math.abs(pathSignedArea(b)) - Math.abs(pathSignedArea(a)),
  )[0];
  invariant(outer, 'a surface has a boundary');
  return splitSides(field, outer).map((path) => ({
    name: segmentName(field, path[0]!),
    path,
    line: pathFlatten(path, false),
  }));
}

/** Heading of a segment at its start or its end. */
function heading(s: PathSegment, at: 'start' | 'end'): number {
  if (s.kind === 'line') return vectorAngle(pointSubtract(s.to, s.from));
  const angle = s.startAngle + (at === 'start' ? 0 : s.sweep);
  return angle + (Math.sign(s.sweep) * Math.PI) / 2;
}

function splitSides(field: Field, outer: Path): Path[] {
  const segments = outer.filter((s) => segmentLength(s) > 0);
  const isCorner = segments.map((s, i) => {
    const before = segments[(i + segments.length - 1) % segments.length]!;
    const turn = Math.abs(angleDifference(heading(s, 'start'), heading(before, 'end')));
    return turn > CORNER || segmentName(field, s) !== segmentName(field, before);
  });
  const first = isCorner.indexOf(true);
  if (first < 0) return [segments];
  const sides: PathSegment[][] = [];
  for (let k = 0; k < segments.length; k++) {
    const i = (first + k) % segments.length;
    if (isCorner[i]) sides.push([]);
    sides[sides.length - 1]!.push(segments[i]!);
  }
  return sides;
}

function segmentName(field: Field, s: PathSegment): SideName {
  const points = [0, 0.5, 1].map((t) => segmentAt(s, t));
  const all = (on: (p: Point) => boolean) => points.every(on);
  const skin = field.spec.skinRadiusFt;
  if (all((p) => Math.abs(pointDistance(p, field.skinArcCentre) - skin) < ON_LINE)) return 'skin';
  if (all((p) => Math.abs(p.x - p.y) < ON_LINE)) return 'right-line';
  if (all((p) => Math.abs(p.x + p.y) < ON_LINE)) return 'left-line';
  return 'track';
}
