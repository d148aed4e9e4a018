/**
 * The cheapest closed chain along a contour by trying every link with sampled arcs: slow, plain, and
 * written from the rules alone. Shares no code with the engine.
 */

/** A contour as points, first one fixed; `corner[i]` says where a stake must stand. */
export interface PlainContour {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly corner: ArrayLike<number>;
  readonly count: number;
}

/** Person-minutes of a link with its end stake. */
export interface PlainPrices {
  readonly string: number;
  readonly stringPerFt: number;
  readonly bend: number;
  readonly nearSwing: number;
  readonly farSwing: number;
}

export interface PlainChain {
  readonly cost: number;
  readonly links: number;
}

const SPACING = 8.75 / 12;

export const plainGapOfString = (t: PlainContour, i: number, j: number): number => {
  const [ax, ay, bx, by] = ends(t, i, j);
  const d2 = (bx - ax) ** 2 + (by - ay) ** 2;
  let worst = 0;
  for (let k = i + 1; k < j; k++) {
    const [px, py] = [t.x[k % t.count]!, t.y[k % t.count]!];
    const along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / d2;
    const s = Math.min(1, Math.max(0, along));
    worst = Math.max(worst, Math.hypot(px - ax - s * (bx - ax), py - ay - s * (by - ay)));
  }
  return worst;
};

function ends(t: PlainContour, i: number, j: number): [number, number, number, number] {
  const [a, b] = [i % t.count, j % t.count];
  return [t.x[a]!, t.y[a]!, t.x[b]!, t.y[b]!];
}

/** Largest gap to the arc over i→j that turns `sweep` (signed), given up once above `enough`. */
export function plainGapOfArc(
  t: PlainContour,
  i: number,
  j: number,
  sweep: number,
  enough: number,
): number {
  const [ax, ay, bx, by] = ends(t, i, j);
  const c = Math.hypot(bx - ax, by - ay);
  const r = c / 2 / Math.sin(Math.abs(sweep) / 2);
  const off = (Math.sign(sweep) * Math.sqrt(Math.max(0, r * r - (c * c) / 4))) / c;
  const cx = (ax + bx) / 2 - off * (by - ay);
  const cy = (ay + by) / 2 + off * (bx - ax);
  // From the centre to the middle of the arc, of length 1: the centre lies left of a left turn.
  const mx = (Math.sign(sweep) * (by - ay)) / c;
  const my = (-Math.sign(sweep) * (bx - ax)) / c;
  const within = Math.cos(Math.abs(sweep) / 2);
  let worst = 0;
  for (let k = i + 1; k < j; k++) {
    const [px, py] = [t.x[k % t.count]!, t.y[k % t.count]!];
    const d = Math.hypot(px - cx, py - cy);
    const facing = (px - cx) * mx + (py - cy) * my >= within * d;
    const gap = facing
      ? Math.abs(d - r)
      : Math.min(Math.hypot(px - ax, py - ay), Math.hypot(px - bx, py - by));
    if (gap > worst) worst = gap;
    if (worst > enough) return worst;
  }
  return worst;
}

/** Turns that are tried, degrees: an arc that turns more than 176 is no link. */
export function plainSweeps(samples: number): number[] {
  const out: number[] = [];
  for (let s = 1; s <= samples; s++) out.push((s / samples) * 176, (-s / samples) * 176);
  return out.map((deg) => (deg * Math.PI) / 180);
}

/** What an arc over a chord of `c` feet costs: a bend, or a swing with a near or a far pin. */
function arcPrice(c: number, sweep: number, prices: PlainPrices): number {
  const half = Math.abs(sweep) / 2;
  const r = c / 2 / Math.sin(half);
  const rise = r * (1 - Math.cos(half));
  const bend = c <= 6 && rise >= 1 / 12 ? prices.bend : Infinity;
  const near = r * Math.cos(half) <= 6 && c >= 3 && c <= 30;
  const swing = r >= 3.1 && r <= 100 ? (near ? prices.nearSwing : prices.farSwing) : Infinity;
  return Math.min(bend, swing);
}

/** The cheapest chain from point 0 round to it again. `tube`: half width, feet. */
export function exactChain(
  t: PlainContour,
  tube: number,
  prices: PlainPrices,
  samples: number,
  reachFt = Infinity,
): PlainChain {
  const sweeps = plainSweeps(samples);
  const cost = new Array<number>(t.count + 1).fill(Infinity);
  const links = new Array<number>(t.count + 1).fill(0);
  cost[0] = 0;
  for (let j = 1; j <= t.count; j++) {
    for (let i = j - 1; i >= 0; i--) {
      const price = linkPrice(t, i, j, tube, prices, sweeps, cost[j]! - cost[i]!, reachFt);
      if (cost[i]! + price < cost[j]!) {
        cost[j] = cost[i]! + price;
        links[j] = links[i]! + 1;
      }
      if (i > 0 && t.corner[i]) break;
    }
  }
  return { cost: cost[t.count]!, links: links[t.count]! };
}

function linkPrice(
  t: PlainContour,
  i: number,
  j: number,
  tube: number,
  prices: PlainPrices,
  sweeps: readonly number[],
  below: number,
  reachFt: number,
): number {
  const [ax, ay, bx, by] = ends(t, i, j);
  const c = Math.hypot(bx - ax, by - ay);
  if (c < SPACING || c > reachFt) return Infinity;
  const string = prices.string + prices.stringPerFt * c;
  let best = string < below && plainGapOfString(t, i, j) <= tube ? string : Infinity;
  for (const sweep of sweeps) {
    const price = arcPrice(c, sweep, prices);
    if (price >= Math.min(best, below)) continue;
    if (plainGapOfArc(t, i, j, sweep, tube) <= tube) best = price;
  }
  return best;
}
