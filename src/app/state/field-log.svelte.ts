/** Passes that were ticked off on the phone, kept per plan. */
import { SvelteSet } from 'svelte/reactivity';
import { keep, kept } from '../io/storage';

class FieldLog {
  readonly done = new SvelteSet<string>();
  private plan = '';

  /** Turns to the log of a plan; a changed plan starts a fresh one. */
  async open(plan: string): Promise<void> {
    if (plan === this.plan) return;
    this.plan = plan;
    this.done.clear();
    const before = await kept<string[]>(`log ${plan}`);
    if (this.plan === plan) for (const id of before ?? []) this.done.add(id);
  }

  mark(id: string, isDone: boolean): void {
    if (isDone) this.done.add(id);
    else this.done.delete(id);
    void keep(`log ${this.plan}`, [...this.done]);
  }
}

export const fieldLog = new FieldLog();
