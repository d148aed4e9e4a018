/** Art that no designer means to draw, and art whose contours touch or nearly do. */
import { expect } from 'vitest';
import { seededRandom } from '../../../src/base/random';
import type { Result } from '../../../src/base/result';
import type { Region } from '../../../src/geometry/region';
import type { StakePlan } from '../../../src/stakeout/model';
import { SPEC } from './plans';

/** Specks, slivers, scribbles that cross themselves, stars, ragged blobs. */
export function nastyArt(seed: number): Region {
  const random = seededRandom(seed);
  const around = (n: number, radius: (a: number) => number) => {
    const [cx, cy] = [(random.uniform() - 0.5) * 90, 240 + random.uniform() * 60];
    return Array.from({ length: n }, (_, i) => {
      const a = (i / n) * 2 * Math.PI;
      return { x: cx + radius(a) * Math.cos(a), y: cy + radius(a) * Math.sin(a) };
    });
  };
  const kinds = [
    () => around(5, () => 1.2 * random.uniform()),
    () => around(7, () => 14 * random.uniform()),
    () => around(16, () => 2 + 6 * random.uniform()),
    () => around(80, (a) => 7 + 2 * Math.sin(5 * a) + 0.2 * random.uniform()),
    () => around(4, (a) => (Math.abs(Math.cos(a)) > 0.5 ? 20 : 0.2)),
  ];
  return Array.from({ length: 1 + random.integer(3) }, () =>
    kinds[random.integer(kinds.length)]!(),
  );
}

const ring = (x: number, y: number, r: number) =>
  Array.from({ length: 240 }, (_, i) => {
    const a = (i * 2 * Math.PI) / 240;
    return { x: x + r * Math.cos(a), y: y + r * Math.sin(a) };
  });

/** A body with straight sides and a ring beside one of them, or two rings, `gapFt` apart, turned by seed. */
export function nearTouching(seed: number, gapFt: number): Region {
  const random = seededRandom(seed);
  const turn = 2 * Math.PI * random.uniform();
  const radius = 4 + 7 * random.uniform();
  const size = 8 + 12 * random.uniform();
  const sides = 3 + random.integer(4);
  const half = Math.PI / sides;
  const body = Array.from({ length: sides }, (_, i) => ({
    x: size * Math.cos((2 * i - 1) * half),
    y: size * Math.sin((2 * i - 1) * half),
  }));
  const straight = seed % 2 === 0;
  const away = (straight ? size * Math.cos(half) : size) + gapFt + radius;
  const rings = [
    straight ? body : ring(0, 0, size),
    ring(away, 0, radius),
    ring(away, 0, radius - 1.2),
  ];
  return rings.map((points) =>
    points.map(({ x, y }) => ({
      x: x * Math.cos(turn) - y * Math.sin(turn),
      y: 265 + x * Math.sin(turn) + y * Math.cos(turn),
    })),
  );
}

/** A plan that keeps its promises, or says which it does not keep. */
export function expectWholePlan(result: Result<StakePlan>): void {
  if (!result.ok) {
    expect(result.problems.length).toBeGreaterThan(0);
    return;
  }
  const { stakes, contours, largestGapIn } = result.value;
  stakes.forEach((s, i) => {
    expect(Number.isFinite(s.at.x + s.at.y + s.semiMajor95In)).toBe(true);
    for (const t of stakes.slice(0, i)) {
      const clear = s.kind === 'control' || t.kind === 'control' ? 2 : 8 / 12;
      expect(Math.hypot(s.at.x - t.at.x, s.at.y - t.at.y)).toBeGreaterThanOrEqual(clear);
    }
  });
  const said = result.problems.map((p) => p.code);
  if (largestGapIn > SPEC.toleranceIn + 0.5) expect(said).toContain('outline-off');
  if (contours.length === 0) expect(said).toContain('detail-too-small');
}
