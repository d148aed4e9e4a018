/** The marker's walk re-read from a plan: costs by the rules of docs/stakeout.md, written anew. */
import type { Stake, StakePlan } from '../../../src/stakeout/model';
import type { Costs } from '../../support/one-tree-bound';
import type { Place } from './crew';

const away = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);

export const isShortTape = (s: Stake): boolean =>
  s.set.method === 'offset' || s.set.method === 'chord';

export interface ReadWalk {
  /** Start first, then stakes in setting order: seconds between each two. */
  readonly costs: Costs;
  readonly seconds: number;
}

const alongCosts = (costs: Costs): number =>
  costs.slice(1).reduce((sum, row, i) => sum + row[i]!, 0);

const heldAt = ({ set }: Stake): readonly string[] => {
  if (set.method === 'ties') return [set.tie1.from, set.tie2.from];
  return set.method === 'line' ? [set.tie1.from, set.lineTo] : [];
};

/** Walking at 4 ft/s, or both holders walking to their new controls and 20 s each to hook on there. */
function tiedStep(a: Stake, b: Stake, at: ReadonlyMap<string, Place>): number {
  const [p, q] = [heldAt(a), heldAt(b)] as [string[], string[]];
  const holder = (from: string, to: string): number =>
    from === to ? 0 : away(at.get(from)!, at.get(to)!) / 4 + 20;
  const change = Math.min(
    Math.max(holder(p[0]!, q[0]!), holder(p[1]!, q[1]!)),
    Math.max(holder(p[0]!, q[1]!), holder(p[1]!, q[0]!)),
  );
  return Math.max(away(at.get(a.id)!, at.get(b.id)!) / 4, change);
}

/** The walk of the ties, from the last control stake. */
export function tiedWalk(plan: StakePlan, at: ReadonlyMap<string, Place>): ReadWalk {
  const first = plan.stakes.findIndex((s) => s.kind !== 'control');
  const path = plan.stakes.slice(Math.max(0, first - 1)).filter((s) => !isShortTape(s));
  const costs = path.map((a) => path.map((b) => (a === b ? 0 : tiedStep(a, b, at))));
  return { costs, seconds: alongCosts(costs) };
}

/** The walk of the short tape, from the last tied stake. */
export function shortWalk(plan: StakePlan, at: ReadonlyMap<string, Place>): ReadWalk {
  const first = plan.stakes.findIndex(isShortTape);
  const path = first < 0 ? [] : plan.stakes.slice(first - 1);
  const places = path.map((s) => at.get(s.id)!);
  const costs = places.map((p) => places.map((q) => away(p, q) / 4));
  return { costs, seconds: alongCosts(costs) };
}

/** Pair after pair as the plan has them, each by going to the nearest place left. */
export function groupedNearest(plan: StakePlan, at: ReadonlyMap<string, Place>): number {
  const { costs } = tiedWalk(plan, at);
  const first = plan.stakes.findIndex((s) => s.kind !== 'control');
  const path = plan.stakes.slice(Math.max(0, first - 1)).filter((s) => !isShortTape(s));
  let here = 0;
  let sum = 0;
  for (const round of plan.rounds) {
    const left = new Set(
      [...path.keys()].filter((i) => i > 0 && path[i]!.round === round.number && i !== here),
    );
    while (left.size > 0) {
      const next = [...left].reduce((a, b) => (costs[here]![b]! < costs[here]![a]! ? b : a));
      sum += costs[here]![next]!;
      here = next;
      left.delete(next);
    }
  }
  return sum;
}
