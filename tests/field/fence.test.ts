import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { pathSignedArea, segmentEnd } from '../../src/geometry/arc';
import { vectorBearing } from '../../src/geometry/angle';
import { pointDistance, pointOrientation, type Point } from '../../src/geometry/point';
import { polylineNearest } from '../../src/geometry/polyline';
import { regionContains } from '../../src/geometry/region';
import { fencePosition } from '../../src/field/shape-fence';
import { circleFence, fieldWith, LOPSIDED, surfaceOf } from './fixtures';

const bearing = (p: Point): number => ((vectorBearing(p) + 180) % 360) - 180;

describe('the fence', () => {
  it.each(['smooth', 'straight'] as const)(
    'passes through every point given (%s)',
    (fenceShape) => {
      const field = fieldWith({ fence: LOPSIDED, fenceShape });
      for (const point of LOPSIDED) {
        const gap = polylineNearest(field.fenceLine, fencePosition(point)).distance;
        expect(gap).toBeLessThan(1e-9);
      }
      expect(field.poles.left).toEqual(field.fenceLine[0]);
      expect(bearing(field.poles.left)).toBeCloseTo(-45, 9);
      expect(bearing(field.poles.right)).toBeCloseTo(45, 9);
      if (fenceShape === 'straight') expect(field.fenceLine.length).toBe(LOPSIDED.length);
    },
  );

  it('never bulges beyond its points when smooth', () => {
    const line = fieldWith({ fence: LOPSIDED }).fenceLine;
    const random = seededRandom(3);
    for (let i = 0; i < 500; i++) {
      const p = line[random.integer(line.length)]!;
      const at = bearing(p);
      const next = LOPSIDED.findIndex((f) => f.bearingDeg >= at - 1e-9);
      const ends = [LOPSIDED[Math.max(0, next - 1)]!, LOPSIDED[next]!].map((f) => f.distanceFt);
      const distance = Math.hypot(p.x, p.y);
      expect(distance).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-9);
      expect(distance).toBeLessThanOrEqual(Math.max(...ends) + 1e-9);
    }
  });

  it('bends without a corner when smooth', () => {
    const line = fieldWith({ fence: LOPSIDED }).fenceLine;
    for (let i = 1; i + 1 < line.length; i++) {
      const a = vectorBearing({ x: line[i]!.x - line[i - 1]!.x, y: line[i]!.y - line[i - 1]!.y });
      const b = vectorBearing({ x: line[i + 1]!.x - line[i]!.x, y: line[i + 1]!.y - line[i]!.y });
      expect(Math.abs(((b - a + 540) % 360) - 180)).toBeLessThan(3);
    }
  });

  it.each([
    ['smooth', LOPSIDED, 15],
    ['straight', LOPSIDED, 15],
    ['smooth', circleFence(330, 400), 12],
  ] as const)('has a track of even width (%s)', (fenceShape, fence, trackWidthFt) => {
    const field = fieldWith({ fence, fenceShape, trackWidthFt });
    const track = surfaceOf(field, 'warning-track').region;
    const random = seededRandom(11);
    for (let i = 0; i < 500; i++) {
      const along = (random.uniform() - 0.5) * 80;
      const distance = 250 + random.uniform() * 160;
      const p = fencePosition({ bearingDeg: along, distanceFt: distance });
      const gap = polylineNearest(field.fenceLine, p).distance;
      if (Math.abs(gap - trackWidthFt) < 0.03 || gap < 0.03) continue;
      const fair = regionContains(surfaceOf(field, 'outfield-grass').region, p);
      if (gap < trackWidthFt) expect(fair).toBe(false);
      else expect(regionContains(track, p)).toBe(false);
    }
  });

  it.each(['smooth', 'straight'] as const)(
    'has its track as wide at the pole (%s)',
    (fenceShape) => {
      const field = fieldWith({ fence: LOPSIDED, fenceShape });
      const grass = surfaceOf(field, 'outfield-grass').boundary[0]!;
      const [pole, next] = [field.poles.right, field.fenceLine[field.fenceLine.length - 2]!];
      const corner = segmentEnd(grass[0]!);
      expect(corner.x).toBeCloseTo(corner.y, 9);
      // Square off the fence's last piece, carried on past the pole.
      const off = Math.abs(pointOrientation(pole, next, corner)) / pointDistance(pole, next);
      expect(Math.abs(off - 15)).toBeLessThan(fenceShape === 'straight' ? 0.001 : 0.3);
      expect(off).toBeGreaterThan(14.999);
    },
  );

  it('lets a mirrored fence give the mirrored field', () => {
    const mirrored = [...LOPSIDED].reverse().map((f) => ({ ...f, bearingDeg: -f.bearingDeg }));
    const a = fieldWith({ fence: LOPSIDED });
    const b = fieldWith({ fence: mirrored });
    a.surfaces.forEach((s, i) => {
      expect(Math.abs(b.surfaces[i]!.areaSqFt - s.areaSqFt)).toBeLessThan(0.001);
    });
    const back = [...b.fenceLine].reverse();
    a.fenceLine.forEach((p, i) => {
      expect(pointDistance(p, { x: -back[i]!.x, y: back[i]!.y })).toBeLessThan(1e-9);
    });
  });

  it('goes once round every surface, outer edge counter-clockwise', () => {
    for (const s of fieldWith().surfaces) {
      expect(pathSignedArea(s.boundary[0]!)).toBeGreaterThan(0);
      for (const hole of s.boundary.slice(1)) expect(pathSignedArea(hole)).toBeLessThan(0);
    }
  });
});
