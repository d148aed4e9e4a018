import { describe, expect, it } from 'vitest';
import { traceContours } from '../../src/stakeout/congruent-contours';
import { planned, SPEC } from './support/plans';
import { outlineFigures } from './support/outline-figures';

/** A lopsided leaf, `sign` −1 its mirror image, both counter-clockwise. */
function leaf(cx: number, cy: number, sign: 1 | -1) {
  const ring = Array.from({ length: 160 }, (_, i) => {
    const a = (i / 80) * Math.PI;
    const r = 7 + 2.5 * Math.cos(a) + 1.4 * Math.sin(2 * a + 0.4);
    return { x: cx + sign * r * Math.cos(a), y: cy + 1.5 * r * Math.sin(a) };
  });
  return sign > 0 ? ring : ring.reverse();
}

const PLACES = [
  [-40, 255, 1],
  [40, 270, -1],
  [0, 280, 1],
] as const;
const graphic = PLACES.map(([x, y, sign]) => leaf(x, y, sign));

describe('contours of one shape', () => {
  it('are found moved and mirrored, and not when they differ by an inch', () => {
    const likes = traceContours(graphic).map((t) => t.like);
    expect(likes).toEqual([null, { of: 0, mirrored: true }, { of: 0, mirrored: false }]);
    const bent = leaf(0, 280, 1).map((p, i) => (i === 40 ? { ...p, y: p.y + 1 / 12 } : p));
    expect(traceContours([graphic[0]!, bent]).map((t) => t.like)).toEqual([null, null]);
  });

  it('lie on their own art, in its sense', () => {
    traceContours(graphic).forEach(({ trace }, i) => {
      const [x, y, sign] = PLACES[i]!;
      let area = 0;
      for (let k = 0; k < trace.count; k++) {
        const m = (k + 1) % trace.count;
        area += (trace.x[k]! * trace.y[m]! - trace.x[m]! * trace.y[k]!) / 2;
        const [u, v] = [sign * (trace.x[k]! - x), (trace.y[k]! - y) / 1.5];
        const a = Math.atan2(v, u);
        const r = 7 + 2.5 * Math.cos(a) + 1.4 * Math.sin(2 * a + 0.4);
        expect(Math.abs(Math.hypot(u, v) - r)).toBeLessThan(0.03);
      }
      expect(area).toBeGreaterThan(0);
    });
  });

  it('get the same pieces, radii and offsets, and keep the tolerance', () => {
    const { plan } = planned(graphic);
    const [first, mirror, moved] = plan.contours;
    expect(mirror!.like).toEqual({ contour: 1, mirrored: true });
    expect(moved!.like).toEqual({ contour: 1, mirrored: false });
    const sizes = (c: typeof first) =>
      c!.pieces.map((p) => [
        p.kind,
        'radius' in p ? p.radius.text : 'offset' in p && p.offset.text,
      ]);
    expect(sizes(moved)).toEqual(sizes(first));
    expect(sizes(mirror)).toEqual(sizes(first).reverse());
    expect(outlineFigures(plan, graphic, SPEC.toleranceIn).gapIn).toBeLessThanOrEqual(3.5);
  });
});
