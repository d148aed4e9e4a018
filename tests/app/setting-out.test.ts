import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStage, settled, shot, startApp, type App } from './support/app';

let app: App;
let page: Page;
beforeAll(async () => {
  app = await startApp();
  page = await app.open('?demo=emblem&stage=stakes');
  await settled(page);
});
afterAll(() => app.close());

async function choose(label: string, option: string): Promise<void> {
  const group = page.getByRole('group', { name: label, exact: true });
  await group.getByRole('radio', { name: option, exact: true }).check({ force: true });
  await settled(page);
}

/** Stakes of the short tape, by the list of rounds. */
async function shortStakes(): Promise<number> {
  const row = page.locator('tr', { hasText: 'Short tape' });
  return (await row.count()) === 0 ? 0 : Number(await row.locator('td').nth(2).innerText());
}

/** Whether the packet, once it is set anew, has a sheet of the grid. */
async function hasGridSheet(want: boolean): Promise<void> {
  await openStage(page, 'Packet');
  const pages = page.getByRole('group', { name: 'Pages' }).getByRole('button');
  const titles = async () => (await pages.allInnerTexts()).join('\n');
  await expect.poll(async () => /grid/i.test(await titles()), { timeout: 20_000 }).toBe(want);
  await openStage(page, 'Stakes');
}

test('corners squared by eye leave fewer stakes to the short tape', async () => {
  const before = await shortStakes();
  expect(before).toBeGreaterThan(10);
  await choose('Square corners by', 'eye');
  expect(await shortStakes()).toBeLessThan(before);
  await choose('Square corners by', 'square');
  expect(await shortStakes()).toBe(before);
});

test('a grid sheet is printed on request, with strings as far apart as asked', async () => {
  await hasGridSheet(false);
  await choose('Grid sheet as well', 'print');
  await page.getByLabel('Grid strings apart', { exact: true }).fill("4' 0");
  await page.keyboard.press('Enter');
  await settled(page);
  await hasGridSheet(true);
  await choose('Grid sheet as well', 'none');
  await hasGridSheet(false);
});

test('a steel tape brings its corrections, a class its scale; undo takes them back', async () => {
  const on = (label: string, option: string) =>
    page
      .getByRole('group', { name: label, exact: true })
      .getByRole('radio', { name: option, exact: true })
      .isChecked();
  await choose('Steel corrections', 'print');
  expect(await page.getByLabel("Tape's temperature", { exact: true }).count()).toBe(1);
  await choose('The other tape', 'steel, 300 ft');
  await choose('Tape class', 'I');
  await shot(page, 'setting-out-steel');
  expect([await on('The other tape', 'steel, 300 ft'), await on('Tape class', 'I')]).toEqual([
    true,
    true,
  ]);
  for (let k = 0; k < 3; k++) await page.keyboard.press('Control+z');
  await settled(page);
  expect(await page.getByLabel("Tape's temperature", { exact: true }).count()).toBe(0);
  expect([await on('The other tape', 'alike'), await on('Tape class', 'III')]).toEqual([
    true,
    true,
  ]);
});
