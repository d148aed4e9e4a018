import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import type { Link } from '../../src/stakeout/chain';
import { fitChain, type ChainRules } from '../../src/stakeout/fit-chain';
import { traceContour, type Trace } from '../../src/stakeout/trace';

const TUBE = 0.24;
const SPACING = 8.75 / 12;

/** A small closed contour: a lumpy blob with one sharp corner. */
function blob(seed: number) {
  const random = seededRandom(seed);
  const waves = [2, 3, 5].map((k) => ({
    k,
    size: 0.6 * random.uniform(),
    shift: 6.28 * random.uniform(),
  }));
  const radius = 1.5 + 2.5 * random.uniform();
  const ring = Array.from({ length: 90 }, (_, i) => {
    const a = (i / 90) * 2 * Math.PI;
    const r = radius + waves.reduce((sum, w) => sum + w.size * Math.sin(w.k * a + w.shift), 0);
    return { x: 50 + r * Math.cos(a), y: 250 + r * Math.sin(a) };
  });
  return [...ring, { x: 50 + radius + 3.5, y: 249 }];
}

const rulesFor = (t: Trace): ChainRules => ({
  tube: new Float64Array(t.count).fill(TUBE),
  blocked: new Uint8Array(t.count),
  banned: new Set(),
  lenient: new Uint8Array(t.count),
  mayPin: () => true,
});

const at = (t: Trace, i: number) => [t.x[i % t.count]!, t.y[i % t.count]!] as const;

/** Largest distance of the points between from the straight chord, by brute force. */
function stringGap(t: Trace, i: number, j: number): number {
  const [a, b] = [at(t, i), at(t, j)];
  const d2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  let worst = 0;
  for (let k = i + 1; k < j; k++) {
    const p = at(t, k);
    const s = Math.min(
      1,
      Math.max(0, ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / d2),
    );
    worst = Math.max(
      worst,
      Math.hypot(p[0] - a[0] - s * (b[0] - a[0]), p[1] - a[1] - s * (b[1] - a[1])),
    );
  }
  return worst;
}

/** Smallest over many arcs (radius 3.1 to 100 ft, at most 176 degrees) of the largest gap. */
function swingGap(t: Trace, i: number, j: number, samples: number): number {
  const [a, b] = [at(t, i), at(t, j)];
  const h = Math.hypot(b[0] - a[0], b[1] - a[1]) / 2;
  const m = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
  const n = [-(b[1] - a[1]) / (2 * h), (b[0] - a[0]) / (2 * h)] as const;
  let best = Infinity;
  for (let s = -samples; s <= samples; s++) {
    const bulge = Math.tan(((s / samples) * 44 * Math.PI) / 180);
    const radius = (h * (1 + bulge * bulge)) / (2 * Math.abs(bulge));
    if (!(radius >= 3.1 && radius <= 100)) continue;
    const off = (h * (1 - bulge * bulge)) / (2 * bulge);
    const c = [m[0] + off * n[0], m[1] + off * n[1]] as const;
    let worst = 0;
    for (let k = i + 1; k < j && worst < best; k++) {
      const p = at(t, k);
      worst = Math.max(worst, Math.abs(Math.hypot(p[0] - c[0], p[1] - c[1]) - radius));
    }
    best = Math.min(best, worst);
  }
  return best;
}

/** Cheapest closed chain from node 0 by trying every link: strings cost 1, swings 2. */
function exhaustiveCost(t: Trace): number {
  const n = t.count;
  const cost = new Array<number>(n + 1).fill(Infinity);
  cost[0] = 0;
  for (let j = 1; j <= n; j++) {
    for (let i = j - 1; i >= 0; i--) {
      const [a, b] = [at(t, i), at(t, j)];
      if (Math.hypot(a[0] - b[0], a[1] - b[1]) >= SPACING) {
        if (cost[i]! + 1 < cost[j]! && stringGap(t, i, j) <= TUBE) cost[j] = cost[i]! + 1;
        if (cost[i]! + 2 < cost[j]! && swingGap(t, i, j, 400) <= TUBE) cost[j] = cost[i]! + 2;
      }
      if (t.corners[i] && i > 0) break;
    }
  }
  return cost[n]!;
}

const costOf = (links: readonly Link[]) =>
  links.reduce((sum, l) => sum + (l.kind === 'string' ? 1 : 2), 0);

describe('the fewest stakes and pins along a contour', () => {
  it.each([1, 2, 3, 4, 5, 6])('equals an exhaustive search on small contours (draw %i)', (seed) => {
    const t = traceContour(blob(seed), 0);
    const chain = fitChain(t, rulesFor(t));
    expect(chain.strained).toBe(false);
    // The search samples arcs, so it can only miss one; the chain may not cost more.
    expect(costOf(chain.links)).toBeLessThanOrEqual(exhaustiveCost(t));
    for (const link of chain.links) {
      const gap =
        link.kind === 'string'
          ? stringGap(t, link.from, link.to)
          : swingGap(t, link.from, link.to, 4000);
      expect(gap).toBeLessThanOrEqual(TUBE + 0.002);
    }
  });

  it('keeps every corner as a stake', () => {
    const t = traceContour(blob(3), 0);
    const nodes = new Set(fitChain(t, rulesFor(t)).links.map((l) => l.from % t.count));
    const corners = [...t.corners.keys()].filter((i) => t.corners[i]);
    expect(corners.length).toBeGreaterThan(0);
    for (const c of corners) expect(nodes.has(c)).toBe(true);
  });

  it('closes head to tail', () => {
    const t = traceContour(blob(5), 0);
    const { links } = fitChain(t, rulesFor(t));
    links.forEach((l, i) => expect(links[(i + 1) % links.length]!.from).toBe(l.to % t.count));
  });
});

describe('corners', () => {
  it('are found on a square and not on a dense circle', () => {
    const square = [
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    const circle = Array.from({ length: 400 }, (_, i) => ({
      x: 6 * Math.cos((i / 200) * Math.PI),
      y: 6 * Math.sin((i / 200) * Math.PI),
    }));
    const count = (ring: { x: number; y: number }[]) =>
      traceContour(ring, 0).corners.reduce((sum, c) => sum + c, 0);
    expect(count(square)).toBe(4);
    expect(count(circle)).toBe(0);
  });
});
