import { describe, expect, it } from 'vitest';
// jsts is a port of the JTS topology suite: the outside library that our booleans are held against.
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import { seededRandom } from '../../src/base/random';
import type { Point } from '../../src/geometry/point';
import { ringSignedArea } from '../../src/geometry/polyline';
import {
  clipLines,
  regionArea,
  regionContains,
  regionFrom,
  regionIntersect,
  regionOffset,
  regionParts,
  regionSubtract,
  regionUnion,
  regionXor,
} from '../../src/geometry/region';
import { SLIVER_AREA } from '../../src/geometry/tolerance';

interface Geometry {
  getArea(): number;
  getNumGeometries(): number;
}
const factory = new GeometryFactory();
const jstsPolygon = (ring: readonly Point[]): Geometry =>
  factory.createPolygon([...ring, ring[0]!].map((p) => new Coordinate(p.x, p.y))) as Geometry;

function star(random: ReturnType<typeof seededRandom>, x: number, y: number, n: number): Point[] {
  return Array.from({ length: n }, (_, i) => {
    const r = 20 + 30 * random.uniform();
    const a = (2 * Math.PI * i) / n;
    return { x: x + r * Math.cos(a), y: y + r * Math.sin(a) };
  });
}

describe('regions against an outside library', () => {
  it('agrees on union, intersection, difference and offset areas', () => {
    const random = seededRandom(20270417);
    for (let i = 0; i < 40; i++) {
      const a = star(random, 200, 300, 24);
      const b = star(random, 200 + 40 * random.uniform(), 300 + 40 * random.uniform(), 24);
      const ja = jstsPolygon(a);
      const jb = jstsPolygon(b);
      const overlay = (code: number): number =>
        (OverlayOp.overlayOp(ja, jb, code) as Geometry).getArea();
      for (const [ours, code] of [
        [regionUnion([a], [b]), OverlayOp.UNION],
        [regionIntersect([a], [b]), OverlayOp.INTERSECTION],
        [regionSubtract([a], [b]), OverlayOp.DIFFERENCE],
        [regionXor([a], [b]), OverlayOp.SYMDIFFERENCE],
      ] as const) {
        const parts = (OverlayOp.overlayOp(ja, jb, code) as Geometry).getNumGeometries();
        // Pieces under SLIVER_AREA are dropped on purpose; the rest is the 1e-6 ft grid.
        const bound = 0.001 + SLIVER_AREA * parts;
        expect(Math.abs(regionArea(ours) - overlay(code))).toBeLessThan(bound);
      }
      const grown = (BufferOp.bufferOp(ja, 3, 32) as Geometry).getArea();
      expect(Math.abs(regionArea(regionOffset([a], 3)) / grown - 1)).toBeLessThan(0.002);
    }
  });

  it('sets outer rings counter-clockwise and holes clockwise', () => {
    const box = (x: number, y: number, s: number): Point[] => [
      { x, y },
      { x, y: y + s },
      { x: x + s, y: y + s },
      { x: x + s, y },
    ];
    const region = regionFrom([box(0, 0, 10), box(2, 2, 3), box(20, 0, 4)]);
    expect(region.map((ring) => Math.round(ringSignedArea(ring))).sort((a, b) => a - b)).toEqual([
      -9, 16, 100,
    ]);
    expect(regionParts(region).map((part) => Math.round(regionArea(part)))).toEqual([91, 16]);
    expect(regionContains(region, { x: 3, y: 3 })).toBe(false);
    expect(regionContains(region, { x: 1, y: 1 })).toBe(true);
  });

  it('keeps the direction of clipped lines', () => {
    const box = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ];
    for (const [from, to] of [
      [-5, 15],
      [15, -5],
    ] as const) {
      const pieces = clipLines(
        [
          [
            { x: from, y: 4 },
            { x: to, y: 4 },
          ],
        ],
        [box],
      );
      expect(pieces).toHaveLength(1);
      const [piece] = pieces;
      expect(Math.sign(piece!.at(-1)!.x - piece![0]!.x)).toBe(Math.sign(to - from));
    }
  });
});
