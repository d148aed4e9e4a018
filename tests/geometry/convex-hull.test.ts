import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { convexHull } from '../../src/geometry/convex-hull';
import { pointOrientation } from '../../src/geometry/point';

describe('the convex hull in planar feet', () => {
  it('turns left at every corner and leaves no point outside', () => {
    const random = seededRandom(3);
    for (let run = 0; run < 20; run++) {
      const points = Array.from({ length: 60 }, () => ({
        x: 400 * random.uniform() - 200,
        y: 100 + 300 * random.uniform(),
      }));
      const hull = convexHull(points);
      expect(hull.length).toBeGreaterThan(2);
      hull.forEach((a, i) => {
        const b = hull[(i + 1) % hull.length]!;
        for (const p of points) expect(pointOrientation(a, b, p)).toBeGreaterThanOrEqual(-1e-6);
      });
    }
  });

  it('is empty for points on a line', () => {
    expect(convexHull([0, 1, 2].map((x) => ({ x, y: 2 * x })))).toEqual([]);
  });
});
