import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { settled, shot, startApp, type App } from './support/app';

let app: App;
let page: Page;
beforeAll(async () => {
  app = await startApp();
  page = await app.open('?new');
  await settled(page);
});
afterAll(() => app.close());

async function give(name: string, mimeType: string, body: Buffer | string): Promise<void> {
  const picker = page.getByLabel('Project file or drawing');
  if ((await picker.count()) === 0) {
    await page.getByRole('button', { name: 'New, open, save' }).click();
  }
  await picker.setInputFiles({ name, mimeType, buffer: Buffer.from(body) });
}

const alertText = () => page.getByRole('alert').first().innerText();
/** The plan on screen: how many were made, and what the status line says of it. */
const planNow = async () => ({
  plans: await page.locator('[data-plans]').getAttribute('data-plans'),
  mowable: await page.locator('[data-cell="mowable"] .detail').textContent(),
});

test('a broken project names the file and the place, and the job stays', async () => {
  const before = await planNow();
  await give(
    'torn.json',
    'application/json',
    '{"format": "swathscribe-project", "version": 1,\n "name": ',
  );
  await expect.poll(alertText).toMatch(/torn\.json/);
  expect(await alertText()).toMatch(/Your job is as it was/);
  expect(await planNow()).toEqual(before);
});

test('a project of an unknown version is refused by name', async () => {
  await give('later.json', 'application/json', '{"format": "swathscribe-project", "version": 99}');
  await expect.poll(alertText).toMatch(/later\.json.*version/is);
});

test('a file of another kind is refused', async () => {
  await give('photo.png', 'image/png', 'not a drawing');
  await expect.poll(alertText).toMatch(/photo\.png: this is neither/);
});

test('a 20 MB drawing is refused before it is read', async () => {
  const before = await planNow();
  const path = '<path d="M0 0h1v1z"/>'.repeat(1_000_000);
  await give('huge.svg', 'image/svg+xml', `<svg xmlns="http://www.w3.org/2000/svg">${path}</svg>`);
  await expect.poll(alertText).toMatch(/huge\.svg: the file is 21 MB/);
  expect(await planNow()).toEqual(before);
});

test('a drawing with nothing in it keeps the last good plan, and undo puts it right', async () => {
  const before = await planNow();
  await give(
    'blank.svg',
    'image/svg+xml',
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"/>',
  );
  await settled(page);
  await expect
    .poll(() => page.getByText('The drawing shows the last good plan.').count())
    .toBeGreaterThan(0);
  expect(await alertText()).toMatch(/blank\.svg/);
  expect(await page.locator('[data-cell="problems"] strong').innerText()).toMatch(
    /[1-9]\d* problem/,
  );
  expect(await planNow()).toEqual(before);
  await shot(page, 'bad-drawing');
  await page.getByRole('button', { name: 'Undo the change' }).click();
  await settled(page);
  await expect.poll(() => page.getByText('The drawing shows the last good plan.').count()).toBe(0);
});

test('a good drawing dropped on the window is laid on the grass', async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><circle cx="20" cy="20" r="18"/></svg>';
  const transfer = await page.evaluateHandle((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], 'disc.svg', { type: 'image/svg+xml' }));
    return data;
  }, svg);
  await page.dispatchEvent('.target', 'drop', { dataTransfer: transfer });
  await page.getByText('disc.svg').first().waitFor();
  await settled(page);
  expect(await page.getByLabel('Width', { exact: true }).inputValue()).toMatch(/′/);
  await expect
    .poll(() => page.locator('[data-cell="stakes"] strong').innerText())
    .toMatch(/^\d+ stakes?$/);
});

test('absurd figures are refused at the field', async () => {
  const width = page.getByLabel('Width', { exact: true });
  const was = await width.inputValue();
  for (const entry of ['0', '-20', '5000']) {
    await width.fill(entry);
    await width.press('Enter');
    await page.getByText(/out of range/).waitFor();
    await width.press('Escape');
    expect(await width.inputValue()).toBe(was);
  }
});
