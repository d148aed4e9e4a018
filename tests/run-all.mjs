// `npm test`: every gate and every test, in one run; stops at the first that fails.
import { spawnSync } from 'node:child_process';
import { ensureChromium } from './support/ensure-chromium.mjs';

const env = { ...process.env, CHROMIUM: ensureChromium() };
const STEPS = [
  ['format', ['run', '-s', 'format:check']],
  ['types', ['run', '-s', 'types']],
  ['lint', ['run', '-s', 'lint']],
  ['dead exports', ['run', '-s', 'dead']],
  ['unit tests', ['run', '-s', 'unit']],
  ['whole plans', ['run', '-s', 'whole']],
  ['browser tests', ['run', '-s', 'browser']],
];

for (const [name, args] of STEPS) {
  const started = process.hrtime.bigint();
  process.stdout.write(`\n== ${name}\n`);
  const { status } = spawnSync('npm', args, { stdio: 'inherit', env });
  const seconds = Number(process.hrtime.bigint() - started) / 1e9;
  process.stdout.write(`== ${name}: ${status === 0 ? 'ok' : 'FAILED'} (${seconds.toFixed(0)} s)\n`);
  if (status !== 0) process.exit(status ?? 1);
}
