/** Readings made on the field and what they say; kept in the browser beside the job. */
import type { Audit } from '../../audit/model';
import { problem, type Problem } from '../../base/result';
import type { Plan } from '../../plan/model';
import { download } from '../io/download';
import { keep, kept } from '../io/storage';
import { session } from './session.svelte';

const KEY = 'audit';
const MOST_BYTES = 2_000_000;
export const READINGS_HEADER = 'stake,from,reading\n';

interface KeptAudit {
  /** Fingerprint of the plan that was set out. */
  readonly plan: string;
  readonly text: string;
  readonly adopted: boolean;
}

class FieldAudit {
  text = $state(READINGS_HEADER);
  audit = $state.raw<Audit | null>(null);
  files = $state.raw<Readonly<Record<string, string>>>({});
  problems = $state.raw<readonly Problem[]>([]);
  /** The outline is drawn between the stakes as they stand. */
  adopted = $state(false);
  working = $state(false);
  private plan: string | null = null;

  /** Called for each new plan: what was kept of this very plan is taken up again. */
  async follow(plan: Plan): Promise<void> {
    if (plan.inputHash === this.plan) return;
    this.plan = plan.inputHash;
    this.clear();
    const before = await kept<KeptAudit>(KEY).catch(() => undefined);
    if (before?.plan !== this.plan) return;
    this.text = before.text;
    await this.run();
    this.adopted = before.adopted && this.audit !== null;
  }

  private clear(): void {
    this.text = READINGS_HEADER;
    this.audit = null;
    this.files = {};
    this.problems = [];
    this.adopted = false;
  }

  async run(where = 'the readings'): Promise<void> {
    this.working = true;
    const result = await session.engine.ask('audit', { text: this.text, where });
    this.working = false;
    this.problems = result.problems;
    this.audit = result.ok ? result.value.audit : null;
    this.files = result.ok ? result.value.files : {};
    if (!result.ok) this.adopted = false;
    await this.keepNow();
  }

  async take(file: File): Promise<void> {
    if (file.size > MOST_BYTES) {
      const fix = 'give the readings of one job';
      this.problems = [problem('readings-huge', file.name, 'the file is far too long', fix)];
      return;
    }
    this.text = await file.text();
    await this.run(file.name);
  }

  /** Draws from the stakes as they stand, or from the plan again. */
  async adopt(adopted: boolean): Promise<void> {
    this.adopted = adopted;
    await this.keepNow();
  }

  /** The outline's sheets from where the stakes stand. */
  async downloadSheets(): Promise<void> {
    if (!this.audit) return;
    const result = await session.engine.ask('asSet', { audit: this.audit });
    if (result.ok) download('outline-as-set.pdf', result.value, 'application/pdf');
    else this.problems = result.problems;
  }

  async forget(): Promise<void> {
    this.clear();
    await this.keepNow();
  }

  private async keepNow(): Promise<void> {
    if (this.plan === null) return;
    const now: KeptAudit = { plan: this.plan, text: this.text, adopted: this.adopted };
    await keep(KEY, now).catch(() => (session.keepFailed = true));
  }
}

export const fieldAudit = new FieldAudit();
