import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import type { Link } from '../../src/stakeout/chain';
import { fitChain, type ChainRules } from '../../src/stakeout/fit-chain';
import { DEFAULT_MINUTES, type CrewMinutes } from '../../src/stakeout/minutes';
import { linkPrices } from '../../src/stakeout/price-links';
import { traceContour, type Trace } from '../../src/stakeout/trace';
import {
  exactChain,
  plainGapOfArc,
  plainGapOfString,
  plainSweeps,
  type PlainContour,
} from '../support/exact-chain';

const TUBE = 0.24;

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
  prices: linkPrices(MINUTES),
});

// By hand from a crew's minutes: 5 for a stake, 1 a string and 0.1 a foot, 2 a bend, 3 a swing, 2.5 a
// pin of the short tape.
const MINUTES: CrewMinutes = {
  ...DEFAULT_MINUTES,
  ...{ ties: 5, short: 2.5, stringEach: 1, stringPerFt: 0.1, bend: 2, swing: 3 },
};
const PRICES = { string: 6, stringPerFt: 0.1, bend: 7, nearSwing: 10.5, farSwing: 13 };

const plain = (t: Trace): PlainContour => ({ x: t.x, y: t.y, corner: t.corners, count: t.count });

const chordOf = (t: Trace, { from, to }: Link) =>
  Math.hypot(t.x[to % t.count]! - t.x[from]!, t.y[to % t.count]! - t.y[from]!);

/** At best: the pin is taken as near, so that a chain that needs far pins cannot look cheaper. */
const costOf = (t: Trace, links: readonly Link[]) =>
  links.reduce(
    (sum, l) =>
      sum +
      { string: PRICES.string + PRICES.stringPerFt * chordOf(t, l), bend: 7, swing: 10.5 }[l.kind],
    0,
  );

/** The best arc that was tried for the link. */
function arcGap(t: Trace, link: Link): number {
  const gaps = plainSweeps(2000).map((s) => plainGapOfArc(plain(t), link.from, link.to, s, 1));
  return Math.min(...gaps);
}

describe('the fewest minutes along a contour', () => {
  it.each([1, 2, 3, 4, 5, 6])('equals an exhaustive search on small contours (draw %i)', (seed) => {
    const t = traceContour(blob(seed), 0);
    const chain = fitChain(t, rulesFor(t));
    expect(chain.strained).toBe(false);
    const exact = exactChain(plain(t), TUBE, PRICES, 300);
    // The search samples arcs, so it can only miss one; the chain may not cost more.
    expect(costOf(t, chain.links)).toBeLessThanOrEqual(exact.cost + 0.0001);
    expect(chain.links.length).toBeLessThanOrEqual(1.02 * exact.links);
    for (const link of chain.links) {
      const gap =
        link.kind === 'string' ? plainGapOfString(plain(t), link.from, link.to) : arcGap(t, link);
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
