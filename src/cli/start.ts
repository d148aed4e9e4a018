/** Builds the app, writes the demo packet to `out/demo`, serves the app and prints its address. */
import { resolve } from 'node:path';
import { build, preview } from 'vite';
import { reportProblems } from './report';
import { writePlan } from './write-plan';

const ROOT = resolve(import.meta.dirname, '../..');
const configFile = resolve(ROOT, 'vite.config.ts');

process.stdout.write('Building the app ...\n');
await build({ configFile, configLoader: 'runner', logLevel: 'error' });

const out = resolve(ROOT, 'out/demo');
const plan = await writePlan(resolve(ROOT, 'demo-data/lanterns-word.json'), out);
reportProblems(plan.problems.filter((p) => p.severity === 'error'));
if (!plan.ok) process.exit(1);
process.stdout.write(`Demo packet: out/demo/packet.pdf (${plan.value.stakes} stakes)\n`);

const port = Number(process.env['PORT'] ?? 4317);
const server = await preview({
  configFile,
  configLoader: 'runner',
  preview: { port, strictPort: false, host: '127.0.0.1' },
});
const address = server.resolvedUrls?.local[0] ?? `http://127.0.0.1:${port}/`;
process.stdout.write(`Swathscribe is open at ${address}?demo=word  (Ctrl+C stops it)\n`);
