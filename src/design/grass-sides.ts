/** The outfield's edge as named sides: the track side, the two foul lines, the skin's arc. */
import type { Field } from '../field/model';
import { angleDifference, vectorAngle } from '../geometry/angle';
import {
  pathFlatten,
  pathLength,
  pathSignedArea,
  segmentAt,
  segmentEnd,
  segmentLength,
  segmentStart,
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

/** A turn sharper than this (30°) is a corner: no mower follows it in one lap. */
const CORNER = Math.PI / 6;
/** How far from a foul line or the arc a side's middle may lie and still be on it. */
const ON_LINE = 1;

/** Sides of the outfield grass's outer edge, counter-clockwise. */
export function grassSides(field: Field): GrassSide[] {
  const surface = field.surfaces.find((s) => s.kind === 'outfield-grass');
  const outer = [...(surface?.boundary ?? [])].sort(
    (a, b) => Math.abs(pathSignedArea(b)) - Math.abs(pathSignedArea(a)),
  )[0];
  if (!outer) return [];
  return splitAtCorners(outer).map((path) => ({
    name: sideName(field, path),
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

function splitAtCorners(outer: Path): Path[] {
  const segments = outer.filter((s) => segmentLength(s) > 0);
  const isCorner = segments.map((s, i) => {
    const before = segments[(i + segments.length - 1) % segments.length]!;
    return Math.abs(angleDifference(heading(s, 'start'), heading(before, 'end'))) > CORNER;
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

function sideName(field: Field, path: Path): SideName {
  const middle = pathMiddle(path);
  const ends = [segmentStart(path[0]!), segmentEnd(path[path.length - 1]!)];
  const onSkin = (p: Point) =>
    Math.abs(pointDistance(p, field.skinArcCentre) - field.spec.skinRadiusFt) < ON_LINE;
  if (onSkin(middle) && ends.every(onSkin)) return 'skin';
  if (Math.abs(middle.x - middle.y) < ON_LINE) return 'right-line';
  if (Math.abs(middle.x + middle.y) < ON_LINE) return 'left-line';
  return 'track';
}

function pathMiddle(path: Path): Point {
  let left = pathLength(path) / 2;
  for (const s of path) {
    const length = segmentLength(s);
    if (left <= length) return segmentAt(s, left / length);
    left -= length;
  }
  return segmentEnd(path[path.length - 1]!);
}
