/**
 * Undo and redo: whole projects, structure shared. Every step carries the label of the edit that
 * made it. A drag is one step, however many moves it takes.
 */
import type { Project } from './model';
import { writeProject } from './write-project';

/** Steps kept; the oldest fall off. */
export const HISTORY_CAP = 200;

export interface Step {
  /** What the edit did, for the menu: `Undo: Move the graphic`. */
  readonly label: string;
  readonly project: Project;
  /** Edits of one key in a row are one step: a held arrow key, a turned wheel. */
  readonly key?: string;
}

/** A drag or a typed entry under way. */
export interface OpenStep {
  readonly label: string;
  readonly before: Project;
}

export interface History {
  /** Oldest first; each is the project as it was before the labelled edit. */
  readonly past: readonly Step[];
  readonly present: Project;
  /** Next first; each is the project as it was after the labelled edit. */
  readonly future: readonly Step[];
  readonly open: OpenStep | null;
}

/** A history that begins with `project` and has nothing to undo. */
export const startHistory = (project: Project): History => ({
  past: [],
  present: project,
  future: [],
  open: null,
});

/** One finished edit. Unchanged: the same history. An open drag is committed first. */
export function record(history: History, label: string, project: Project, key?: string): History {
  const closed = commit(history);
  if (sameProject(closed.present, project)) return closed;
  const last = closed.past[closed.past.length - 1];
  const joins = key !== undefined && last?.key === key && closed.future.length === 0;
  if (joins) return { ...closed, present: project };
  const step: Step = { label, project: closed.present, ...(key === undefined ? {} : { key }) };
  return {
    past: [...closed.past, step].slice(-HISTORY_CAP),
    present: project,
    future: [],
    open: null,
  };
}

/** Opens a drag. One already open is committed first. */
export function begin(history: History, label: string): History {
  const closed = commit(history);
  return { ...closed, open: { label, before: closed.present } };
}

/** Shows the project at this moment of the drag; without an open drag nothing happens. */
export const update = (history: History, project: Project): History =>
  history.open ? { ...history, present: project } : history;

/** Ends the drag as one step, or as none when it came back to where it began. */
export function commit(history: History): History {
  if (!history.open) return history;
  const { label, before } = history.open;
  if (sameProject(before, history.present)) return { ...history, present: before, open: null };
  const past = [...history.past, { label, project: before }].slice(-HISTORY_CAP);
  return { past, present: history.present, future: [], open: null };
}

/** Ends the drag and puts everything back. */
export const abort = (history: History): History =>
  history.open ? { ...history, present: history.open.before, open: null } : history;

/** Takes back the last step; an open drag is put back first. At the start: the same history. */
export function undo(history: History): History {
  const closed = abort(history);
  const step = closed.past[closed.past.length - 1];
  if (!step) return closed;
  const past = closed.past.slice(0, -1);
  const future = [{ label: step.label, project: closed.present }, ...closed.future];
  return { past, present: step.project, future, open: null };
}

/** Does the last undone step again. Nothing undone: the same history. */
export function redo(history: History): History {
  const closed = abort(history);
  const step = closed.future[0];
  if (!step) return closed;
  const past = [...closed.past, { label: step.label, project: closed.present }];
  return { past, present: step.project, future: closed.future.slice(1), open: null };
}

/** Label of what `undo` would take back, or null. */
export const undoLabel = (history: History): string | null =>
  history.past[history.past.length - 1]?.label ?? null;

/** Label of what `redo` would do again, or null. */
export const redoLabel = (history: History): string | null => history.future[0]?.label ?? null;

const sameProject = (a: Project, b: Project): boolean =>
  a === b || writeProject(a) === writeProject(b);
