/** The gallery of patterns, their figures, and recipes of one's own. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { settled, shot, startApp, type App } from './support/app';

const PATTERNS = join(import.meta.dirname, '../../patterns');
const files = readdirSync(PATTERNS);
const straight = JSON.parse(readFileSync(join(PATTERNS, 'straight.json'), 'utf8')) as {
  readonly [key: string]: unknown;
};

let app: App;
let page: Page;
beforeAll(async () => {
  app = await startApp();
  page = await app.open('?new');
  page.setDefaultTimeout(30_000);
  await settled(page);
});
afterAll(() => app.close());

const gallery = () => page.getByRole('region', { name: 'Patterns' });
const openGallery = async () => {
  await page.getByRole('button', { name: 'Choose another pattern' }).click();
  await gallery().waitFor();
};
const take = async (name: string) => {
  await gallery()
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
  await gallery().waitFor({ state: 'detached' });
  await settled(page);
};
const putIn = (name: string, text: string) =>
  page
    .getByLabel('Recipe file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

describe('the gallery', () => {
  test('draws every pattern on the field', async () => {
    await openGallery();
    const pictures = gallery().locator('.picture svg');
    await expect.poll(() => pictures.count(), { timeout: 60_000 }).toBe(files.length);
    expect(await gallery().getByText('▲').count()).toBe(0);
    await shot(page, 'patterns-1440');
    for (const [width, height] of [
      [1024, 768],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      await shot(page, `patterns-${width}`);
      const over = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
      expect(over).toBe(false);
    }
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  test('lays the pattern that is pressed, and undo brings the old one back', async () => {
    await take('Checkerboard Two');
    await page.getByText('mown twice, once across').waitFor();
    await shot(page, 'pattern-checkerboard');
    await page.keyboard.press('Control+z');
    await settled(page);
    await page.getByText('Straight bands', { exact: true }).waitFor();
  });

  test.each(['Arcs about home', 'Sunburst', 'Spiral', 'Waves'])('lays %s', async (name) => {
    await openGallery();
    await take(name);
    await shot(page, `pattern-${name.toLowerCase().replaceAll(' ', '-')}`);
    await page.getByText(name, { exact: true }).waitFor();
  });
});

describe('a recipe of one’s own', () => {
  test('is kept, laid, listed with a way out, and stays in the job', async () => {
    await openGallery();
    await putIn('lazy.json', JSON.stringify({ ...straight, id: 'lazy', name: 'Lazy bands' }));
    await gallery().waitFor({ state: 'detached' });
    await settled(page);
    await page.getByText('Lazy bands', { exact: true }).waitFor();
    await openGallery();
    await gallery().getByRole('button', { name: 'Take lazy.json out' }).click();
    await gallery()
      .getByRole('button', { name: /^Lazy bands/ })
      .waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Back to the design' }).click();
    await page.getByText('Lazy bands', { exact: true }).waitFor();
  });

  test('that is none is refused with the place, and the job stays', async () => {
    await openGallery();
    await putIn('bad.json', JSON.stringify({ ...straight, mowings: [{ guides: 'all' }] }));
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await alert.innerText()).toContain('bad.json: mowings[0].guides');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Back to the design' }).click();
    await page.getByText('Lazy bands', { exact: true }).waitFor();
  });
});
