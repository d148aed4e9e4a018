import { describe, expect, it } from 'vitest';
import { gridSheet } from '../../src/stakeout/grid-sheet';
import { gridTransfer } from '../../src/stakeout/grid-transfer';
import { traceContour } from '../../src/stakeout/trace';

const R = 15;
const TUBE = 2.9 / 12;
const ring = Array.from({ length: 2000 }, (_, i) => {
  const a = (i / 1000) * Math.PI;
  return { x: R * Math.cos(a), y: 250 + R * Math.sin(a) };
});

type Xy = readonly [number, number];

/** Where the true circle crosses strings `cell` apart through (ox, oy), by bearing. */
function circleMarks(cell: number, ox: number, oy: number): Xy[] {
  const out: Xy[] = [];
  for (let k = Math.ceil((-R - ox) / cell); ox + k * cell < R; k++) {
    const x = ox + k * cell;
    for (const s of [1, -1]) out.push([x, 250 + s * Math.sqrt(R * R - x * x)]);
  }
  for (let k = Math.ceil((250 - R - oy) / cell); oy + k * cell < 250 + R; k++) {
    const y = oy + k * cell;
    for (const s of [1, -1]) out.push([s * Math.sqrt(R * R - (y - 250) ** 2), y]);
  }
  const bearing = (p: Xy) => Math.atan2(p[1] - 250, p[0]);
  // Crossings within an inch of each other are one mark.
  return out
    .filter(([, y]) => !Number.isNaN(y))
    .sort((p, q) => bearing(p) - bearing(q))
    .filter((p, i, all) => Math.hypot(p[0] - all.at(i - 1)![0], p[1] - all.at(i - 1)![1]) > 1 / 12);
}

/** Largest distance of the centripetal curve from the circle: Hermite form of the same curve. */
function strays(marks: readonly Xy[]): number {
  const n = marks.length;
  const knot = (p: Xy, q: Xy) => Math.sqrt(Math.hypot(p[0] - q[0], p[1] - q[1]));
  let worst = 0;
  for (let i = 0; i < n; i++) {
    const [a, b, c, d] = [0, 1, 2, 3].map((k) => marks[(i + k) % n]!) as [Xy, Xy, Xy, Xy];
    const [u, v, w] = [knot(a, b), knot(b, c), knot(c, d)];
    const slope = (k: 0 | 1, p: Xy, q: Xy, r: Xy, s: number, t: number) =>
      (q[k] - p[k]) / s - (r[k] - p[k]) / (s + t) + (r[k] - q[k]) / t;
    for (let j = 0; j < 20; j++) {
      const t = j / 20;
      const [p, q] = ([0, 1] as const).map((k) => {
        const m1 = v * slope(k, a, b, c, u, v);
        const m2 = v * slope(k, b, c, d, v, w);
        return (
          (2 * t ** 3 - 3 * t ** 2 + 1) * b[k] +
          (t ** 3 - 2 * t ** 2 + t) * m1 +
          (3 * t ** 2 - 2 * t ** 3) * c[k] +
          (t ** 3 - t ** 2) * m2
        );
      }) as [number, number];
      worst = Math.max(worst, Math.abs(Math.hypot(p, q - 250) - R));
    }
  }
  return worst;
}

const worstFall = (cell: number): number =>
  Math.max(
    ...[0, 1, 2].flatMap((i) =>
      [0, 1, 2].map((j) =>
        strays(circleMarks(cell, -R - (i * cell) / 3, 250 - R - (j * cell) / 3)),
      ),
    ),
  );

describe('the customary grid transfer', () => {
  const found = gridTransfer([traceContour(ring, 0)], TUBE, 'feet-inches')!;

  it('takes the largest cell that keeps the tolerance wherever the strings fall', () => {
    // The engine's contour is thinned by 0.1 in.
    expect(worstFall(found.cellFt)).toBeLessThanOrEqual(TUBE + 0.1 / 12);
    expect(worstFall(found.cellFt / 0.97)).toBeGreaterThan(TUBE - 0.1 / 12);
  });

  it('counts a mark at every crossing', () => {
    // A circle 2R across is crossed twice by each of about 2R / cell strings each way.
    expect(Math.abs(found.marks - (8 * R) / found.cellFt)).toBeLessThanOrEqual(4);
  });

  it('finds none where the art is finer than any cell', () => {
    const speck = ring.map((p) => ({ x: p.x / 300, y: p.y / 300 }));
    expect(gridTransfer([traceContour(speck, 0)], 0.0005, 'feet-inches')).toBeNull();
  });
});

describe('the grid sheet', () => {
  const sheet = gridSheet([ring], 4, 'feet-inches')!;

  it('lists every crossing of a circle by string and distance', () => {
    for (const s of sheet.strings) {
      const from = s.way === 'up' ? sheet.nearFt : sheet.leftFt;
      const [off, middle] = s.way === 'up' ? [s.atFt, 250] : [s.atFt - 250, 0];
      const half = R * R - off * off;
      const want =
        half > 0 ? [middle - Math.sqrt(half) - from, middle + Math.sqrt(half) - from] : [];
      expect(s.marks.length, s.name).toBe(want.length);
      // Within half a step of the tape and the ring's own flatness.
      s.marks.forEach((m, i) => expect(Math.abs(m.ft - want[i]!) * 12).toBeLessThan(0.14));
    }
  });

  it('lays its strings on the line through home plate and second base, and covers the art', () => {
    expect(sheet.strings.some((s) => s.way === 'up' && s.atFt === 0)).toBe(true);
    expect([sheet.leftFt, sheet.rightFt, sheet.nearFt, sheet.farFt]).toEqual([-16, 16, 232, 268]);
    expect(sheet.strings.length).toBe(9 + 10);
  });

  it('is empty without art', () => {
    expect(gridSheet([], 4, 'metric')).toBeNull();
  });
});
