/** Steps of both machines laid over one clock: what is written as the route. */
import type { Seconds } from '../base/units';
import type { Pose } from './drive';
import type { Step } from './drive-machine';
import type { Leg, Machine } from './model';

export interface Stages {
  readonly machines: { readonly wide: Machine; readonly narrow: Machine };
  /** The wide machine before anything is staked. */
  readonly background: readonly Step[];
  /** Where both wait for the count; null when nothing is staked. */
  readonly hold: { readonly wide: Pose; readonly narrow: Pose } | null;
  readonly after: { readonly wide: readonly Step[]; readonly narrow: readonly Step[] };
}

/**
 * Legs on one clock from the start of the visit: background; the count, which starts for both
 * machines when the wide one has driven off; then both at once. Sorted by start, wide machine first.
 */
export function layTimeline(stages: Stages, setOutSeconds: Seconds): Leg[] {
  const { wide, narrow } = stages.machines;
  const background = clocked(wide, stages.background, 0);
  const parked = endOf(background);
  const legs = [...background];
  let start = parked;
  if (stages.hold) {
    legs.push(holdLeg(wide, stages.hold.wide, parked, setOutSeconds));
    legs.push(holdLeg(narrow, stages.hold.narrow, parked, setOutSeconds));
    start += setOutSeconds;
  }
  legs.push(...clocked(wide, stages.after.wide, start));
  legs.push(...clocked(narrow, stages.after.narrow, start));
  return legs.sort((a, b) => a.startS - b.startS).map((leg, i) => ({ ...leg, seq: i + 1 }));
}

function clocked(machine: Machine, steps: readonly Step[], from: Seconds): Leg[] {
  let startS = from;
  return steps.map((step) => {
    const leg = { ...step, seq: 0, machine: machine.id, visit: 1, startS };
    startS += step.seconds;
    return leg;
  });
}

const endOf = (legs: readonly Leg[]): Seconds => {
  const last = legs[legs.length - 1];
  return last ? last.startS + last.seconds : 0;
};

function holdLeg(machine: Machine, at: Pose, startS: Seconds, seconds: Seconds): Leg {
  return {
    seq: 0,
    machine: machine.id,
    visit: 1,
    phase: 'carry',
    kind: 'hold',
    pass: null,
    patch: null,
    widthFt: 0,
    points: [{ x: at.x, y: at.y }],
    startS,
    seconds,
    reels: 'up',
    lays: false,
  };
}
