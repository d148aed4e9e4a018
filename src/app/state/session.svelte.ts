/**
 * The job in hand: its history, its newest plan and what is wrong with it. The screen reads from here
 * and changes the job only through `edit`, the drag verbs and the openers.
 */
import type { Problem, Result } from '../../base/result';
import type { PlanStep } from '../../plan/make-plan';
import type { Plan } from '../../plan/model';
import type { Edit } from '../../project/edits';
import { defaultProject } from '../../project/default-project';
import type { Project } from '../../project/model';
import { writeProject } from '../../project/write-project';
import { connectEngine, type EngineClient } from '../../worker/client';
import { brokenProblem } from '../../worker/protocol';
import { DEMOS, demoDrawings, demoText, type DemoId } from '../io/demos';
import { keep, kept, type Kept } from '../io/storage';
import EngineWorker from '../../worker/engine.worker?worker';
import { UndoStack } from './undo.svelte';
import { STAGES, type Stage } from './stages';
import { view } from './view.svelte';

type Files = Readonly<Record<string, string>>;

class Session {
  readonly undo = new UndoStack();
  /** Last good plan: stays on screen while a newer one is made or cannot be made. */
  plan = $state.raw<Plan | null>(null);
  /** What is wrong with the job as it now stands. */
  problems = $state.raw<readonly Problem[]>([]);
  /** True when the newest input has no plan and an older plan is shown. */
  stale = $state(false);
  working = $state(true);
  step = $state<PlanStep | null>(null);
  /** Problems of a file that could not be opened; the job is untouched. */
  refused = $state.raw<readonly Problem[]>([]);
  /** When the job was last kept, epoch ms; null while unkept. */
  keptAt = $state<number | null>(null);
  keepFailed = $state(false);
  /** Counts plans, for whoever draws from them. */
  planCount = $state(0);

  private revision = 0;
  private client: EngineClient | null = null;
  private keepTimer: ReturnType<typeof setTimeout> | undefined;

  get project(): Project | null {
    return this.undo.present;
  }

  connect(worker: Worker): void {
    this.client = connectEngine(worker, (step) => (this.step = step));
    worker.onerror = (event) => {
      this.working = false;
      this.stale = true;
      this.problems = [brokenProblem('engine', event.message || 'it could not be loaded')];
    };
  }

  get engine(): EngineClient {
    if (!this.client) throw new Error('broken invariant: engine asked before it was connected');
    return this.client;
  }

  /** Puts a project on the table, with nothing to undo. */
  open(project: Project, files: Files): void {
    this.undo.start(holdDrawing(project, files));
    this.refused = [];
    this.plan = null;
    this.stale = false;
    view.viewports = {};
    view.stake = null;
    view.pass = null;
    view.passSet = null;
    view.seat = 0;
    this.changed();
  }

  /**
   * One undoable change. A value that makes no sense is refused with its problems and the job stays.
   * `key` joins a run of the same change (a held arrow key) into one step. True when it was taken.
   */
  apply<V>(edit: Edit<V>, value: V, key?: string): boolean {
    const now = this.project;
    if (!now) return false;
    const result = edit.apply(now, value);
    this.refused = result.ok ? [] : result.problems;
    if (result.ok && this.undo.record(edit.label, result.value, key)) this.changed();
    return result.ok;
  }

  beginDrag(label: string): void {
    this.undo.begin(label);
  }

  /** One moment of a drag: the change is made to the job as the drag found it. */
  drag<V>(edit: Edit<V>, value: V): void {
    const base = this.undo.base;
    if (!base || !this.undo.dragging) return;
    const result = edit.apply(base, value);
    if (result.ok && this.undo.update(result.value)) this.replan();
  }

  endDrag(): void {
    this.undo.commit();
    this.changed();
  }

  abortDrag(): void {
    this.undo.abort();
    this.changed();
  }

  goBack(): void {
    if (this.undo.back()) this.changed();
  }

  goForward(): void {
    if (this.undo.forward()) this.changed();
  }

  private changed(): void {
    this.replan();
    this.keptAt = null;
    this.keepSoon();
  }

  /** Keeps the job, and the stage that is open, once the hand rests. */
  keepSoon(): void {
    clearTimeout(this.keepTimer);
    this.keepTimer = setTimeout(() => void this.keepNow(), 300);
  }

  async keepNow(): Promise<void> {
    const project = this.project;
    if (!project) return;
    clearTimeout(this.keepTimer);
    const now: Kept = {
      text: writeProject(project),
      stage: view.stage,
      at: Date.now(),
    };
    try {
      await keep('job', now);
      this.keptAt = now.at;
      this.keepFailed = false;
    } catch {
      this.keepFailed = true;
    }
  }

  private replan(): void {
    const project = this.project;
    if (!project) return;
    const mine = ++this.revision;
    this.working = true;
    void this.engine.plan({ project }).then((result) => this.planned(mine, result));
  }

  private planned(revision: number, result: Result<Plan> | null): void {
    if (result === null) return;
    const newest = revision === this.revision;
    if (result.ok) {
      this.plan = result.value;
      this.planCount += 1;
    }
    if (!newest) return;
    this.problems = result.problems;
    this.stale = !result.ok;
    this.working = false;
    this.step = null;
  }

  /** Opens a saved project; a file that cannot be read leaves the job as it is. */
  async openText(text: string, where: string, files: Files = {}): Promise<boolean> {
    const result = await this.engine.ask('read', { text, where });
    if (!result.ok) {
      this.refused = result.problems;
      return false;
    }
    this.open(result.value, { ...files });
    this.refused = result.problems;
    return true;
  }

  async openDemo(id: DemoId): Promise<boolean> {
    const text = await demoText(id);
    if (text === undefined) return false;
    return this.openText(text, `demo ${id}`, await demoDrawings());
  }

  /** A fresh job on the book's ground, nothing on the grass yet. */
  openNew(): void {
    this.open({ ...defaultProject(), art: null }, {});
    view.open('design');
  }

  saveText(): string {
    return this.project ? writeProject(this.project) : '';
  }

  refuse(...problems: readonly Problem[]): void {
    this.refused = problems;
  }
}

/** The project with its drawing inside, so that a saved or kept job needs no other file. */
function holdDrawing(project: Project, files: Files): Project {
  const source = project.art?.source;
  if (!project.art || source?.kind !== 'svg' || source.svg !== undefined) return project;
  const svg = files[source.file];
  return svg === undefined
    ? project
    : { ...project, art: { ...project.art, source: { ...source, svg } } };
}

export const session = new Session();

const isStage = (value: unknown): value is Stage => STAGES.includes(value as Stage);

/** `?demo=word`, `?demo=emblem`, `?new`; else the kept job; else the first demo. */
export async function startSession(query: URLSearchParams): Promise<void> {
  session.connect(new EngineWorker());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void session.keepNow();
  });
  const stage = query.get('stage');
  const demo = DEMOS.find((d) => d.id === query.get('demo'));
  if (query.has('new')) session.openNew();
  else if (demo) await session.openDemo(demo.id);
  else if (!(await restore()) && !(await session.openDemo('word'))) session.openNew();
  if (isStage(stage)) view.open(stage);
}

async function restore(): Promise<boolean> {
  try {
    const job = await kept<Kept>('job');
    if (!job || !(await session.openText(job.text, 'the job kept in this browser'))) {
      return false;
    }
    if (isStage(job.stage)) view.open(job.stage);
    return true;
  } catch {
    return false;
  }
}
