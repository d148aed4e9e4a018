import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleReadings } from '../audit/support/example-readings';
import { demoCrew } from '../support/demo-crew';
import { settled, shot, startApp, type App } from './support/app';

const { stake, text } = exampleReadings(demoCrew('lantern-emblem.json').stakes);
const READINGS = { name: 'day.csv', mimeType: 'text/csv', buffer: Buffer.from(text) };
let app: App;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const verdict = (page: Page) => page.locator('.verdict');

async function faults(page: Page): Promise<string[]> {
  const axe = await new AxeBuilder({ page }).analyze();
  return axe.violations.map((v) => `${v.id}: ${v.nodes[0]?.html}`);
}

/** Text of the audit that sticks out of its column. */
const cut = (page: Page) =>
  page
    .locator('section:has(#readings) :not(.away, input)')
    .evaluateAll((all) =>
      all
        .filter((e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)
        .map((e) => e.outerHTML.slice(0, 80)),
    );

test('readings from a file: verdict, list, marks; drawn from and back; kept across a reload', async () => {
  const page = await app.open('?demo=emblem&stage=stakes', { width: 1440, height: 900 });
  await settled(page);
  await page.locator('input[type=file][accept*=csv]').setInputFiles(READINGS);
  await verdict(page).waitFor({ timeout: 60_000 });
  const said = await verdict(page).innerText();
  expect(said).toMatch(
    new RegExp(`^Stake ${stake}: it stands 1[0-4].*″ farther from \\S+ than its reading`),
  );
  await page.locator('button.link', { hasText: `${stake} ?` }).waitFor();
  expect(await page.locator('svg.audit text', { hasText: `${stake} ?` }).count()).toBe(1);
  expect(await faults(page)).toEqual([]);
  for (const [width, height] of [
    [1440, 900],
    [1024, 768],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    if (width < 600) await page.getByRole('button', { name: 'Audit', exact: true }).click();
    await verdict(page).scrollIntoViewIfNeeded();
    expect(await cut(page)).toEqual([]);
    expect(await faults(page)).toEqual([]);
    await shot(page, `audit-${width}`);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  const sheets = page.waitForEvent('download');
  await page.getByRole('button', { name: 'outline-as-set.pdf' }).click();
  expect((await sheets).suggestedFilename()).toBe('outline-as-set.pdf');
  await page.getByRole('button', { name: 'Draw from stakes as they stand' }).click();
  expect(await page.locator('svg.audit polyline').count()).toBeGreaterThan(20);
  await page.waitForTimeout(300);
  const kept = page.url().replace(/\?.*$/, '?stage=stakes');
  await page.goto(kept);
  await settled(page);
  await verdict(page).waitFor({ timeout: 60_000 });
  expect(await verdict(page).innerText()).toBe(said);
  await page.getByRole('button', { name: 'Undo: draw from the plan' }).click();
  expect(await page.locator('svg.audit polyline').count()).toBe(0);
});

test('typed readings that make no sense are named by line, and forgotten on request', async () => {
  const page = await app.open('?demo=emblem&stage=stakes', { width: 1440, height: 900 });
  await settled(page);
  const [header, first] = text.split('\n');
  await page.locator('#readings').fill(`${header}\n${first}\n999,HP,12' 0",\n`);
  await page.getByRole('button', { name: 'Check stakes' }).click();
  await page.getByText('line 3: there is no stake or control "999"').waitFor();
  await page.getByRole('button', { name: 'Forget the readings' }).click();
  expect(await page.locator('#readings').inputValue()).toBe('stake,from,reading\n');
});
