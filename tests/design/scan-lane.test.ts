import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { scanEdges, scanLane } from '../../src/design/scan-lane';

/** Even-odd by hand, for brute force. */
function inside(rings: readonly (readonly { x: number; y: number }[])[], x: number, y: number) {
  let odd = false;
  for (const ring of rings) {
    ring.forEach((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length]!;
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
    });
  }
  return odd;
}

describe('a lane over a shape', () => {
  test('agrees with sampled cross-sections of random stars with a hole', () => {
    const random = seededRandom(7);
    let checked = 0;
    for (let round = 0; round < 60; round++) {
      const star = Array.from({ length: 11 }, (_, i) => {
        const r = 4 + 6 * random.uniform();
        return {
          x: r * Math.cos((2 * Math.PI * i) / 11),
          y: r * Math.sin((2 * Math.PI * i) / 11),
        };
      });
      const hole = [
        { x: -1, y: -1 },
        { x: -1, y: 1.3 },
        { x: 1.2, y: 0.2 },
      ];
      const rings = [star, hole];
      const lo = -6 + 12 * random.uniform();
      const hi = lo + 0.3 + 2 * random.uniform();
      const scan = scanLane(scanEdges(rings), lo, hi);
      for (let k = 0; k < 60; k++) {
        const y = -11 + 22 * random.uniform();
        const flags = Array.from({ length: 81 }, (_, i) =>
          inside(rings, lo + ((hi - lo) * i) / 80, y),
        );
        const within = (list: readonly { from: number; to: number }[], by: number) =>
          list.some((s) => y > s.from + by && y < s.to - by);
        if (within(scan.inside, 1e-6)) expect(flags.every(Boolean)).toBe(true);
        if (flags.some(Boolean)) expect(within(scan.touched, -1e-6)).toBe(true);
        if (within(scan.inside, 1e-6)) checked++;
      }
    }
    expect(checked).toBeGreaterThan(200);
  });
});
