import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { settled, shot, startApp, type App } from './support/app';

let app: App;
let page: Page;
beforeAll(async () => {
  app = await startApp();
  page = await app.open('?demo=emblem&stage=passes');
  page.setDefaultTimeout(15_000);
  await settled(page);
});
afterAll(() => app.close());

const line = (on: Page) => on.getByRole('slider', { name: 'Moment of the visit' });
const moment = (on: Page) => line(on).getAttribute('aria-valuetext');

/** Drags the mark to a share of the line. */
const dragTo = async (on: Page, share: number): Promise<void> => {
  await line(on).evaluate((e, to) => {
    const input = e as HTMLInputElement;
    input.value = String(Number(input.max) * to);
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }, share);
  await on.waitForTimeout(150);
};

/** The drawing: a hash of its pixels, and the share in strong green, grass that is laid. */
const picture = (on: Page) =>
  on.locator('.view canvas').evaluate((c) => {
    const canvas = c as HTMLCanvasElement;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let hash = 0;
    let count = 0;
    for (let i = 0; i < data.length; i++) hash = (Math.imul(hash, 31) + data[i]!) | 0;
    for (let i = 0; i < data.length; i += 4) if (data[i + 1]! - data[i + 2]! > 65) count++;
    return { hash, laid: count / (data.length / 4) };
  });

async function faults(on: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page: on }).analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
}

test('the lay appears behind the machine, and any moment looks alike however it is reached', async () => {
  const at = async (share: number) => {
    await dragTo(page, share);
    return picture(page);
  };
  const bare = await at(0);
  const third = await at(0.3);
  const all = await at(1);
  expect(bare.laid).toBeLessThan(0.01);
  expect(third.laid).toBeGreaterThan(bare.laid + 0.05);
  expect(all.laid).toBeGreaterThan(third.laid + 0.05);
  await at(0.05);
  expect((await at(0.3)).hash).toBe(third.hash);
  await at(0.8);
  expect((await at(0.3)).hash).toBe(third.hash);
  expect((await at(1)).hash).toBe(all.hash);
});

test('keys play, stop and step; a pass on the plan is taken in hand; the whole plan comes back', async () => {
  await dragTo(page, 0.2);
  const at = await moment(page);
  expect(at).toMatch(/am, wide mower (pass|turns|runs).*narrow tool waits off the grass/);
  await line(page).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
  await expect.poll(() => moment(page), { timeout: 10_000 }).not.toBe(at);
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  const stopped = await line(page).inputValue();
  await page.waitForTimeout(300);
  expect(await line(page).inputValue()).toBe(stopped);
  await page.keyboard.press('ArrowRight');
  expect(Number(await line(page).inputValue()) - Number(stopped)).toBeCloseTo(10, 3);
  await page.keyboard.press('ArrowLeft');
  expect(Number(await line(page).inputValue())).toBeCloseTo(Number(stopped), 3);
  const inHand = () => page.locator('.hand .number').innerText();
  const before = Number(await inHand());
  await page.getByRole('button', { name: 'To the next Pass' }).click();
  expect(Math.abs(Number(await inHand()) - before)).toBeLessThanOrEqual(1);
  expect(await moment(page)).toContain(`wide mower pass ${await inHand()},`);
  const canvas = (await page.locator('.view canvas').boundingBox())!;
  const now = await inHand();
  await page.mouse.click(canvas.x + canvas.width * 0.45, canvas.y + canvas.height * 0.55);
  await expect.poll(inHand).not.toBe(now);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('radio', { name: 'Whole plan' }).isChecked()).toBe(true);
});

test('is clean and within its box on the desk, the small screen and the phone', async () => {
  for (const [width, height] of [
    [1440, 900],
    [1024, 768],
  ] as const) {
    await page.setViewportSize({ width, height });
    await dragTo(page, 0.7);
    await shot(page, `drive-${width}`);
    expect(await faults(page)).toEqual([]);
    const wide = await page
      .getByRole('region', { name: 'The drive' })
      .evaluate((e) => e.scrollWidth - e.clientWidth);
    expect(wide).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole('button', { name: 'Passes', exact: true }).click();
  await page.getByRole('button', { name: 'Watch the drive' }).click();
  await dragTo(page, 0.7);
  await shot(page, 'drive-390');
  expect(await faults(page)).toEqual([]);
  expect((await picture(page)).laid).toBeGreaterThan(0.05);
  await page.getByRole('button', { name: 'Back to the pass' }).click();
  await page.getByRole('button', { name: 'Watch the drive' }).waitFor();
});

test('with reduced motion nothing plays, and the passes are stepped', async () => {
  const context = await app.browser.newContext({ reducedMotion: 'reduce' });
  const still = await context.newPage();
  await still.goto(page.url().replace(/\?.*$/, '?demo=emblem&stage=passes'));
  await settled(still);
  await line(still).waitFor();
  expect(await still.getByRole('button', { name: 'Play', exact: true }).count()).toBe(0);
  await line(still).focus();
  await still.keyboard.press('Space');
  await still.waitForTimeout(400);
  expect(await line(still).inputValue()).toBe('0');
  await still.getByRole('button', { name: 'To the next Pass' }).click();
  expect(await moment(still)).toContain('wide mower pass 1,');
  await still.getByRole('button', { name: 'To the next Pass' }).click();
  expect(await moment(still)).toContain('wide mower pass 2,');
  await context.close();
});
