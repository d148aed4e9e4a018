/**
 * Control stakes set from control stakes: where no place that can be set from the known controls helps
 * a stake still missing, the shortest chain of places that does.
 */
import { pointDistance, type Point } from '../geometry/point';
import { chooseCheck } from './choose-check';
import { countBits, emptyBits, pairCover } from './cover';
import type { StakeoutSpec } from './model';
import { CONTROLS_APART_FT } from './search-controls';
import { checkTape, longestTapeFt, tapePairs } from './tapes';
import { bestSetting, methodControls, type TapeEnd } from './ties';

/** A place that can be set by way of others. */
interface Reached {
  readonly end: TapeEnd;
  /** Places to set, in order, this one last; empty for a control that is known. */
  readonly chain: readonly Point[];
}

interface Reach {
  readonly spec: StakeoutSpec;
  readonly missing: readonly Point[];
  readonly targetIn: number;
}

/** Tiers of control stakes beyond the known ones. */
const MOST_TIERS = 5;
/** Of the controls near a place, this many are tried for setting it, those set soonest first. */
const MOST_NEAR = 14;

/**
 * The chain of places that lets most of the missing stakes per place be set within `targetIn`; null
 * when none does within a few tiers.
 */
export function chainToward(
  job: Reach,
  known: readonly TapeEnd[],
  places: readonly Point[],
): Point[] | null {
  let reached: Reached[] = known.map((end) => ({ end, chain: [] }));
  let left = places.filter((p) => clearOf(p, known));
  for (let tier = 0; tier < MOST_TIERS; tier++) {
    const next = left.flatMap((at) => reachPlace(at, reached, job) ?? []);
    if (next.length === 0) return null;
    const best = bestChain(job, reached, next);
    if (best) return best;
    reached = [...reached, ...next];
    const done = new Set(next.map((r) => r.chain[r.chain.length - 1]!));
    left = left.filter((p) => !done.has(p));
  }
  return null;
}

const clearOf = (p: Point, known: readonly TapeEnd[]): boolean =>
  known.every((e) => pointDistance(e.point.at, p) >= CONTROLS_APART_FT);

/** The place set and checked from what is near it, with as few places before it as can be. */
function reachPlace(at: Point, reached: readonly Reached[], job: Reach): Reached | null {
  const limitFt = longestTapeFt(job.spec);
  const near = reached
    .filter((r) => {
      const d = pointDistance(r.end.point.at, at);
      return d <= limitFt && d >= CONTROLS_APART_FT;
    })
    .sort((a, b) => a.chain.length - b.chain.length);
  for (let count = 3; count <= Math.min(near.length, MOST_NEAR); count++) {
    const found = reachFrom(at, near.slice(0, count), job);
    if (found) return found;
  }
  return null;
}

function reachFrom(at: Point, near: readonly Reached[], job: Reach): Reached | null {
  const { spec } = job;
  const named = near.map((r, i) => ({ ...r.end, id: String(i) }));
  const stake = bestSetting(named, at, spec);
  if (!stake || stake.semiMajor95In > job.targetIn) return null;
  const sources = named.map((end) => ({ id: end.id, point: end.point, isControl: true }));
  const check = chooseCheck(stake, sources, checkTape(spec), spec.system);
  if (!check) return null;
  const used = [...methodControls(stake.set), check.from];
  const chain = joinChains(near.filter((_, i) => used.includes(String(i))));
  return {
    end: { id: '?', point: { ...stake.point, own: [] }, covariance: stake.covariance },
    chain: [...chain, at],
  };
}

/** All places of several chains, each once, in an order that keeps each chain's. */
const joinChains = (parts: readonly Reached[]): Point[] => [
  ...new Set(parts.flatMap((r) => r.chain)),
];

/** The chain to two controls, one of them new, that gains most stakes per place. */
function bestChain(
  job: Reach,
  reached: readonly Reached[],
  next: readonly Reached[],
): Point[] | null {
  const held = tapePairs(job.spec);
  const bits = emptyBits(job.missing.length);
  let best: Point[] | null = null;
  let most = 0;
  next.forEach((b, j) => {
    for (const a of [...reached, ...next.slice(0, j)]) {
      bits.fill(0);
      pairCover(a.end, b.end, job.missing, held, job.targetIn, bits);
      const gain = countBits(bits);
      if (gain === 0) continue;
      const chain = joinChains([a, b]);
      if (gain / chain.length <= most) continue;
      most = gain / chain.length;
      best = chain;
    }
  });
  return best;
}
