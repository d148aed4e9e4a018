/** Places to walk through, drawn by seed. */
import { seededRandom } from '../../../src/base/random';
import type { WalkTask } from '../../../src/stakeout/walk-order';
import type { Costs } from '../../support/one-tree-bound';

/** Places drawn on a field 160 by 70 ft; index 0 is the start. Every cost at least `least`. */
export function drawnCosts(count: number, seed: number, groups = 1): Costs {
  const random = seededRandom(seed);
  const at = Array.from({ length: count + 1 }, () => ({
    x: 160 * random.uniform(),
    y: 70 * random.uniform(),
    group: random.integer(groups),
  }));
  return at.map((p) =>
    at.map((q) => Math.max(Math.hypot(p.x - q.x, p.y - q.y) / 4, p.group === q.group ? 0 : 45)),
  );
}

/** The same costs as the engine takes them. */
export function taskOf(costs: Costs): WalkTask {
  const rest = costs.slice(1);
  return {
    count: rest.length,
    fromStart: Float64Array.from(costs[0]!.slice(1)),
    between: Float64Array.from(rest.flatMap((row) => row.slice(1))),
  };
}
