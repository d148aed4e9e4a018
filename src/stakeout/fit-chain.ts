/**
 * Fewest stakes and pins along a closed contour: the cheapest path through a graph whose nodes are
 * places on the contour and whose edges are strings and swings that stay in the tube (the scheme of
 * Imai & Iri 1986, with arcs as in Drysdale, Rote & Sturm 2008, end points on the contour). Corners
 * are nodes of every path.
 */
import type { Point } from '../geometry/point';
import { stringExcess, stringFollows, swingExists, type Chain, type Link } from './chain';
import { PLANNED_SPACING_FT } from './limits';
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
}

/** Stakes to drive per link: a string needs its end, a swing its end and its pin. */
const STRING_COST = 1;
const SWING_COST = 2;
/** Feasibility is not monotone in length: how much further to look after the last success. */
const PATIENCE_FT = 6;
/** Straight links that leave the tube are tried only over short stretches. */
const STRAINED_REACH_FT = 6;
const STRAIN_COST = 1000;
/** Leaving the tube at all costs as much as leaving it by this much more. */
const STRAIN_LEAST_FT = 0.02;
const STRAIN_LEAST = STRAIN_COST * STRAIN_LEAST_FT;
/** Half length of a stretch where links may leave the tube, and how many such stretches to try. */
const ZONE_FT = 3;
const MOST_ZONES = 30;

interface Search {
  readonly trace: Trace;
  readonly rules: ChainRules;
  /** Index of the first node. */
  readonly start: number;
  /** Distance along the contour of each position from the start. */
  readonly at: Float64Array;
  readonly cost: Float64Array;
  readonly before: Int32Array;
  readonly swing: Uint8Array;
  readonly scratch: { low: number; high: number };
}

/** One number for a link's two ends, to ban it by. */
export const linkKey = (t: Trace, from: number, to: number): number =>
  (from % t.count) * t.count + (to % t.count);

/** The cheapest chain; strained where the tube alone allows none. */
export function fitChain(trace: Trace, rules: ChainRules): Chain {
  const start = firstNode(trace, rules.blocked);
  if (start < 0) return { links: [], strained: true };
  for (let tries = 1; tries <= MOST_ZONES; tries++) {
    const solved = solve(trace, rules, start);
    if (solved.cost[trace.count]! < Infinity) {
      return { links: readPath(solved), strained: solved.cost[trace.count]! >= STRAIN_LEAST };
    }
    easeAround(solved, ZONE_FT * tries);
  }
  return { links: [], strained: true };
}

/** Lets links leave the tube round the farthest place that could be reached. */
function easeAround(s: Search, reachFt: number): void {
  const n = s.trace.count;
  let farthest = 0;
  for (let i = 0; i <= n; i++) if (s.cost[i]! < Infinity) farthest = i;
  const at = s.at[farthest]!;
  for (let i = 0; i <= n; i++) {
    if (Math.abs(s.at[i]! - at) <= reachFt) s.rules.lenient[(s.start + i) % n] = 1;
  }
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

function solve(trace: Trace, rules: ChainRules, start: number): Search {
  const n = trace.count;
  const s: Search = {
    trace,
    rules,
    start,
    at: distancesFrom(trace, start),
    cost: new Float64Array(n + 1).fill(Infinity),
    before: new Int32Array(n + 1).fill(-1),
    swing: new Uint8Array(n + 1),
    scratch: { low: 0, high: 0 },
  };
  s.cost[0] = 0;
  for (let i = 0; i < n; i++) {
    if (s.cost[i]! < Infinity) extendFrom(s, i);
  }
  return s;
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
  const cheapest = s.cost[i]! + STRING_COST;
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

/** Offers the link i→j; true when it follows the contour (or could not matter). */
function tryLink(s: Search, i: number, j: number, length: number): boolean {
  const from = s.start + i;
  const to = s.start + j;
  const base = s.cost[i]!;
  const plain = !passesCorner(s, i, j);
  if (plain && stringFollows(s.trace, s.rules.tube, from, to)) {
    return offer(s, i, j, base + STRING_COST, 0);
  }
  if (base + SWING_COST >= s.cost[j]!) return true;
  if (plain && swingExists(s.trace, s.rules.tube, from, to, s.rules.mayPin, s.scratch)) {
    return offer(s, i, j, base + SWING_COST, 1);
  }
  if (length <= STRAINED_REACH_FT && isLenient(s, i)) {
    const excess = stringExcess(s.trace, s.rules.tube, from, to, Infinity);
    return offer(
      s,
      i,
      j,
      base + STRING_COST + STRAIN_COST * (STRAIN_LEAST_FT + Math.max(0, excess)),
      0,
    );
  }
  return false;
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

function offer(s: Search, i: number, j: number, cost: number, swing: 0 | 1): boolean {
  if (cost < s.cost[j]!) {
    s.cost[j] = cost;
    s.before[j] = i;
    s.swing[j] = swing;
  }
  return true;
}

function readPath(s: Search): Link[] {
  const links: Link[] = [];
  for (let j = s.trace.count; j > 0; j = s.before[j]!) {
    links.push({
      kind: s.swing[j] ? 'swing' : 'string',
      from: (s.start + s.before[j]!) % s.trace.count,
      to: ((s.start + s.before[j]!) % s.trace.count) + (j - s.before[j]!),
    });
  }
  return links.reverse();
}
