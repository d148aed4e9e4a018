/** Walking the stakes in setting order. */
import { session } from './session.svelte';
import { view } from './view.svelte';

/** The first stake on the outline, or the first of all: what is in hand when the stage opens. */
export function firstStake(): string | null {
  const stakes = session.plan?.stakes?.stakes ?? [];
  return (stakes.find((s) => s.kind === 'outline') ?? stakes[0])?.id ?? null;
}

/** Takes the next (+1) or the one before (−1) in hand; stays at the ends. */
export function stepStake(by: number): void {
  const stakes = session.plan?.stakes?.stakes ?? [];
  if (stakes.length === 0) return;
  const now = stakes.findIndex((s) => s.id === view.stake);
  const next = now < 0 ? 0 : Math.min(stakes.length - 1, Math.max(0, now + by));
  view.stake = stakes[next]?.id ?? null;
}
