/** Builds the app once per state of the sources, serves it, and drives it with Chromium. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { build, preview, type PreviewServer } from 'vite';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const STAMP = join(ROOT, 'dist/app-built-from');
export const SHOTS = join(ROOT, 'dist/shots');

const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

function filesUnder(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

function sourcesHash(): string {
  const hash = createHash('sha256');
  for (const part of ['src', 'demo-data', 'patterns', 'vite.config.ts', 'package-lock.json']) {
    for (const file of filesUnder(join(ROOT, part))) hash.update(file).update(readFileSync(file));
  }
  return hash.digest('hex');
}

async function buildOnce(): Promise<void> {
  const hash = sourcesHash();
  const isBuilt = existsSync(join(ROOT, 'dist/app/index.html')) && existsSync(STAMP);
  if (isBuilt && readFileSync(STAMP, 'utf8') === hash) return;
  // The test runner says `test` here; what is driven must be what is shipped.
  process.env.NODE_ENV = 'production';
  await build({
    root: join(ROOT, 'src/app'),
    configFile: join(ROOT, 'vite.config.ts'),
    logLevel: 'error',
  });
  writeFileSync(STAMP, hash);
}

function findChromium(): string {
  const path = process.env.CHROMIUM ?? '/usr/bin/chromium';
  if (!existsSync(path)) {
    throw new Error(
      `No Chromium at ${path}. Install it (Debian: apt-get install chromium) or set CHROMIUM=/path/to/chromium; the browser tests are never skipped.`,
    );
  }
  return path;
}

export interface App {
  readonly browser: Browser;
  /** A page of its own storage at the given window size. Errors of the page fail `close`. */
  open(query: string, size?: { width: number; height: number }): Promise<Page>;
  close(): Promise<void>;
}

export async function startApp(): Promise<App> {
  await buildOnce();
  mkdirSync(SHOTS, { recursive: true });
  const server: PreviewServer = await preview({
    root: join(ROOT, 'src/app'),
    configFile: join(ROOT, 'vite.config.ts'),
    preview: { port: 0, host: '127.0.0.1', open: false },
    logLevel: 'error',
  });
  const url = server.resolvedUrls?.local[0];
  if (!url) throw new Error('the preview server gave no address');
  const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS });
  const errors: string[] = [];
  return {
    browser,
    async open(query, size = { width: 1440, height: 900 }) {
      const context = await browser.newContext({ viewport: size, acceptDownloads: true });
      const page = await context.newPage();
      page.on('pageerror', (error) => errors.push(error.message));
      page.on('console', (m) => {
        if (m.type() === 'error') errors.push(m.text());
      });
      await page.goto(url + query);
      return page;
    },
    async close() {
      await browser.close();
      await server.close();
      if (errors.length > 0) throw new Error(`the page reported errors:\n${errors.join('\n')}`);
    },
  };
}

/** Waits until the newest change has its plan (or its problems). */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const mark = document.querySelector<HTMLElement>('[data-working]');
      return mark?.dataset.working === 'false';
    },
    undefined,
    { timeout: 120_000 },
  );
}

export const STAGES = ['Ground', 'Design', 'Look', 'Passes', 'Stakes', 'Hours', 'Packet'] as const;

export async function openStage(page: Page, stage: (typeof STAGES)[number]): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Stages of the job' })
    .getByRole('button', { name: new RegExp(`^\\s*${stage}|${stage}`) })
    .first()
    .click();
  await page.getByRole('heading', { level: 1, name: stage }).waitFor();
  if (stage === 'Look') await page.waitForSelector('[data-painted]:not([data-painted=""])');
  if (stage === 'Packet')
    await page.getByRole('group', { name: 'Pages' }).getByRole('button').first().waitFor();
}

export const shot = (page: Page, name: string): Promise<Buffer> =>
  page.screenshot({ path: join(SHOTS, `${name}.png`) });

/** The text of a figure's field, plain spaces for the no-break ones. */
export async function fieldText(page: Page, label: string): Promise<string> {
  return (await page.getByLabel(label, { exact: true }).inputValue()).replaceAll('\u00a0', ' ');
}
