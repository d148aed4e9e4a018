import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { settled, shot, startApp, type App } from './support/app';

let app: App;
beforeAll(async () => {
  app = await startApp();
});
afterAll(() => app.close());

const section = (page: Page) => page.locator('section:has(> header h2:text-is("Guide lines"))');

const faults = async (page: Page) =>
  (await new AxeBuilder({ page }).analyze()).violations.map((v) => v.id);

/** Text of the section that sticks out of its column. */
const cut = (page: Page) =>
  section(page)
    .locator('p, li *, label, .text')
    .evaluateAll((all) =>
      all
        .filter((e) => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)
        .map((e) => e.outerHTML.slice(0, 80)),
    );

test('guide strings: listed, taken in hand, fewer for a looser tolerance, none on request', async () => {
  const page = await app.open('?demo=emblem&stage=passes', { width: 1440, height: 900 });
  await settled(page);
  const rows = section(page).locator('li button');
  const before = await rows.count();
  expect(before).toBeGreaterThan(3);
  await rows.nth(1).click();
  expect(await page.locator('.hand .number').innerText()).toBe('2');
  await section(page).scrollIntoViewIfNeeded();
  expect(await cut(page)).toEqual([]);
  expect(await faults(page)).toEqual([]);
  await shot(page, 'guides-1440');
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Passes', exact: true }).click();
  const line = page.locator('.line', { hasText: 'String' });
  expect(await line.innerText()).toMatch(/G\d+ to G\d+ at your (left|right), 3′\s7¼″ off the/);
  expect(await faults(page)).toEqual([]);
  await shot(page, 'guides-390');
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.getByLabel('Band edges within', { exact: true }).fill('24');
  await page.getByLabel('Band edges within', { exact: true }).press('Enter');
  await settled(page);
  expect(await rows.count()).toBeLessThan(before);
  await section(page).getByText('none', { exact: true }).last().click();
  await settled(page);
  expect(await rows.count()).toBe(0);
  await page.keyboard.press('Control+z');
  await settled(page);
  expect(await rows.count()).toBeGreaterThan(0);
}, 180_000);
