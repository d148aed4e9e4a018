/**
 * Fewest person-minutes along a closed contour: the cheapest path through a graph whose nodes are
 * places on the contour and whose edges are strings, bends and swings that stay in the tube (the scheme
 * of Imai & Iri 1986, with arcs as in Drysdale, Rote & Sturm 2008, end points on the contour). Corners
 * are nodes of every path.
 */
import type { Point } from '../geometry/point';
import { stringExcess, stringFollows, type Chain, type Link } from './chain';
import { PLANNED_SPACING_FT } from './limits';
import { cheapestCurve, type LinkPrices } from './price-links';
import type { Trace } from './trace';

/** What a chain must respect besides its tube. */
export interface ChainRules {
  /** Half width of the tube at each point, feet. */
  readonly tube: Float64Array;
  /** Places where no stake may stand; a blocked corner is no corner. */
  readonly blocked: Uint8Array;
  /** Links that may not be used, by `linkKey`. */
  readonly banned: ReadonlySet<number>;
  /**
   * Places where no chain stays in the tube with stakes this far apart: links that start there may
   * leave it, at a price. Found while fitting, and kept for the next fit.
   */
  readonly lenient: Uint8Array;
  readonly mayPin: (p: Point) => boolean;
  readonly prices: LinkPrices;
}

const KINDS = ['string', 'swing', 'bend'] as const;

/** Feasibility is not monotone in length: how much further to look after the last success. */
const PATIENCE_FT = 6;
/** Straight links that leave the tube are tried only over short stretches. */
const STRAINED_REACH_FT = 6;
/** Person-minutes a foot outside the tube: far more than any chain costs. */
const STRAIN_COST = 100_000;
/** Leaving the tube at all costs as much as leaving it by this much more. */
const STRAIN_LEAST_FT = 0.02;
const STRAIN_LEAST = STRAIN_COST * STRAIN_LEAST_FT;
/** Half length of a stretch where links may leave the tube, and how many such stretches to try. */
const ZONE_FT = 3;
const MOST_ZONES = 300;

interface Search {
  readonly trace: Trace;
  readonly rules: ChainRules;
  /** Index of the first node. */
  readonly start: number;
  /** Distance along the contour of each position from the start. */
  readonly at: Float64Array;
  readonly cost: Float64Array;
  readonly before: Int32Array;
  /** Index into `KINDS` of the link that ends at each position. */
  readonly kind: Uint8Array;
  readonly scratch: { low: number; high: number };
}

/** One number for a link's two ends, to ban it by. */
export const linkKey = (t: Trace, from: number, to: number): number =>
  (from % t.count) * t.count + (to % t.count);

/** The cheapest chain; strained where the tube alone allows none. */
export function fitChain(trace: Trace, rules: ChainRules): Chain {
  const start = firstNode(trace, rules.blocked);
  if (start < 0) return { links: [], strained: true };
  const s = startSearch(trace, rules, start);
  let reach = 0;
  let stuckAt = -1;
  for (let from = 0, zones = 0; zones <= MOST_ZONES; zones++) {
    searchFrom(s, from);
    const cost = s.cost[trace.count]!;
    if (cost < Infinity) return { links: readPath(s), strained: cost >= STRAIN_LEAST };
    const farthest = farthestReached(s);
    reach = farthest === stuckAt ? reach + ZONE_FT : ZONE_FT;
    stuckAt = farthest;
    from = easeAround(s, farthest, reach);
  }
  return { links: [], strained: true };
}

function farthestReached(s: Search): number {
  let farthest = s.trace.count;
  while (!(s.cost[farthest]! < Infinity)) farthest--;
  return farthest;
}

/** Lets links leave the tube round a place; returns the first position where that changes anything. */
function easeAround(s: Search, farthest: number, reachFt: number): number {
  const n = s.trace.count;
  const at = s.at[farthest]!;
  let first = farthest;
  while (first > 0 && at - s.at[first - 1]! <= reachFt) first--;
  for (let i = first; i <= n && s.at[i]! - at <= reachFt; i++) {
    s.rules.lenient[(s.start + i) % n] = 1;
  }
  return first;
}

/** The sharpest corner when a stake may stand there, else the first free corner, else any place. */
function firstNode(t: Trace, blocked: Uint8Array): number {
  let any = -1;
  for (let i = 0; i < t.count; i++) {
    if (blocked[i]) continue;
    if (t.corners[i]) return i;
    if (any < 0) any = i;
  }
  return any;
}

function startSearch(trace: Trace, rules: ChainRules, start: number): Search {
  const n = trace.count;
  const s: Search = {
    trace,
    rules,
    start,
    at: distancesFrom(trace, start),
    cost: new Float64Array(n + 1).fill(Infinity),
    before: new Int32Array(n + 1).fill(-1),
    kind: new Uint8Array(n + 1),
    scratch: { low: 0, high: 0 },
  };
  s.cost[0] = 0;
  return s;
}

/** What lies before `from` stays as it is: no link changes there. */
function searchFrom(s: Search, from: number): void {
  for (let i = from; i < s.trace.count; i++) {
    if (s.cost[i]! < Infinity) extendFrom(s, i);
  }
}

function distancesFrom(t: Trace, start: number): Float64Array {
  const at = new Float64Array(t.count + 1);
  for (let i = 1; i <= t.count; i++) {
    const k = (start + i - 1) % t.count;
    at[i] = at[i - 1]! + t.along[k + 1]! - t.along[k]!;
  }
  return at;
}

function extendFrom(s: Search, i: number): void {
  const n = s.trace.count;
  const from = s.at[i]!;
  const cheapest = s.cost[i]! + s.rules.prices.least;
  const lenient = isLenient(s, i);
  let lastGood = from;
  for (let j = i + 1; j <= n; j++) {
    const at = s.at[j]!;
    if (cheapest >= s.cost[j]! || (mayEnd(s, i, j) && tryLink(s, i, j, at - from))) lastGood = at;
    if (at - lastGood > PATIENCE_FT) return;
    if (isCorner(s, j) && !(lenient && at - from < STRAINED_REACH_FT)) return;
  }
}

const CLOSEST_SQUARED = PLANNED_SPACING_FT * PLANNED_SPACING_FT;

function mayEnd(s: Search, i: number, j: number): boolean {
  const { trace, rules, start } = s;
  const n = trace.count;
  const a = (start + i) % n;
  const b = (start + j) % n;
  if (j < n && rules.blocked[b]) return false;
  const dx = trace.x[b]! - trace.x[a]!;
  const dy = trace.y[b]! - trace.y[a]!;
  if (dx * dx + dy * dy < CLOSEST_SQUARED) return false;
  return rules.banned.size === 0 || !rules.banned.has(a * n + b);
}

/** Offers the links i→j; true when one follows the contour (or could not matter). */
function tryLink(s: Search, i: number, j: number, length: number): boolean {
  if (passesCorner(s, i, j)) return tryStrained(s, i, j, length);
  const from = s.start + i;
  const to = s.start + j;
  const { prices, tube, mayPin } = s.rules;
  const base = s.cost[i]!;
  const follows = stringFollows(s.trace, tube, from, to);
  if (follows) offer(s, i, j, base + stringPrice(s, i, j), 0);
  if (base + prices.leastCurve >= s.cost[j]!) return true;
  const curve = cheapestCurve(s.trace, tube, from, to, prices, mayPin, s.scratch);
  if (curve) offer(s, i, j, base + curve.price, curve.kind === 'swing' ? 1 : 2);
  return curve !== null || follows || tryStrained(s, i, j, length);
}

function stringPrice(s: Search, i: number, j: number): number {
  const { trace, rules, start } = s;
  const a = (start + i) % trace.count;
  const b = (start + j) % trace.count;
  const length = Math.hypot(trace.x[b]! - trace.x[a]!, trace.y[b]! - trace.y[a]!);
  return rules.prices.stringEach + rules.prices.stringPerFt * length;
}

/** A string that leaves the tube, where nothing else goes on. */
function tryStrained(s: Search, i: number, j: number, length: number): boolean {
  if (length > STRAINED_REACH_FT || !isLenient(s, i)) return false;
  const excess = stringExcess(s.trace, s.rules.tube, s.start + i, s.start + j, Infinity);
  const strain = STRAIN_COST * (STRAIN_LEAST_FT + Math.max(0, excess));
  offer(s, i, j, s.cost[i]! + stringPrice(s, i, j) + strain, 0);
  return true;
}

const isLenient = (s: Search, i: number): boolean =>
  s.rules.lenient[(s.start + i) % s.trace.count] === 1;

/** Only links that may leave the tube run over a corner. */
function passesCorner(s: Search, i: number, j: number): boolean {
  if (!isLenient(s, i)) return false;
  for (let k = i + 1; k < j; k++) if (isCorner(s, k)) return true;
  return false;
}

function isCorner(s: Search, i: number): boolean {
  const at = (s.start + i) % s.trace.count;
  return s.trace.corners[at] === 1 && s.rules.blocked[at] === 0;
}

function offer(s: Search, i: number, j: number, cost: number, kind: 0 | 1 | 2): void {
  if (cost >= s.cost[j]!) return;
  s.cost[j] = cost;
  s.before[j] = i;
  s.kind[j] = kind;
}

function readPath(s: Search): Link[] {
  const links: Link[] = [];
  for (let j = s.trace.count; j > 0; j = s.before[j]!) {
    links.push({
      kind: KINDS[s.kind[j]!]!,
      from: (s.start + s.before[j]!) % s.trace.count,
      to: ((s.start + s.before[j]!) % s.trace.count) + (j - s.before[j]!),
    });
  }
  return links.reverse();
}
