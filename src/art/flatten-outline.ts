/** Curves to polygons. The subdivision is paper's, whose flatness test bounds the chord error. */
import paper from 'paper/dist/paper-core';
import type { Point } from '../geometry/point';
import type { Outline, Subpath } from './outline';

let ready = false;

/** paper wants a project before any path; the paths made here stay out of it (`insert: false`). */
function setUp(): void {
  if (ready) return;
  paper.setup(new paper.Size(1, 1));
  ready = true;
}

/**
 * The subpath as points, `chord` the largest distance between curve and polygon (same unit). The
 * closing point is not repeated unless the subpath itself ends there.
 */
export function flattenSubpath(sub: Subpath, chord: number): Point[] {
  if (sub.curves.length === 0) return [sub.start];
  if (sub.curves.every((c) => c.kind === 'line')) {
    return [sub.start, ...sub.curves.map((c) => c.to)];
  }
  setUp();
  const path = new paper.Path({ segments: segmentsOf(sub), closed: false, insert: false });
  path.flatten(chord);
  return path.segments.map((s) => ({ x: s.point.x, y: s.point.y }));
}

/** paper's segments: a point with its two handles, relative to the point. */
function segmentsOf(sub: Subpath): paper.Segment[] {
  const segments = [new paper.Segment(new paper.Point(sub.start.x, sub.start.y))];
  for (const curve of sub.curves) {
    const segment = new paper.Segment(new paper.Point(curve.to.x, curve.to.y));
    if (curve.kind === 'cubic') {
      const before = segments[segments.length - 1]!;
      before.handleOut = new paper.Point(curve.c1.x, curve.c1.y).subtract(before.point);
      segment.handleIn = new paper.Point(curve.c2.x, curve.c2.y).subtract(segment.point);
    }
    segments.push(segment);
  }
  return segments;
}

/** Every subpath as a ring, for filling: open ones are closed straight, as both SVG and fonts do. */
export const flattenFill = (outline: Outline, chord: number): Point[][] =>
  outline.map((sub) => flattenSubpath(sub, chord)).filter((ring) => ring.length > 2);
