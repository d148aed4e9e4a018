import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { chooseLanes, type LaneRun } from '../../src/guide/choose-lanes';

/** Passes laid from `lane` outward until the line left of lane `b` is made, counted one by one. */
function countPasses(lane: number, b: number): number {
  let passes = 0;
  if (b > lane) for (let next = lane + 1; next < b; next++) passes++;
  else for (let next = lane - 1; next >= b; next--) passes++;
  return passes;
}

/** Every subset of the lanes: the fewest that serve all edges, and the fewest strings of those. */
function bruteForce({ edges, strings }: LaneRun, reach: number) {
  let best: { lanes: number; strings: number } | null = null;
  for (let set = 1; set < 1 << strings.length; set++) {
    const lanes = strings.flatMap((_, i) => (set & (1 << i) ? [i] : []));
    if (lanes.some((i) => strings[i] === 0)) continue;
    if (!edges.every((b) => lanes.some((i) => countPasses(i, b) <= reach))) continue;
    const sum = lanes.reduce((n, i) => n + strings[i]!, 0);
    if (!best || lanes.length < best.lanes || (lanes.length === best.lanes && sum < best.strings))
      best = { lanes: lanes.length, strings: sum };
  }
  return best;
}

/** Interval stabbing from the left: string the last lane that still serves the first edge left over. */
function stabFromLeft(edges: readonly number[], lanes: number, reach: number): number {
  let count = 0;
  let left = [...edges].sort((a, b) => a - b);
  while (left.length > 0) {
    const first = left[0]!;
    let at = 0;
    for (let lane = 0; lane < lanes; lane++) if (countPasses(lane, first) <= reach) at = lane;
    left = left.filter((b) => countPasses(at, b) > reach);
    count++;
  }
  return count;
}

describe('the fewest lanes to string', () => {
  it('has no fewer lanes, and no fewer strings, than the best of all subsets', () => {
    const random = seededRandom(7);
    let tried = 0;
    for (let round = 0; round < 300; round++) {
      const lanes = 2 + random.integer(9);
      const strings = Array.from({ length: lanes }, () => random.integer(4));
      const edges = Array.from({ length: lanes - 1 }, (_, i) => i + 1).filter(
        () => random.uniform() < 0.5,
      );
      const reach = random.integer(4);
      const best = bruteForce({ edges, strings }, reach);
      if (!best || edges.length === 0) continue;
      tried++;
      const chosen = chooseLanes({ edges, strings }, reach);
      expect(chosen.every((lane) => strings[lane]! > 0)).toBe(true);
      expect(edges.every((b) => chosen.some((lane) => countPasses(lane, b) <= reach))).toBe(true);
      expect({
        lanes: chosen.length,
        strings: chosen.reduce((n, lane) => n + strings[lane]!, 0),
      }).toEqual(best);
    }
    expect(tried).toBeGreaterThan(150);
  });

  it('strings as few as interval stabbing does on a whole field', () => {
    for (const passesPerBand of [1, 2, 3, 4, 7]) {
      for (const reach of [0, 1, 2, 5, 9, 30]) {
        const lanes = 86;
        const edges = Array.from({ length: lanes - 1 }, (_, i) => i + 1).filter(
          (b) => b % passesPerBand === 0,
        );
        const chosen = chooseLanes({ edges, strings: new Array<number>(lanes).fill(1) }, reach);
        expect(chosen.length).toBe(stabFromLeft(edges, lanes, reach));
      }
    }
  });

  it('strings nothing without an edge, or when no pass keeps the tolerance', () => {
    expect(chooseLanes({ edges: [], strings: [1, 1] }, 3)).toEqual([]);
    expect(chooseLanes({ edges: [1], strings: [1, 1] }, -1)).toEqual([]);
  });
});
