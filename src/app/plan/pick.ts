/** A click on the plan takes the nearest stake or pass in hand. */
import type { Point } from '../../geometry/point';
import { pointDistance } from '../../geometry/point';
import { polylineNearest } from '../../geometry/polyline';
import type { Plan } from '../../plan/model';
import { type Stage } from '../state/stages';
import { view } from '../state/view.svelte';
import { setOf } from './pass-sets';

export function pickAt(stage: Stage, plan: Plan, at: Point, withinFt: number): void {
  if (stage === 'stakes') view.stake = nearestStake(plan, at, withinFt);
  if (stage === 'passes') {
    view.playing = false;
    view.pass = nearestPass(plan, at, withinFt);
  }
}

function nearestStake(plan: Plan, at: Point, withinFt: number): string | null {
  let best: string | null = null;
  let distance = withinFt;
  for (const s of plan.stakes?.stakes ?? []) {
    const d = pointDistance(s.at, at);
    if (d < distance) {
      best = s.id;
      distance = d;
    }
  }
  return best;
}

function nearestPass(
  plan: Plan,
  at: Point,
  withinFt: number,
): { machine: string; number: number } | null {
  let best: { machine: string; number: number } | null = null;
  let distance = withinFt;
  for (const p of setOf(plan, view.passSet)?.passes ?? []) {
    const d = polylineNearest(p.line, at).distance;
    if (d < distance) {
      best = { machine: p.machine, number: p.number };
      distance = d;
    }
  }
  return best;
}
