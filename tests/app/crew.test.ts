/** The page in the outfield: from a file without any network, and from an address kept offline. */
import { readFileSync, writeFileSync } from 'node:fs';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keptCrewPage } from '../../src/crew/template/kept-crew-page';
import { crewCodes } from '../../src/exchange/crew-code';
import { crewLists, readingOf, type CrewList } from '../../src/exchange/crew-data';
import { readCrewFile } from '../../src/exchange/crew-file';
import { crewPage, DATA_PLACE } from '../../src/exchange/crew-page';
import type { Plan } from '../../src/plan/model';
import { demoCrew } from '../support/demo-crew';
import { settled, openStage, shot, startApp, type App } from './support/app';

const SIZES = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
] as const;
const crew = demoCrew('lanterns-word.json');
/** The largest round with held tapes: the one that is walked longest. */
const round = crewLists(crew)
  .filter((list) => list.hold !== null)
  .reduce((a, b) => (a.stakes.length >= b.stakes.length ? a : b));
const [first, second] = round.stakes as [CrewList['stakes'][0], CrewList['stakes'][0]];
const hostile = '</script><img src=x onerror="document.title=1">';

let app: App;
let folder: string;
let file: string;
beforeAll(async () => {
  app = await startApp();
  folder = mkdtempSync(join(tmpdir(), 'swathscribe-crew-'));
  file = join(folder, 'crew.html');
  const project = { name: hostile, units: crew.system };
  const plan = { project, inputHash: crew.fingerprint, stakes: crew.stakes } as unknown as Plan;
  writeFileSync(file, crewPage(plan, (await keptCrewPage()).page));
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
  await app.close();
});

interface Phone {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Every address that was asked for. */
  readonly asked: string[];
}

async function phone(size: (typeof SIZES)[number], offline: boolean): Promise<Phone> {
  const context = await app.browser.newContext({ viewport: size, offline, acceptDownloads: true });
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  // What is heard and felt, written down instead.
  await context.addInitScript(() => {
    const heard: string[] = [];
    Object.assign(window, { heard });
    navigator.vibrate = (pattern) => heard.push(`felt ${JSON.stringify(pattern)}`) > 0;
    speechSynthesis.speak = (spoken) => void heard.push(spoken.text);
  });
  const page = await context.newPage();
  return { page, context, asked };
}

const heard = (page: Page) =>
  page.evaluate(() => (window as unknown as { heard: string[] }).heard.splice(0));
const main = (page: Page) => page.locator('.crew-main').first();
const number = (page: Page) => page.locator('.crew-head h1').innerText();

/** Opens the largest round and says that the tapes are held. */
async function openRound(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Rounds and stakes' }).click();
  await page.getByRole('button', { name: new RegExp(`^Round ${round.round} of`) }).click();
  await page.getByRole('button', { name: 'Tapes are held: start' }).click();
  expect(await number(page)).toBe(first.id);
}

async function enter(page: Page, read: string): Promise<void> {
  await page.keyboard.press('c');
  await page.getByLabel('You read').fill(read);
  await page.keyboard.press('Enter');
}

async function looksRight(page: Page, name: string): Promise<void> {
  await shot(page, `crew-${page.viewportSize()!.width}-${name}`);
  // Contrast, names and roles are the same at both sizes; they are gone over at one.
  const axe =
    page.viewportSize()!.width === SIZES[0].width
      ? await new AxeBuilder({ page }).analyze()
      : { violations: [] };
  expect(axe.violations.map((v) => `${name} ${v.id}: ${v.nodes[0]?.html}`)).toEqual([]);
  const wrong = await page.evaluate(() => {
    const found: string[] = [];
    if (document.documentElement.scrollWidth > innerWidth) found.push('page is too wide');
    for (const b of document.querySelectorAll('button')) {
      const { width, height } = b.getBoundingClientRect();
      if (width < 48 || height < 48) found.push(`${b.textContent} is ${width} by ${height}`);
    }
    for (const r of document.querySelectorAll('.crew-reading')) {
      if (r.scrollWidth > r.clientWidth + 1) found.push(`${r.textContent} is cut`);
    }
    return found;
  });
  expect(wrong).toEqual([]);
}

describe.each(SIZES)('crew.html at $width by $height, opened as a file without network', (size) => {
  let on: Phone;
  beforeAll(async () => {
    on = await phone(size, true);
    await on.page.goto(pathToFileURL(file).href);
  });
  afterAll(() => on.context.close());

  test('starts at the first round and fits its screen everywhere', async () => {
    const { page } = on;
    await looksRight(page, 'start');
    await openRound(page);
    await looksRight(page, 'stake');
    await page.keyboard.press('l');
    await looksRight(page, 'list');
    await page.keyboard.press('Escape');
    await page.keyboard.press('c');
    await looksRight(page, 'check');
    await page.keyboard.press('Escape');
    await page.keyboard.press('n');
    await looksRight(page, 'note');
    await page.keyboard.press('Escape');
  });

  test('shows the printed readings', async () => {
    const shown = await on.page.locator('.crew-reading').allInnerTexts();
    const plain = shown.map((t) =>
      t
        .replace(/\u00a0/g, ' ')
        .replace('′', "'")
        .replace('″', '"'),
    );
    expect(plain[0]).toBe(readingOf(first.first, crew.system).text);
    expect(plain[1]).toBe(readingOf(first.second, crew.system).text);
  });

  test('says, speaks and shakes when a check is off, and asks to set the stake again', async () => {
    const { page } = on;
    const right = readingOf(first.check.steps, crew.system);
    await heard(page);
    await enter(page, readingOf(first.check.steps + 3 * 48, crew.system).text);
    expect(await page.locator('.crew-verdict').innerText()).toMatch(/^▲ 3′\u00a00″ off, more than/);
    const said = await heard(page);
    expect(said).toContain('felt [300,120,300]');
    expect(said.join(' ')).toMatch(/Off by 3 feet 0 inches\. Pull it and set it again\./);
    await looksRight(page, 'off');
    await page.getByRole('button', { name: `▲ Set ${first.id} again` }).click();
    await enter(page, right.text);
    expect(await page.locator('.crew-verdict').innerText()).toMatch(/^✓ /);
    expect((await heard(page)).join(' ')).toContain('Good.');
    await enter(page, 'about ten');
    expect(await page.locator('.crew-says').innerText()).toMatch(/^▲ Not a length/);
    await page.keyboard.press('Escape');
  });

  test('takes a check from the keys on the screen', async () => {
    const { page } = on;
    await page.keyboard.press('c');
    await page.getByLabel('You read').fill('');
    for (const key of ['1', '0', 'feet', '6', 'a half']) {
      await page.getByRole('button', { name: key, exact: true }).click();
    }
    expect(await page.getByLabel('You read').inputValue()).toBe('10′ 6½');
    await page.getByRole('button', { name: 'wipe the last' }).click();
    expect(await page.getByLabel('You read').inputValue()).toBe('10′ 6');
    await page.keyboard.press('Escape');
  });

  test('keeps ticks, notes and the place through a reload', async () => {
    const { page } = on;
    await page.keyboard.press('n');
    await page.getByRole('textbox').fill('soft <b>ground</b>');
    await page.getByRole('button', { name: 'Keep the note' }).click();
    await main(page).click();
    expect(await number(page)).toBe(second.id);
    await page.reload();
    expect(await number(page)).toBe(second.id);
    expect(await page.locator('.crew-top p').innerText()).toMatch(/^1 set, \d+ to go$/);
    await page.keyboard.press('ArrowLeft');
    expect(await number(page)).toBe(first.id);
    expect(await main(page).innerText()).toBe(`${first.id} is set: take back`);
    await page.keyboard.press('ArrowRight');
  });

  test('jumps to a number, and says when there is none', async () => {
    const { page } = on;
    const last = round.stakes[round.stakes.length - 1]!.id;
    await page.keyboard.press('l');
    await page.getByLabel('Go to stake').fill('9999');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').innerText()).toBe('▲ No stake 9999 on this phone.');
    await page.getByLabel('Go to stake').fill(last);
    await page.keyboard.press('Enter');
    expect(await number(page)).toBe(last);
  });

  test('gives its times, checks and notes back as a file that is read', async () => {
    const { page } = on;
    await page.keyboard.press('l');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save times, checks and notes' }).click(),
    ]);
    const read = readCrewFile(readFileSync(await download.path(), 'utf8'), 'crew.json');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.stakes).toHaveLength(1);
    expect(read.value.stakes[0]).toMatchObject({ stake: first.id, note: 'soft <b>ground</b>' });
    expect(read.value.stakes[0]!.seconds).toBeGreaterThan(0);
    expect(read.value.stakes[0]!.check_ft).toBeCloseTo(
      readingOf(first.check.steps, crew.system).ft,
      9,
    );
  });

  test('asked for nothing but itself, and made nothing of the name but text', async () => {
    const { page, asked } = on;
    expect(asked.filter((url) => !url.startsWith(pathToFileURL(file).href))).toEqual(
      asked.filter((url) => /^(data|blob):/.test(url)),
    );
    expect(await page.locator('.crew-job').innerText()).toBe(hostile);
    expect(await page.title()).toBe('Stakes');
    expect(await page.locator('img').count()).toBe(0);
  });

  test('could not ask if it wanted to', async () => {
    const blocked = await on.page.evaluate(async () => {
      const image = new Image();
      const said = new Promise<string>((resolve) => {
        document.addEventListener('securitypolicyviolation', (e) => resolve(e.effectiveDirective));
      });
      image.src = 'https://grounds.example.edu/x.png';
      return [await said, await fetch('https://grounds.example.edu/').catch((e: Error) => e.name)];
    });
    expect(blocked).toEqual(['img-src', 'TypeError']);
  });
});

test('the page is small, and holds every stake of the sheets', async () => {
  const { page } = await keptCrewPage();
  expect(Buffer.byteLength(page.replace(DATA_PLACE, ''))).toBeLessThan(60_000);
  expect(page).toContain("default-src 'none'");
  expect(page).not.toMatch(/(src|href)="(?!data:)/);
});

describe('the page at an address', () => {
  let server: Server;
  let base: string;
  const codes = crewCodes(crew);
  beforeAll(async () => {
    const root = join(import.meta.dirname, '../../dist/app');
    const types: Record<string, string> = { '.html': 'text/html', '.js': 'text/javascript' };
    types['.svg'] = 'image/svg+xml';
    types['.webmanifest'] = 'application/manifest+json';
    server = createServer((request, response) => {
      const name = request.url!.replace(/[?#].*$/, '').replace(/\/$/, '/index.html');
      response.setHeader('Content-Type', types[extname(name)] ?? 'application/octet-stream');
      response.end(readFileSync(join(root, name)));
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const at = server.address();
    if (at === null || typeof at === 'string') throw new Error('no port');
    base = `http://127.0.0.1:${at.port}/crew/`;
  });
  afterAll(() => new Promise((done) => server.close(done)));

  test('opens a code, asks for its own files alone, and works on after the network is gone', async () => {
    const { page, context, asked } = await phone(SIZES[0], false);
    const own = codes.filter((c) => c.round === round.round);
    await page.goto(`${base}#${own[0]!.text}`);
    await page.waitForSelector('[data-offline="ready"]');
    await page.getByRole('button', { name: 'Tapes are held: start' }).click();
    expect(await number(page)).toBe(first.id);
    await main(page).click();
    expect(asked.filter((url) => !url.startsWith(base))).toEqual([]);
    // The list is out of the address again, so that a reload goes on where the hand is.
    expect(page.url()).toBe(base);

    await new Promise((done) => server.close(done));
    server.closeAllConnections();
    await context.setOffline(true);
    await page.reload();
    expect(await number(page)).toBe(second.id);
    // The address alone, as from the home screen: what was opened last is there.
    await page.goto(base);
    expect(await number(page)).toBe(second.id);
    // A second code of the same job joins the first, offline.
    const other = codes.find((c) => c.round !== round.round)!;
    await page.goto(`${base}#${other.text}`);
    await page.getByRole('button', { name: 'Rounds and stakes' }).click();
    expect(await page.locator('.crew-round').count()).toBe(2);
    await looksRight(page, 'codes');
    await context.close();
  });
});

test('a code that cannot be read is said in plain words', async () => {
  const { page, context } = await phone(SIZES[0], false);
  const start = await app.open('crew/#AAAA');
  expect(await start.getByRole('alert').innerText()).toMatch(
    /^▲ This code cannot be read: part of it is missing or misread\. Scan the printed code again/,
  );
  await start.goto(start.url().replace(/#.*/, '#<script>'));
  await expect
    .poll(() => start.getByRole('alert').innerText())
    .toMatch(/cut short or holds a wrong character/);
  await start.context().close();
  await page.close();
  await context.close();
});

test('the app hands the page out, says which way there is, and takes the times back', async () => {
  const page = await app.open('?demo=emblem&stage=packet');
  await settled(page);
  await openStage(page, 'Packet');
  const section = page.locator('section', { hasText: 'Phone page' });
  await expect.poll(() => section.innerText()).toContain('One way here: the file.');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download the phone page (crew.html)' }).click(),
  ]);
  const html = readFileSync(await download.path(), 'utf8');
  expect(html).toContain('{"crew":{"codes":["');
  await page.getByLabel('Address', { exact: true }).fill('https://grounds.example.edu/crew/');
  await page.getByLabel('Address', { exact: true }).press('Enter');
  await settled(page);
  await expect.poll(() => section.innerText()).toContain('Two ways: the codes in the packet');
  await expect
    .poll(() => page.getByRole('button', { name: /Codes for the phone/ }).count(), {
      timeout: 60_000,
    })
    .toBeGreaterThan(0);

  const seconds = [50, 60, 70, 80, 90, 55, 65, 75, 85, 95, 70, 70];
  const entry = (i: number) => ({
    ...{ stake: String(i + 1), kind: 'outline', round: 1, set_at: '2027-04-16T06:35:00.000Z' },
    ...{ seconds: seconds[i], check_from: 'K1', check_ft: null, check_text: '', note: '' },
  });
  const crewFile = {
    ...{ format: 'swathscribe-crew', version: 1, plan: '0123abcd', job: 'x' },
    ...{
      saved_at: '2027-04-16T12:00:00.000Z',
      rounds: [],
      stakes: seconds.map((_, i) => entry(i)),
    },
  };
  await openStage(page, 'Hours');
  await page.getByLabel('Files from the phone').setInputFiles({
    name: 'crew.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(crewFile)),
  });
  await page.getByRole('button', { name: 'Take these rates over' }).click();
  await settled(page);
  expect(await page.getByText("These are the job's rates").count()).toBe(1);
  await page.keyboard.press('Control+z');
  await settled(page);
  await expect
    .poll(() => page.getByRole('button', { name: 'Take these rates over' }).count())
    .toBe(1);
  await page.getByLabel('Files from the phone').setInputFiles({
    name: 'wrong.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"swathscribe-project"}'),
  });
  await expect
    .poll(() => page.getByRole('alert').first().innerText())
    .toContain('wrong.json: This is not a file of the phone page');
  await page.context().close();
});
