import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fieldText, openStage, settled, shot, STAGES, startApp, type App } from './support/app';

let app: App;
let page: Page;
beforeAll(async () => {
  app = await startApp();
  page = await app.open('?demo=word');
  page.setDefaultTimeout(15_000);
  await settled(page);
});
afterAll(() => app.close());

async function axeFaults(): Promise<string[]> {
  // playwright-core's Page is the one the builder drives; its types name the full package.
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
}

/** Text cut off at its box, boxes past the window, or a window that scrolls sideways. */
const overflowing = () =>
  page.evaluate(() => {
    const faults: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) faults.push(`page scrolls ${root.scrollWidth}`);
    const name = (e: Element) =>
      `${e.tagName.toLowerCase()}.${e.getAttribute('class') ?? ''} "${(e.textContent ?? '').trim().slice(0, 40)}"`;
    for (const e of document.querySelectorAll('#app *')) {
      if (!(e instanceof HTMLElement) || e.closest('.away') || e.tagName === 'CANVAS') continue;
      const own = [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent?.trim());
      if (!own && e.tagName !== 'INPUT') continue;
      const style = getComputedStyle(e);
      if (style.visibility === 'hidden' || style.opacity === '0') continue;
      if (e.offsetParent === null) continue;
      const cuts = style.overflowX !== 'visible' || e.tagName === 'INPUT';
      if (cuts && e.scrollWidth > e.clientWidth + 1) faults.push(`cut across: ${name(e)}`);
      if (style.overflowY === 'hidden' && e.scrollHeight > e.clientHeight + 2)
        faults.push(`cut below: ${name(e)}`);
      const box = e.getBoundingClientRect();
      if (box.width > 0 && (box.right > innerWidth + 1 || box.left < -1))
        faults.push(`outside: ${name(e)}`);
    }
    return faults;
  });

describe('every stage', () => {
  test.each(STAGES)(
    '%s has no axe fault and no cut text on the desk and on a small screen',
    async (stage) => {
      await page.setViewportSize({ width: 1440, height: 900 });
      await openStage(page, stage);
      await page.waitForTimeout(250);
      await shot(page, `${stage.toLowerCase()}-1440`);
      expect(await axeFaults()).toEqual([]);
      expect(await overflowing()).toEqual([]);
      await page.setViewportSize({ width: 1024, height: 768 });
      await page.waitForTimeout(250);
      await shot(page, `${stage.toLowerCase()}-1024`);
      expect(await overflowing()).toEqual([]);
      await page.setViewportSize({ width: 820, height: 1180 });
      await page.waitForTimeout(250);
      expect(await overflowing()).toEqual([]);
      await page.setViewportSize({ width: 1440, height: 900 });
    },
  );

  test('the job and the problems are clean too', async () => {
    await page.getByRole('button', { name: 'New, open, save' }).click();
    expect(await axeFaults()).toEqual([]);
    expect(await overflowing()).toEqual([]);
    await shot(page, 'job-1440');
    await page.keyboard.press('Escape');
    await page.locator('[data-cell="problems"]').click();
    expect(await axeFaults()).toEqual([]);
    await shot(page, 'problems-1440');
    await page.keyboard.press('Escape');
  });
});

describe('on the phone', () => {
  test('job, one stake and one pass are clean, and a stake is ticked off', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    for (const name of ['Job', 'Stakes', 'Passes']) {
      await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name }).click();
      await page.waitForTimeout(250);
      await shot(page, `phone-${name.toLowerCase()}`);
      expect(await overflowing()).toEqual([]);
      expect(await axeFaults()).toEqual([]);
    }
    await page.getByRole('button', { name: 'Stakes', exact: true }).click();
    await page.getByRole('button', { name: 'Tapes are held: start' }).click();
    const number = () => page.locator('.crew-head h1').innerText();
    const before = await number();
    await page.getByRole('button', { name: `✓ ${before} is set` }).click();
    await page.getByRole('button', { name: 'Tapes are held: start' }).click();
    await expect.poll(number).not.toBe(before);
    await page.setViewportSize({ width: 1440, height: 900 });
    await settled(page);
  });
});

describe('the plan in the hand', () => {
  beforeAll(async () => {
    await page.setViewportSize({ width: 1440, height: 900 });
  });
  const fromHome = () => fieldText(page, 'Centre from home');
  const kept = (want: 'text' | 'stage') =>
    page.evaluate(
      (what) =>
        new Promise<string>((resolve, reject) => {
          const open = indexedDB.open('swathscribe');
          open.onerror = () => reject(new Error('no database'));
          open.onsuccess = () => {
            const get = open.result.transaction('kept').objectStore('kept').get('job');
            get.onsuccess = () => {
              open.result.close();
              const job = get.result as { text: string; stage: string };
              resolve(what === 'text' ? job.text : job.stage);
            };
          };
        }),
      want,
    );
  const keptJob = () => kept('text');

  test('a drag moves the word, the figures follow at once, and the screen stays live', async () => {
    await openStage(page, 'Design');
    const before = await fromHome();
    const clearBefore = await page.locator('[data-cell="fits"]').innerText();
    const box = await page.getByRole('button', { name: /^The graphic/ }).boundingBox();
    if (!box) throw new Error('no graphic on the plan');
    const at = { x: box.x + box.width * 0.4, y: box.y + box.height * 0.3 };
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x, at.y + 10, { steps: 3 });
    await page.mouse.move(at.x, at.y + 30, { steps: 4 });
    // While the button is still down, the figure and the status line have followed.
    await expect.poll(fromHome).not.toBe(before);
    await expect.poll(() => page.locator('[data-cell="fits"]').innerText()).not.toBe(clearBefore);
    await page.mouse.up();

    // Frames keep coming while the worker plans: a plan made on the page's own thread lets none by.
    const frames = await page.evaluate(async () => {
      const working = () => document.querySelector('[data-working="true"]') !== null;
      let count = 0;
      for (; working() && count < 10; count++) await new Promise(requestAnimationFrame);
      return count;
    });
    expect(frames).toBe(10);
    await settled(page);
    await expect.poll(fromHome).toMatch(/^2[345]\d′ \d+″$/);
  });

  test('undo and redo carry their labels and put everything back', async () => {
    const moved = await fromHome();
    await page
      .getByRole('button', { name: /^Undo Move the graphic|Undo.*Move the graphic/ })
      .click();
    await expect.poll(fromHome).toBe('265′ 0″');
    await page.keyboard.press('Control+y');
    await expect.poll(fromHome).toBe(moved);
    await page.keyboard.press('Control+z');
    await expect.poll(fromHome).toBe('265′ 0″');
  });

  test('typed measurements, arrows and wrong entries', async () => {
    const width = page.getByLabel('Width', { exact: true });
    await width.fill('140 6');
    await width.press('Enter');
    expect(await fieldText(page, 'Width')).toBe('140′ 6″');
    await width.fill('a lot');
    await width.press('Enter');
    await page.getByText(/is not a length/).waitFor();
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    await width.press('Escape');
    expect(await fieldText(page, 'Width')).toBe('140′ 6″');
    await page.getByRole('button', { name: /^The graphic/ }).focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(fromHome).toBe('265′ 1″');
  });

  test('passes play along their path and stop', async () => {
    await openStage(page, 'Passes');
    await page.getByRole('button', { name: 'Take the first' }).click();
    const inHand = () => page.locator('.hand .number').innerText();
    const first = await inHand();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await expect.poll(inHand, { timeout: 10_000 }).not.toBe(first);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    const stopped = await inHand();
    await page.waitForTimeout(1500);
    expect(await inHand()).toBe(stopped);
    await openStage(page, 'Design');
  });

  test('what is kept comes back after a reload', async () => {
    await expect.poll(keptJob, { timeout: 10_000 }).toContain('265.08');
    await expect.poll(() => kept('stage'), { timeout: 10_000 }).toBe('design');
    const url = new URL(page.url());
    await page.goto(url.origin + url.pathname);
    await expect.poll(fromHome, { timeout: 30_000 }).toBe('265′ 1″');
    expect(await fieldText(page, 'Width')).toBe('140′ 6″');
  });

  test('a saved project opens to the same project', async () => {
    await page.getByRole('button', { name: 'New, open, save' }).click();
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the project file' }).click(),
    ]);
    const saved = readFileSync(await file.path());
    await page.getByRole('button', { name: 'Start a new job' }).click();
    await page.getByPlaceholder('Type the word').waitFor();
    await page.getByRole('button', { name: 'New, open, save' }).click();
    await page
      .getByLabel('Project file or drawing')
      .setInputFiles({ name: 'kept.json', mimeType: 'application/json', buffer: saved });
    await expect.poll(fromHome).toBe('265′ 1″');
    await expect.poll(keptJob, { timeout: 10_000 }).toBe(saved.toString('utf8'));
  });
});
