/** Moves the drive: plays it, steps it, and lets the pass in hand follow the machine. */
import type { Seconds } from '../../base/units';
import type { Plan } from '../../plan/model';
import { session } from '../state/session.svelte';
import { view } from '../state/view.svelte';
import { alongOf, clockOf, type DriveAxis } from './drive-axis';
import { driveOf, followed, machinesNow, passBeside, type PassTime } from './drive-of';

export const SPEEDS = [10, 40, 200] as const;

/** A step by arrow key, seconds of driving. */
const STEP_S = 10;

/** Shows the drive at `clockS`; the pass that is then mown, or driven to, comes in hand. */
export function showAt(plan: Plan, clockS: Seconds): void {
  const drive = driveOf(plan);
  view.driveAt = Math.min(drive.axis.endS, Math.max(0, clockS));
  const lead = followed(machinesNow(drive, view.driveAt), view.pass?.machine ?? null);
  const time = drive.passes.find((p) => p.machine === lead?.machine.id && p.number === lead.pass);
  if (time) takeInHand(time);
  else view.pass = null;
}

function takeInHand({ machine, number, set }: PassTime): void {
  if (view.passSet !== set.id) view.passSet = set.id;
  if (view.pass?.number !== number || view.pass.machine !== machine)
    view.pass = { machine, number };
}

/** Shows the drive at the start of the set in hand. */
export function showSet(plan: Plan, set: string): void {
  const first = driveOf(plan).passes.find((p) => p.set.id === set);
  if (!first) return;
  view.pass = { machine: first.machine, number: first.number };
  showAt(plan, first.fromS);
}

/** A step along the line, the count drawn short. */
export function stepDrive(plan: Plan, by: 1 | -1): void {
  view.playing = false;
  const { axis } = driveOf(plan);
  showAt(plan, clockOf(axis, alongOf(axis, view.driveAt ?? 0) + by * STEP_S));
}

/** To the start of the pass after, or before, of the machine in hand; else of any. */
export function stepPass(plan: Plan, by: 1 | -1): void {
  view.playing = false;
  const drive = driveOf(plan);
  const at = view.driveAt ?? 0;
  const machine = view.pass?.machine ?? null;
  const beside = passBeside(drive, machine, at, by) ?? passBeside(drive, null, at, by);
  if (!beside) return;
  takeInHand(beside);
  showAt(plan, beside.fromS);
}

/** Leaves the drive: every pass of the set in hand is drawn again. */
export function wholePlan(): void {
  view.playing = false;
  view.driveAt = null;
}

export function togglePlay(plan: Plan): void {
  if (view.playing) view.playing = false;
  else play(plan);
}

/** Plays from where the drive stands, or from the pass in hand; from the start when it was at its end. */
function play(plan: Plan): void {
  const loop = ++newest;
  const drive = driveOf(plan);
  const hand = drive.passes.find(
    (p) => p.machine === view.pass?.machine && p.number === view.pass.number,
  );
  const from = view.driveAt ?? hand?.fromS ?? 0;
  showAt(plan, from >= drive.axis.endS ? 0 : from);
  view.playing = true;
  let before: number | null = null;
  const frame = (now: number): void => {
    if (loop !== newest || !view.playing) return;
    if (view.driveAt === null || session.plan !== plan) {
      view.playing = false;
      return;
    }
    const passed = before === null ? 0 : Math.min(LONGEST_FRAME_MS, now - before) / 1000;
    before = now;
    const pace = isCounting(drive.axis, view.driveAt) ? HOLD_PACE : 1;
    const along = alongOf(drive.axis, view.driveAt) + passed * view.playSpeed * pace;
    showAt(plan, clockOf(drive.axis, along));
    if (view.driveAt >= drive.axis.endS) view.playing = false;
    else requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

/** Nobody wants to watch the count: the line is played this much faster there. */
const HOLD_PACE = 6;

const isCounting = ({ hold }: DriveAxis, clockS: Seconds): boolean =>
  hold !== null && clockS >= hold.fromS && clockS < hold.toS;

/** The play that was started last; an older one ends. */
let newest = 0;

/** A page that was asleep goes on from where it was. */
const LONGEST_FRAME_MS = 100;
