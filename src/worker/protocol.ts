/** What the screen and the engine's worker say to each other: plain data only. */
import type { Audit } from '../audit/model';
import type { Problem, Result } from '../base/result';
import type { PlanStep } from '../plan/make-plan';
import type { PatternSpec, Recipe } from '../pattern/model';
import type { Plan } from '../plan/model';
import type { PatternPreview } from '../plan/preview-pattern';
import type { Project } from '../project/model';
import type { Sheet } from '../sheets/marks';
import type { Picture } from '../view/model';

/** Operations by name: what goes in, what comes back. */
export interface Operations {
  readonly read: {
    readonly args: { readonly text: string; readonly where: string };
    readonly value: Project;
  };
  /** Makes the plan and keeps it in the worker for the operations below. */
  readonly plan: {
    readonly args: { readonly project: Project };
    readonly value: Plan;
  };
  /** Needs no plan. */
  readonly recipe: {
    readonly args: { readonly text: string; readonly where: string };
    readonly value: Recipe;
  };
  readonly preview: {
    readonly args: { readonly project: Project; readonly pattern: PatternSpec };
    readonly value: PatternPreview;
  };
  /** Of the plan made last. */
  readonly packet: {
    readonly args: Record<string, never>;
    readonly value: Uint8Array<ArrayBuffer>;
  };
  /** The packet's sheets as marks, for the screen. */
  readonly sheets: { readonly args: Record<string, never>; readonly value: readonly Sheet[] };
  readonly files: {
    readonly args: Record<string, never>;
    readonly value: Readonly<Record<string, string | Uint8Array>>;
  };
  /** The phone page as one file, from the page as built. */
  readonly crew: { readonly args: { readonly page: string }; readonly value: string };
  /** Readings made on the field against the plan made last, and the files that this leaves. */
  readonly audit: {
    readonly args: { readonly text: string; readonly where: string };
    readonly value: { readonly audit: Audit; readonly files: Readonly<Record<string, string>> };
  };
  /** The outline's sheets from where the stakes of the plan made last stand, as PDF. */
  readonly asSet: {
    readonly args: { readonly audit: Audit };
    readonly value: Uint8Array<ArrayBuffer>;
  };
  readonly seat: {
    readonly args: { readonly seat: string; readonly width: number; readonly height: number };
    readonly value: Picture;
  };
}

export type OperationName = keyof Operations;

export interface Request<N extends OperationName = OperationName> {
  readonly id: number;
  readonly operation: N;
  readonly args: Operations[N]['args'];
}

export interface Reply<N extends OperationName = OperationName> {
  readonly id: number;
  readonly result: Result<Operations[N]['value']>;
}

/** Sent while a plan is being made: the step that has just begun. */
export interface Progress {
  readonly id: number;
  readonly step: PlanStep;
}

/** For a promise broken inside the engine: shown, never swallowed. */
export function brokenProblem(where: string, error: unknown): Problem {
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'engine-stopped',
    where,
    what: `the plan could not be worked out: ${what}`,
    fix: 'undo the last change; the work is kept',
    severity: 'error',
  };
}
