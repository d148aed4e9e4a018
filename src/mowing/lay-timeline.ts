/** Steps of all machines laid over one clock: what is written as the route. */
import { inches, type Seconds } from '../base/units';
import type { Pose } from './drive';
import type { Step } from './drive-machine';
import { keepApart, standing } from './keep-apart';
import type { Leg, Machine } from './model';

/** What the machines of a team do together, in the order of the team. */
export type Stage = readonly (readonly Step[])[];

/** Machines of one kind; a stage starts when all of them have finished the one before. */
export interface Team {
  readonly machines: readonly Machine[];
  /** Where each waits at first. */
  readonly starts: readonly Pose[];
  readonly stages: readonly Stage[];
}

export interface Stages {
  /** The wide machines before anything is staked. */
  readonly background: Team;
  /** Where all wait for the count; null when nothing is staked. */
  readonly hold: readonly { readonly machine: Machine; readonly at: Pose }[] | null;
  readonly after: readonly Team[];
}

export interface Timeline {
  readonly legs: readonly Leg[];
  /** Times that machines of a team come too near each other, and no wait could help. */
  readonly meetings: number;
}

/**
 * Legs on one clock from the start of the visit: background; the count, which starts for all machines
 * when the wide ones have driven off; then all at once. Sorted by start, wide machines first.
 */
export function layTimeline(stages: Stages, setOutSeconds: Seconds): Timeline {
  const background = clockTeam(stages.background, 0, stages.hold !== null);
  const legs = [...background.legs];
  let start = background.end;
  if (stages.hold) {
    for (const { machine, at } of stages.hold) {
      legs.push(holdLeg(machine, at, start, setOutSeconds));
    }
    start += setOutSeconds;
  }
  const after = stages.after.map((team) => clockTeam(team, start, false));
  legs.push(...after.flatMap((team) => team.legs));
  const sorted = legs.sort((a, b) => a.startS - b.startS);
  return {
    legs: sorted.map((leg, i) => ({ ...leg, seq: i + 1 })),
    meetings: [background, ...after].reduce((n, team) => n + team.meetings, 0),
  };
}

interface Clocked {
  readonly legs: Leg[];
  readonly end: Seconds;
  readonly meetings: number;
}

/** `together`: every machine waits until the last one has finished, after the last stage too. */
function clockTeam({ machines, starts, stages }: Team, from: Seconds, together: boolean): Clocked {
  const at: { x: number; y: number }[] = starts.map((p) => ({ x: p.x, y: p.y }));
  const legs: Leg[] = [];
  let clock = from;
  let meetings = 0;
  stages.forEach((stage, k) => {
    const apart = keepApart(
      stage.map((steps, m) => ({ steps, start: at[m]!, lengthFt: bodyLength(machines[m]!) })),
    );
    meetings += apart.meetings;
    const clocked = apart.steps.map((steps, m) => clockSteps(machines[m]!, steps, clock));
    const end = Math.max(clock, ...clocked.map((own) => endOf(own, clock)));
    const waits = together || k < stages.length - 1;
    clocked.forEach((own, m) => {
      const [machine, last] = [machines[m]!, own[own.length - 1]];
      if (last) at[m] = last.points[last.points.length - 1]!;
      legs.push(...own);
      const done = endOf(own, clock);
      if (!waits || done >= end) return;
      const next = { phase: last?.phase ?? 'carry', widthFt: inches(machine.cutWidthIn) } as const;
      legs.push(...clockSteps(machine, [standing(next, at[m]!, end - done)], done));
    });
    clock = end;
  });
  return { legs, end: clock, meetings };
}

const bodyLength = (machine: Machine): number =>
  inches(machine.frontOverhangIn + machine.rearOverhangIn);

function clockSteps(machine: Machine, steps: readonly Step[], from: Seconds): Leg[] {
  let startS = from;
  return steps.map((step) => {
    const leg = { ...step, seq: 0, machine: machine.id, visit: 1, startS };
    startS += step.seconds;
    return leg;
  });
}

const endOf = (legs: readonly Leg[], otherwise: Seconds): Seconds => {
  const last = legs[legs.length - 1];
  return last ? last.startS + last.seconds : otherwise;
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
