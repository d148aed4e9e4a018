/** Builds the phone page from `src/crew`: one document, with nothing to fetch. */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { DATA_PLACE } from '../../exchange/crew-page';

const BUNDLE = resolve(import.meta.dirname, 'bundle.mjs');

export interface CrewPageFiles {
  /** To be filled with a job's lists and sent as one file. */
  readonly page: string;
  /** For an address: without lists, with the files beside it. */
  readonly served: string;
  readonly worker: string;
  readonly manifest: string;
  readonly icon: string;
}

/** Bundles script and styles; equal sources give equal bytes. */
export async function buildCrewPage(): Promise<CrewPageFiles> {
  const { script, style } = await bundle();
  const page = document(script, style, { served: false });
  const served = document(script, style, { served: true });
  const files = { manifest: MANIFEST, icon: ICON };
  const version = hash(Object.values({ served, ...files }).join('')).slice(0, 16);
  return { page, served, worker: worker(version), ...files };
}

async function bundle(): Promise<{ readonly script: string; readonly style: string }> {
  const { stdout } = await promisify(execFile)(process.execPath, [BUNDLE]);
  const { script, style } = JSON.parse(stdout) as { script: string; style: string };
  // A closing tag inside a text of the script would end it.
  return { script: script.trim().replaceAll('</', '<\\/'), style: style.trim() + BODY_STYLE };
}

const BODY_STYLE =
  'html,body,#crew{height:100%;margin:0}noscript p{padding:24px;font:20px sans-serif}';

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
const source = (text: string): string =>
  `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

function document(script: string, style: string, { served }: { served: boolean }): string {
  const own = served ? "worker-src 'self'; manifest-src 'self'; img-src 'self'" : 'img-src data:';
  const policy = `default-src 'none'; script-src ${source(script)}; style-src ${source(style)}; ${own}; base-uri 'none'; form-action 'none'`;
  const links = served
    ? '<link rel="icon" href="./icon.svg" type="image/svg+xml">\n<link rel="manifest" href="./manifest.webmanifest">'
    : '<link rel="icon" href="data:,">';
  return `<!doctype html>
<html lang="en"${served ? ' data-served' : ''}>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="theme-color" content="#ffffff">
${links}
<title>Stakes</title>
<style>${style}</style>
</head>
<body>
<main id="crew"></main>
<noscript><p>This page needs its script, which this viewer does not run. Open the file in a browser.</p></noscript>
<script type="application/json" id="crew-data">${DATA_PLACE}</script>
<script>${script}</script>
</body>
</html>
`;
}

const MANIFEST = `${JSON.stringify(
  {
    name: 'Stakes',
    short_name: 'Stakes',
    description: 'The stake sheets of a job, one stake at a time.',
    start_url: './',
    scope: './',
    display: 'standalone',
    background_color: '#ffffff',
    theme_color: '#ffffff',
    icons: [{ src: './icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  },
  null,
  1,
)}\n`;

const ICON =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 64 64"><path fill="#fff" d="M0 0h64v64H0z"/>' +
  '<path fill="#b3154e" d="M32 8l22 40H10z"/><circle cx="32" cy="36" r="5" fill="#fff"/>' +
  '<path fill="#0c1411" d="M10 52h44v5H10z"/></svg>\n';

/** Answers for the page's own files out of what it took in once; asks the network for nothing else. */
const worker = (version: string): string => `const NAME = 'swathscribe-crew-${version}';
const FILES = ['./', './manifest.webmanifest', './icon.svg'];
self.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(NAME).then((cache) => cache.addAll(FILES)).then(() => self.skipWaiting()),
  );
});
self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(
        names.filter((n) => n.startsWith('swathscribe-crew-') && n !== NAME).map((n) => caches.delete(n)),
      ))
      .then(() => self.clients.claim()),
  );
});
self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  const wanted = event.request.mode === 'navigate' ? './' : event.request;
  event.respondWith(
    caches.open(NAME)
      .then((cache) => cache.match(wanted, { ignoreSearch: true }))
      .then((found) => found ?? fetch(event.request)),
  );
});
`;
