/**
 * The tasks of one visit in the order of work on the grass: erase; dot the edges and string the
 * guide passes; mow the background; set out; string and swing; transfer to the turf; pull; count, signed; only then graphic, edge and border;
 * clean up. Each stage waits for the whole stage before it, so no task can come before its turn.
 */
import { boxGrow, boxHeight, boxOfPoints, boxWidth } from '../geometry/box';
import type { Machine, PassPlan, Phase } from '../mowing/model';
import type { StakePlan } from '../stakeout/model';
import { isShort } from '../stakeout/ties';
import type { GuideWork } from './guide-work';
import type { LabourSpec, Rate } from './model';
import { outlineDrawnFt } from './outline-length';
import { MINUTES_PER_RATE, RATES, type RateId } from './rates';
import { sizeRate } from './size-rate';

/** A task with its quantity and rate, not yet in time. Minutes = quantity × rate × `minutesPerRate`. */
export interface PlannedTask {
  readonly id: string;
  readonly name: string;
  readonly quantity: number;
  readonly unit: string;
  readonly rate: Rate;
  readonly minutesPerRate: number;
  readonly people: number;
  readonly after: readonly string[];
}

export interface Work {
  readonly spec: LabourSpec;
  /** People at work, `spec.people` or fewer. */
  readonly people: number;
  readonly stakes: StakePlan | null;
  /** Marks and strings before the background; absent: none. */
  readonly guides?: GuideWork;
  readonly provingTapes: number;
  /** Null: only the set-out is wanted. */
  readonly passes: Pick<PassPlan, 'machines' | 'totals'> | null;
}

/** One head to about 60 by 60 ft of outfield (assumption). */
const HEAD_AREA_SQ_FT = 3600;
/** Heads this far outside the stakes matter too. */
const HEAD_MARGIN_FT = 10;
const AFTER_COUNT: readonly Phase[] = ['graphic', 'edge', 'border', 'carry'];

type Draft = Omit<PlannedTask, 'after'>;
type Stage = readonly Draft[];

/** The visit's tasks, each after those that must be finished first. */
export function listTasks(work: Work): PlannedTask[] {
  const prepare = work.stakes
    ? [draft(work, 'prepare', Math.max(1, work.stakes.stakes.length))]
    : [];
  const before = linkStages(beforeStages(work), []);
  const side = linkStages([prepare], []);
  const ready = [...before.last, ...side.last];
  const rest = linkStages([...setOutStages(work), ...afterStages(work)], ready);
  return [...before.tasks, ...side.tasks, ...rest.tasks];
}

function beforeStages(work: Work): Stage[] {
  if (!work.passes) return [];
  return [
    [
      draft(work, 'irrigation-off', 1),
      draft(work, 'check-machines', Math.max(1, machinesUsed(work.passes))),
    ],
    machineDrafts(work, 'erase'),
    [draft(work, 'edge-marks', work.guides?.marks ?? 0)],
    [draft(work, 'guide-strings', work.guides?.turns ?? 0)],
    machineDrafts(work, 'background'),
  ];
}

/** From the first flag to the signed count. */
function setOutStages(work: Work): Stage[] {
  const { stakes } = work;
  if (!stakes) return [];
  const count = (...kinds: string[]): number =>
    stakes.stakes.filter((s) => kinds.includes(s.kind) && !isShort(s.set)).length;
  const heads = headsNear(stakes);
  return [
    [draft(work, 'flag-heads', heads)],
    [draft(work, 'prove-controls', work.provingTapes)],
    [draft(work, 'set-controls', count('control'))],
    [draft(work, 'move-tapes', stakes.rounds.filter((r) => r.from !== null).length)],
    [draft(work, 'set-stakes', count('outline', 'guide'))],
    [draft(work, 'set-pins', count('pin'))],
    [draft(work, 'set-short', shortStakes(stakes))],
    [
      draft(work, 'tie-strings', stakes.strings),
      draft(work, 'pull-strings', stakes.stringFt),
      draft(work, 'draw-swings', stakes.swings),
      draft(work, 'draw-bends', stakes.bends ?? 0),
    ],
    [draft(work, 'transfer', outlineDrawnFt(stakes))],
    [draft(work, 'pull', stakes.stakes.length + heads)],
    [draft(work, 'count', 1)],
  ];
}

const shortStakes = (stakes: StakePlan): number =>
  stakes.stakes.filter((s) => s.kind !== 'control' && isShort(s.set)).length;

function afterStages(work: Work): Stage[] {
  if (!work.passes) return [];
  return [
    ...AFTER_COUNT.map((phase) => machineDrafts(work, phase)),
    [draft(work, 'clean-up', 1), draft(work, 'irrigation-on', 1)],
  ];
}

/** One task per machine of the phase; with two or more, the id says which. */
function machineDrafts(work: Work, phase: Phase): Draft[] {
  const totals = work.passes?.totals.filter((t) => t.phase === phase && t.seconds > 0) ?? [];
  const used = totals.flatMap((t) => work.passes?.machines.find((m) => m.id === t.machine) ?? []);
  return totals.map((total) => {
    const machine = work.passes?.machines.find((m) => m.id === total.machine);
    const taskId = totals.length > 1 && machine ? `${phase}-${calledBy(machine, used)}` : phase;
    return { ...draft(work, phase, total.seconds / 60, taskId), ...machineWords(phase, machine) };
  });
}

/** By role where that tells it from the others, otherwise by its id. */
const calledBy = (machine: Machine, used: readonly Machine[]): string =>
  used.filter((m) => m.role === machine.role).length > 1 ? machine.id : machine.role;

function machineWords(phase: Phase, machine: Machine | undefined): Partial<Draft> {
  return machine ? { name: `${RATES[phase].name}, ${machine.name}`, people: machine.people } : {};
}

const machinesUsed = (passes: Pick<PassPlan, 'totals'>): number =>
  new Set(passes.totals.map((t) => t.machine)).size;

function draft(work: Work, id: RateId, quantity: number, taskId: string = id): Draft {
  const tapeCrew = Math.min(work.stakes?.spec.crew ?? 1, work.people);
  const { rate, people } = sizeRate(id, taskId, work.spec, work.people, tapeCrew);
  const { name, unit } = RATES[id];
  return {
    id: taskId,
    name,
    quantity,
    unit,
    rate,
    minutesPerRate: MINUTES_PER_RATE[rate.unit],
    people,
  };
}

/** Sprinkler heads and valve boxes to be flagged: an estimate by area, until the field is walked. */
export function headsNear(stakes: StakePlan): number {
  const box = boxOfPoints(stakes.stakes.map((s) => s.at));
  if (!box) return 0;
  const area = boxGrow(box, HEAD_MARGIN_FT);
  return Math.ceil((boxWidth(area) * boxHeight(area)) / HEAD_AREA_SQ_FT);
}

/** Each stage after the whole stage before it; empty quantities and empty stages fall out. */
function linkStages(
  stages: readonly Stage[],
  ready: readonly string[],
): { readonly tasks: PlannedTask[]; readonly last: readonly string[] } {
  const tasks: PlannedTask[] = [];
  let last = ready;
  for (const stage of stages) {
    const drafts = stage.filter((d) => d.quantity > 0);
    if (drafts.length === 0) continue;
    const after = last;
    tasks.push(...drafts.map((d) => ({ ...d, after })));
    last = drafts.map((d) => d.id);
  }
  return { tasks, last };
}
