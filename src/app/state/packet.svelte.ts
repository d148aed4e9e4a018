/** The packet of the newest plan: its sheets for the screen, and the downloads. */
import type { Result } from '../../base/result';
import type { Sheet } from '../../sheets/marks';
import { download, fileName } from '../io/download';
import { session } from './session.svelte';

class Packet {
  sheets = $state.raw<readonly Sheet[]>([]);
  /** Plan count that the sheets belong to. */
  of = $state(-1);
  page = $state(0);
  busy = $state<'packet' | 'files' | 'crew' | null>(null);

  async refresh(): Promise<void> {
    const mine = session.planCount;
    if (this.of === mine || !session.plan) return;
    const result = await session.engine.ask('sheets', {});
    if (mine !== session.planCount) return;
    if (result.ok) {
      this.sheets = result.value;
      this.of = mine;
      this.page = Math.min(this.page, result.value.length - 1);
    } else {
      session.refuse(...result.problems);
    }
  }

  private get name(): string {
    return fileName(session.plan?.project.name ?? 'job');
  }

  async downloadPdf(): Promise<void> {
    this.busy = 'packet';
    const result = await session.engine.ask('packet', {});
    this.busy = null;
    if (result.ok) download(`${this.name}-packet.pdf`, result.value, 'application/pdf');
    else session.refuse(...result.problems);
  }

  /** `crew.html` of the newest plan. */
  private async crewPage(): Promise<Result<string>> {
    const { default: page } = await import('virtual:crew-page');
    return session.engine.ask('crew', { page });
  }

  async downloadCrew(): Promise<void> {
    this.busy = 'crew';
    const result = await this.crewPage();
    this.busy = null;
    if (result.ok) download(`${this.name}-crew.html`, result.value, 'text/html');
    else session.refuse(...result.problems);
  }

  /** Packet, every file of the plan and the project itself, in one archive. */
  async downloadAll(): Promise<void> {
    this.busy = 'files';
    const [files, pdf, crew] = await Promise.all([
      session.engine.ask('files', {}),
      session.engine.ask('packet', {}),
      this.crewPage(),
    ]);
    this.busy = null;
    if (!files.ok) return session.refuse(...files.problems);
    if (!pdf.ok) return session.refuse(...pdf.problems);
    if (!crew.ok) return session.refuse(...crew.problems);
    const { strToU8, zipSync } = await import('fflate');
    const entries: Record<string, Uint8Array> = {
      'packet.pdf': pdf.value,
      'project.json': strToU8(session.saveText()),
      'crew.html': strToU8(crew.value),
    };
    for (const [name, data] of Object.entries(files.value)) {
      entries[name] = typeof data === 'string' ? strToU8(data) : data;
    }
    download(`${this.name}.zip`, new Uint8Array(zipSync(entries, { level: 6 })), 'application/zip');
  }
}

export const packet = new Packet();
