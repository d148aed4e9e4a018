/** Short names for the bars of the hours chart, and what kind of work a task is. */
import type { Task } from '../../labour/model';

export type TaskKind = 'stakes' | 'lines' | 'mowing' | 'lift' | 'other';

const SHORT: Readonly<Record<string, readonly [string, TaskKind]>> = {
  'irrigation-off': ['Water off', 'other'],
  'check-machines': ['Machines', 'other'],
  prepare: ['Sort stakes', 'other'],
  erase: ['Erase', 'mowing'],
  background: ['Bands', 'mowing'],
  'flag-heads': ['Heads', 'stakes'],
  'prove-controls': ['Prove', 'stakes'],
  'set-controls': ['Controls', 'stakes'],
  'move-tapes': ['Move tapes', 'stakes'],
  'set-stakes': ['Stakes', 'stakes'],
  'set-pins': ['Pins', 'stakes'],
  'set-short': ['Offsets', 'stakes'],
  'tie-strings': ['Tie strings', 'lines'],
  'pull-strings': ['Strings', 'lines'],
  'draw-swings': ['Swings', 'lines'],
  'draw-bends': ['Bends', 'lines'],
  transfer: ['To the turf', 'lines'],
  pull: ['Lift', 'lift'],
  count: ['Count', 'lift'],
  graphic: ['Graphic', 'mowing'],
  edge: ['Edge', 'mowing'],
  border: ['Laps', 'mowing'],
  carry: ['Carry', 'other'],
  'clean-up': ['Clear', 'other'],
  'irrigation-on': ['Water on', 'other'],
};

const known = (task: Task): readonly [string, TaskKind] =>
  SHORT[task.id] ?? SHORT[task.id.replace(/-(wide|narrow)$/, '')] ?? [task.name, 'other'];

export const shortName = (task: Task): string => known(task)[0];
export const taskKind = (task: Task): TaskKind => known(task)[1];

export interface Bar {
  readonly task: Task;
  /** Rows of people, from 0. */
  readonly row: number;
}

/** Gives every task to as many free people as it takes, the first free ones first. */
export function handOut(tasks: readonly Task[], people: number): readonly Bar[] {
  const free = new Array<number>(people).fill(0);
  const slack = 0.01;
  return [...tasks]
    .filter((t) => t.endMin > t.startMin)
    .sort((a, b) => a.startMin - b.startMin || b.people - a.people)
    .flatMap((task) => {
      const rows = free
        .map((at, row) => ({ at, row }))
        .filter((r) => r.at <= task.startMin + slack)
        .slice(0, task.people)
        .map((r) => r.row);
      for (const row of rows) free[row] = task.endMin;
      return rows.map((row) => ({ task, row }));
    });
}
