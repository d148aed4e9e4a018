import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import type { Point } from '../../src/geometry/point';
import { placeLabels, type LabelRequest, type PlacedLabel } from '../../src/sheets/place-labels';
import { overlap } from './mark-boxes';

const WINDOW = { minX: 0, minY: 0, maxX: 400, maxY: 300 };

function crowd(seed: number, count: number): LabelRequest[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => ({
    id: String(i + 1),
    at: { x: 20 + random.uniform() * 360, y: 20 + random.uniform() * 260 },
    width: 6 + 5 * String(i + 1).length,
    height: 7,
    clear: 2.5,
  }));
}

const scene = (requests: readonly LabelRequest[]) => ({
  window: WINDOW,
  discs: requests.map((r) => ({ at: r.at, radius: r.clear })),
  lines: [requests.map((r) => r.at)],
  taken: [{ minX: 150, minY: 100, maxX: 200, maxY: 130 }],
});

/** Points along a leader, closer together than any label is high. */
function along([a, b]: readonly [Point, Point]): Point[] {
  return Array.from({ length: 200 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / 199,
    y: a.y + ((b.y - a.y) * i) / 199,
  }));
}

const inside = (p: Point, { box }: PlacedLabel): boolean =>
  p.x > box.minX && p.x < box.maxX && p.y > box.minY && p.y < box.maxY;

describe('label placement, by brute force', () => {
  it.each([1, 2, 3, 4, 5])('labels of crowd %i touch neither each other nor a sign', (seed) => {
    const requests = crowd(seed, 90);
    const { placed, failed } = placeLabels(requests, scene(requests));
    expect(placed.length + failed.length).toBe(requests.length);
    expect(placed.length).toBeGreaterThan(70);
    const faults: string[] = [];
    for (const [i, a] of placed.entries()) {
      for (const b of placed.slice(i + 1))
        if (overlap(a.box, b.box) > 0) faults.push(`${a.id} lies on ${b.id}`);
      if (overlap(a.box, scene([]).taken[0]!) > 0) faults.push(`${a.id} lies on a taken place`);
      const { minX, minY, maxX, maxY } = a.box;
      if (minX < 0 || minY < 0 || maxX > 400 || maxY > 300) faults.push(`${a.id} is outside`);
      for (const r of requests) {
        const dx = Math.max(minX - r.at.x, 0, r.at.x - maxX);
        const dy = Math.max(minY - r.at.y, 0, r.at.y - maxY);
        if (Math.hypot(dx, dy) < r.clear) faults.push(`${a.id} lies on the sign of ${r.id}`);
      }
    }
    expect(faults).toEqual([]);
  });

  it.each([1, 2, 3])('leaders of crowd %i run through no label and no other sign', (seed) => {
    const requests = crowd(seed, 90);
    const { placed } = placeLabels(requests, scene(requests));
    const led = placed.filter((label) => label.leader !== null);
    expect(led.length).toBeGreaterThan(0);
    const faults: string[] = [];
    for (const label of led) {
      for (const p of along(label.leader!)) {
        if (placed.some((other) => other.id !== label.id && inside(p, other)))
          faults.push(`the leader of ${label.id} runs through a label`);
        if (
          requests.some(
            (r) => r.id !== label.id && Math.hypot(r.at.x - p.x, r.at.y - p.y) < r.clear,
          )
        )
          faults.push(`the leader of ${label.id} runs through a sign`);
      }
    }
    expect(faults).toEqual([]);
  });

  it('says which labels found no room instead of printing them over others', () => {
    const at = { x: 200, y: 50 };
    const requests = Array.from({ length: 150 }, (_, i) => ({
      id: String(i),
      at: { x: at.x + (i % 12) * 2, y: at.y + Math.floor(i / 12) * 2 },
      width: 14,
      height: 7,
      clear: 0.5,
    }));
    const { placed, failed } = placeLabels(requests, scene(requests));
    expect(failed.length).toBeGreaterThan(0);
    expect(new Set([...placed.map((label) => label.id), ...failed]).size).toBe(150);
  });
});
