/** What is being looked at: stage, selection, viewports. Never saved, never undone. */
import type { Viewport } from '../plan/viewport';

import { type Stage } from './stages';

class View {
  stage = $state<Stage>('design');
  /** Stake in hand. */
  stake = $state<string | null>(null);
  /** Pass in hand: machine and number. */
  pass = $state<{ machine: string; number: number } | null>(null);
  /** Machine and phase whose passes are drawn; null for the first there is. */
  passSet = $state<string | null>(null);
  seat = $state(0);
  /** Seconds into the visit at which the drive is shown; null for the whole plan. */
  driveAt = $state<number | null>(null);
  /** The drive is being played. */
  playing = $state(false);
  /** How many times as fast as it is driven. */
  playSpeed = $state(40);
  /** Ledger row whose "where it comes from" stands open. */
  how = $state<string | null>(null);
  /** The handle or figure in hand, so that field and plan light up together. */
  inHand = $state<string | null>(null);
  /** The patterns to choose from stand on the sheet of the design. */
  galleryOpen = $state(false);
  jobOpen = $state(false);
  problemsOpen = $state(false);
  /** Where each stage's plan was left; absent: fitted. */
  viewports = $state.raw<Partial<Record<Stage, Viewport>>>({});

  open(stage: Stage): void {
    this.stage = stage;
    this.how = null;
    this.inHand = null;
    this.problemsOpen = false;
    this.galleryOpen = false;
    this.playing = false;
  }

  setViewport(stage: Stage, viewport: Viewport | null): void {
    const next = { ...this.viewports };
    if (viewport) next[stage] = viewport;
    else delete next[stage];
    this.viewports = next;
  }
}

export const view = new View();
