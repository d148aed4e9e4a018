import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page } from 'playwright-core';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fieldText, settled, shot, SHOTS, startApp, type App } from './support/app';

let app: App;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

/** Every click and every typed entry is one step; each leaves a picture. */
class Script {
  readonly steps: string[] = [];
  constructor(private readonly page: Page) {}
  async step(say: string, act: () => Promise<unknown>): Promise<void> {
    await act();
    this.steps.push(say);
    await shot(this.page, `journey-${String(this.steps.length).padStart(2, '0')}`);
  }
}

async function pdfText(bytes: Uint8Array): Promise<{ pages: number; text: string }> {
  const doc = await getDocument({ data: bytes, useSystemFonts: false, verbosity: 0 }).promise;
  const parts: string[] = [];
  for (let i = 1; i <= doc.numPages; i++) {
    const content = await (await doc.getPage(i)).getTextContent();
    parts.push(content.items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  return { pages: doc.numPages, text: parts.join('\n') };
}

async function downloaded(page: Page, click: () => Promise<void>): Promise<Uint8Array> {
  const [file] = await Promise.all([page.waitForEvent('download', { timeout: 120_000 }), click()]);
  return new Uint8Array(readFileSync(await file.path()));
}

test('from an empty start to the packet of a new word', async () => {
  const page = await app.open('?new');
  await settled(page);
  const script = new Script(page);
  await script.step('Type the word "Quails"', () => page.getByLabel('The word').fill('Quails'));
  await script.step('Press Enter', () => page.getByLabel('The word').press('Enter'));
  await settled(page);
  await script.step('Type the width 110', async () => {
    await page.getByLabel('Width', { exact: true }).fill('110');
    await page.getByLabel('Width', { exact: true }).press('Enter');
  });
  await settled(page);
  expect(await fieldText(page, 'Width')).toBe('110′ 0″');
  await script.step('Open the job', () =>
    page.getByRole('button', { name: 'New, open, save' }).click(),
  );
  await script.step('Name the job', async () => {
    await page.getByLabel('Job', { exact: true }).fill('Quails, home opener');
    await page.getByLabel('Job', { exact: true }).press('Tab');
  });
  await script.step('Close the job', () => page.getByRole('button', { name: 'Close' }).click());
  await settled(page);
  await script.step('Open Packet', () =>
    page
      .getByRole('button', { name: /Packet/ })
      .first()
      .click(),
  );
  let pdf: Uint8Array = new Uint8Array();
  await script.step('Download the packet', async () => {
    pdf = await downloaded(page, () =>
      page.getByRole('button', { name: 'Download the packet (PDF)' }).click(),
    );
  });
  writeFileSync(
    join(SHOTS, 'journey.json'),
    JSON.stringify({ count: script.steps.length, steps: script.steps }, null, 2),
  );
  // A new word may cost no more than ten actions, typing included.
  expect(script.steps.length).toBeLessThanOrEqual(10);

  const stakes = await page.locator('[data-cell="stakes"] strong').innerText();
  const zip = unzipSync(
    await downloaded(page, () =>
      page.getByRole('button', { name: 'Download all files (zip)' }).click(),
    ),
  );
  expect(Object.keys(zip)).toEqual(
    expect.arrayContaining([
      'packet.pdf',
      'project.json',
      'controls.csv',
      'stakes.csv',
      'outline.csv',
      'route.json',
      'design.json',
      'hours.json',
      'summary.json',
      'plan.svg',
      'plan.dxf',
    ]),
  );
  const rows = new TextDecoder().decode(zip['stakes.csv']).trim().split(/\r?\n/).length - 1;
  expect(stakes).toBe(`${rows} stakes`);
  const read = await pdfText(pdf);
  expect(read.text).toContain('Quails');
  expect(read.pages).toBeGreaterThan(5);
  await page.context().close();
});
