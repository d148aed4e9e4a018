import { describe, expect, it } from 'vitest';
// jsts is a port of the JTS topology suite: the outside library our surfaces are held against.
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { seededRandom } from '../../src/base/random';
import type { Field, SurfaceKind } from '../../src/field/model';
import { fencePath, shapeFence } from '../../src/field/shape-fence';
import { groundPath } from '../../src/field/lay-surfaces';
import { pathLength, pathSignedArea, segmentDistance } from '../../src/geometry/arc';
import type { Point } from '../../src/geometry/point';
import { regionArea, regionContains, type Region } from '../../src/geometry/region';
import { FLATTEN } from '../../src/geometry/tolerance';
import { circleFence, fieldWith, LOPSIDED } from './fixtures';

interface Geometry {
  getArea(): number;
}
const factory = new GeometryFactory() as unknown as {
  createLinearRing(coordinates: unknown[]): unknown;
  createPolygon(shell: unknown, holes: unknown[]): Geometry;
};
const jstsRing = (ring: readonly Point[]): unknown =>
  factory.createLinearRing([...ring, ring[0]!].map((p) => new Coordinate(p.x, p.y)));
const jstsPolygon = (region: Region): Geometry =>
  factory.createPolygon(jstsRing(region[0]!), region.slice(1).map(jstsRing));
const overlay = (a: Geometry, b: Geometry, code: number): Geometry =>
  OverlayOp.overlayOp(a, b, code) as Geometry;

const FIELDS: readonly (readonly [string, Field])[] = [
  ['the book field', fieldWith()],
  ['a straight fence', fieldWith({ fenceShape: 'straight' })],
  ['a circle fence', fieldWith({ fence: circleFence(330, 400) })],
  ['a lopsided park', fieldWith({ fence: LOPSIDED, foulWidthFt: 35, trackWidthFt: 10 })],
  ['a lopsided straight park', fieldWith({ fence: LOPSIDED, fenceShape: 'straight' })],
  ['no track, narrow foul ground', fieldWith({ trackWidthFt: 0, foulWidthFt: 15 })],
];

describe.each(FIELDS)('surfaces of %s', (_, field) => {
  it('add up to the ground, as polygons and as true arcs', () => {
    const polygons = field.surfaces.reduce((sum, s) => sum + regionArea(s.region), 0);
    expect(Math.abs(polygons - regionArea(field.ground))).toBeLessThan(0.01);
    const fence = fencePath(shapeFence(field.spec.fence, field.spec.fenceShape));
    const arcs = field.surfaces.reduce((sum, s) => sum + s.areaSqFt, 0);
    expect(Math.abs(arcs - pathSignedArea(groundPath(field.spec, fence)))).toBeLessThan(0.001);
    for (const s of field.surfaces) {
      const edge = s.boundary.reduce((sum, path) => sum + pathLength(path), 0);
      expect(Math.abs(regionArea(s.region) - s.areaSqFt)).toBeLessThan(edge * FLATTEN);
    }
  });

  it('are the same to an outside geometry library, without overlap', () => {
    const shapes = field.surfaces.map((s) => jstsPolygon(s.region));
    shapes.forEach((shape, i) => {
      expect(Math.abs(shape.getArea() - regionArea(field.surfaces[i]!.region))).toBeLessThan(1e-6);
      for (const other of shapes.slice(i + 1)) {
        expect(overlay(shape, other, OverlayOp.INTERSECTION).getArea()).toBeLessThan(0.001);
      }
    });
    const union = shapes.reduce((a, b) => overlay(a, b, OverlayOp.UNION));
    const ground = jstsPolygon(field.ground);
    expect(overlay(union, ground, OverlayOp.SYMDIFFERENCE).getArea()).toBeLessThan(0.01);
  });

  it('hold each point of the ground exactly once', () => {
    const random = seededRandom(90);
    for (let i = 0; i < 1200; i++) {
      const p = { x: (random.uniform() - 0.5) * 620, y: random.uniform() * 500 - 80 };
      const holders = field.surfaces.filter((s) => regionContains(s.region, p)).length;
      const wanted = regionContains(field.ground, p) ? 1 : 0;
      if (holders !== wanted) expect([p, nearEdge(field, p)]).toEqual([p, true]);
    }
  });
});

function nearEdge(field: Field, p: Point): boolean {
  return field.surfaces.some((s) =>
    s.boundary.some((path) => path.some((piece) => segmentDistance(piece, p) < 0.01)),
  );
}

/** The 330/400 field by its definition alone: discs, half planes and the fence's circle. */
function surfaceByDefinition(p: Point): SurfaceKind | null {
  const alongRight = (p.x + p.y) / Math.SQRT2;
  const alongLeft = (p.y - p.x) / Math.SQRT2;
  const fair = alongRight > 0 && alongLeft > 0;
  // Through (±330/√2, 330/√2) and (0, 400): centre 153.3110 up, radius 246.6890.
  const pole = 330 / Math.SQRT2;
  const centreY = (400 * 400 - 330 * 330) / (2 * (400 - pole));
  const fromFence = 400 - centreY - Math.hypot(p.x, p.y - centreY);
  if (Math.hypot(p.x, p.y) < 13) return 'home-circle';
  if (Math.hypot(p.x, p.y - 59) < 9) return 'mound';
  const inset = (v: number): boolean => v > 3 && v < 87;
  const corner = 90 / Math.SQRT2;
  const cut = [
    [corner, corner],
    [0, 2 * corner],
    [-corner, corner],
  ].some(([x, y]) => Math.hypot(p.x - x!, p.y - y!) < 13);
  if (inset(alongRight) && inset(alongLeft) && !cut) return 'infield-grass';
  const skin = Math.hypot(p.x, p.y - 60.5) < 95;
  if (skin && alongRight > -3 && alongLeft > -3) return 'skin';
  if (!fair) return 'foul-grass';
  if (fromFence < 0) return null;
  return fromFence < 15 ? 'warning-track' : 'outfield-grass';
}

it('puts every point on the surface that the definitions give it', () => {
  const field = fieldWith({ fence: circleFence(330, 400) });
  const random = seededRandom(7);
  const seen = new Set<string>();
  for (let i = 0; i < 4000; i++) {
    const close = i % 2 === 0 ? 0.4 : 1;
    const p = { x: (random.uniform() - 0.5) * 600 * close, y: random.uniform() * 470 * close - 30 };
    const found = field.surfaces.find((s) => regionContains(s.region, p))?.kind ?? null;
    if (found === null && Math.abs(p.x) > p.y) continue; // beyond the side fences
    if (found !== surfaceByDefinition(p) && nearEdge(field, p)) continue;
    expect([p, found]).toEqual([p, surfaceByDefinition(p)]);
    if (found) seen.add(found);
  }
  expect(seen.size).toBe(7);
});
