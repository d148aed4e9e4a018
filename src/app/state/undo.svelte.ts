/** The job's history as the screen holds it: `project/history` behind one reactive cell. */
import {
  abort,
  begin,
  commit,
  record,
  redo,
  redoLabel,
  startHistory,
  undo,
  undoLabel,
  update,
  type History,
} from '../../project/history';
import type { Project } from '../../project/model';

export class UndoStack {
  private history = $state.raw<History | null>(null);

  get present(): Project | null {
    return this.history?.present ?? null;
  }

  /** The project as a drag found it; the present one when nothing is being dragged. */
  get base(): Project | null {
    return this.history?.open?.before ?? this.present;
  }

  /** Label of the step that undo would take back, or null. */
  get backLabel(): string | null {
    return this.history && undoLabel(this.history);
  }

  get forwardLabel(): string | null {
    return this.history && redoLabel(this.history);
  }

  get dragging(): boolean {
    return this.history?.open != null;
  }

  start(project: Project): void {
    this.history = startHistory(project);
  }

  record(label: string, project: Project, key?: string): boolean {
    return this.step((h) => record(h, label, project, key));
  }

  begin(label: string): void {
    this.step((h) => begin(h, label));
  }

  update(project: Project): boolean {
    return this.step((h) => update(h, project));
  }

  commit(): boolean {
    return this.step(commit);
  }

  abort(): boolean {
    return this.step(abort);
  }

  back(): boolean {
    return this.step(undo);
  }

  forward(): boolean {
    return this.step(redo);
  }

  /** Whether anything changed. */
  private step(change: (h: History) => History): boolean {
    if (!this.history) return false;
    const next = change(this.history);
    if (next === this.history) return false;
    this.history = next;
    return true;
  }
}
