/**
 * A crew that sets a plan's stakes out and tapes them again, with honest errors drawn from a seed and
 * slips on request. Plane geometry of its own; only the plan's data and the seeded numbers are shared.
 */
import { seededRandom, type Random } from '../../../src/base/random';
import type { MeasuredReading } from '../../../src/audit/model';
import type { StakePlan, TapeSpec } from '../../../src/stakeout/model';

export interface Place {
  readonly x: number;
  readonly y: number;
}

export type Slip =
  /** The first or second tape of a stake's setting is let out this much too far. */
  | { readonly kind: 'tie'; readonly stake: string; readonly tie: 1 | 2; readonly inches: number }
  | { readonly kind: 'swap'; readonly stake: string }
  | { readonly kind: 'side'; readonly stake: string }
  /** An offset's distance along is taken from the other end of its line, to the same side. */
  | { readonly kind: 'end'; readonly stake: string }
  | { readonly kind: 'held-at'; readonly stake: string; readonly tie: 1 | 2; readonly at: string }
  | { readonly kind: 'kicked'; readonly stake: string; readonly inches: Place }
  /** A reading made afterwards is written down this much too long. */
  | {
      readonly kind: 'read';
      readonly stake: string;
      readonly from: string;
      readonly inches: number;
    };

export const apart = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);

const tapeSigma = (tape: TapeSpec, ft: number): number =>
  Math.hypot(tape.readingSigmaIn / 12, tape.proportional * ft);

/** Where two circles meet, left of the way from a to b or right of it. */
export function meet(a: Place, r: number, b: Place, s: number, left: boolean): Place {
  const d = apart(a, b);
  const along = (r * r - s * s + d * d) / (2 * d);
  const across = Math.sqrt(Math.max(0, r * r - along * along)) * (left ? 1 : -1);
  const [ex, ey] = [(b.x - a.x) / d, (b.y - a.y) / d];
  return { x: a.x + ex * along - ey * across, y: a.y + ey * along + ex * across };
}

export interface FieldCrew {
  /** Where controls and stakes really are. */
  readonly at: ReadonlyMap<string, Place>;
  /** A tape between two marks, read to its step. */
  readonly read: (stake: string, from: string) => MeasuredReading;
}

/** Sets every stake of the plan. */
export function fieldCrew(plan: StakePlan, seed: number, slips: readonly Slip[] = []): FieldCrew {
  const random = seededRandom(seed);
  const { tape } = plan.spec;
  const scale = 1 + (tape.scaleSigma ?? 0) * random.normal();
  const at = new Map<string, Place>();
  for (const c of plan.controls) {
    if (c.kind !== 'fixed') continue;
    const sigma = Math.sqrt(c.covariance.xx) / 12;
    at.set(c.id, { x: c.at.x + sigma * random.normal(), y: c.at.y + sigma * random.normal() });
  }
  const pull = (ft: number) => (ft + tapeSigma(tape, ft) * random.normal()) * scale;
  for (const stake of plan.stakes) {
    const mine = slips.filter((s) => s.stake === stake.id);
    const set = place(stake.set, mine, at, pull, random);
    const kick = mine.find((s) => s.kind === 'kicked');
    at.set(stake.id, {
      x: set.x + (kick?.inches.x ?? 0) / 12,
      y: set.y + (kick?.inches.y ?? 0) / 12,
    });
  }
  let line = 1;
  const read = (stake: string, from: string): MeasuredReading => {
    const true_ = apart(at.get(stake)!, at.get(from)!);
    const wrong = slips.find((s) => s.kind === 'read' && s.stake === stake && s.from === from);
    const by = wrong?.kind === 'read' ? wrong.inches / 12 : 0;
    const shown = true_ / scale + tapeSigma(tape, true_) * random.normal() + by;
    const ft = Math.round(shown * 48) / 48;
    return { line: ++line, stake, from, ft, text: `${ft}`, note: '' };
  };
  return { at, read };
}

type Set = StakePlan['stakes'][number]['set'];

function place(
  set: Set,
  slips: readonly Slip[],
  at: ReadonlyMap<string, Place>,
  pull: (ft: number) => number,
  random: Random,
): Place {
  const extra = (tie: 1 | 2) =>
    slips.reduce((sum, s) => (s.kind === 'tie' && s.tie === tie ? sum + s.inches / 12 : sum), 0);
  if (set.method === 'ties') return placeByTies(set, slips, at, pull, extra);
  if (set.method === 'line') {
    const [a, b] = [at.get(set.tie1.from)!, at.get(set.lineTo)!];
    const along = pull(set.tie1.reading.ft + extra(1)) * (set.side === 'T' ? 1 : -1);
    const sighting = Math.hypot(0.25 / 12, along / 4000) * random.normal();
    return beside(a, b, along, sighting);
  }
  const from = set.method === 'chord' ? set.chordFrom : set.tie1.from;
  const [a, b] = [at.get(held(slips, 1, from))!, at.get(held(slips, 2, set.lineTo))!];
  const pulled = set.method === 'chord' ? apart(a, b) / 2 : pull(set.tie1.reading.ft + extra(1));
  const along = slips.some((s) => s.kind === 'end') ? apart(a, b) - pulled : pulled;
  const wrong = slips.some((s) => s.kind === 'side') ? -1 : 1;
  const across = pull(set.offset.ft + extra(2)) * (set.side === 'L' ? 1 : -1) * wrong;
  const skew = set.offset.ft * ((0.5 * Math.PI) / 180) * random.normal();
  return beside(a, b, along + skew, across);
}

function placeByTies(
  set: Extract<Set, { method: 'ties' }>,
  slips: readonly Slip[],
  at: ReadonlyMap<string, Place>,
  pull: (ft: number) => number,
  extra: (tie: 1 | 2) => number,
): Place {
  const swapped = slips.some((s) => s.kind === 'swap');
  const [d1, d2] = [set.tie1.reading.ft + extra(1), set.tie2.reading.ft + extra(2)];
  const [r1, r2] = [pull(swapped ? d2 : d1), pull(swapped ? d1 : d2)];
  const left = (set.side === 'L') !== slips.some((s) => s.kind === 'side');
  return meet(
    at.get(held(slips, 1, set.tie1.from))!,
    r1,
    at.get(held(slips, 2, set.tie2.from))!,
    r2,
    left,
  );
}

/** Where the first or second end is held: at `meant`, but for a slip. */
function held(slips: readonly Slip[], tie: 1 | 2, meant: string): string {
  for (const s of slips) if (s.kind === 'held-at' && s.tie === tie) return s.at;
  return meant;
}

export function beside(a: Place, b: Place, along: number, across: number): Place {
  const d = apart(a, b);
  const [ex, ey] = [(b.x - a.x) / d, (b.y - a.y) / d];
  return { x: a.x + ex * along - ey * across, y: a.y + ey * along + ex * across };
}
