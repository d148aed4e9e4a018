// Finds Chromium, or gets it (Debian: apt), or says how. Never lets browser tests be skipped.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const KNOWN = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

const RECIPE = `No Chromium found, and the browser tests are not skipped without one.
  Debian, Ubuntu: sudo apt-get install chromium
  Fedora:         sudo dnf install chromium
  macOS:          brew install --cask chromium
  Elsewhere:      install any Chromium and set CHROMIUM=/path/to/chromium`;

export function ensureChromium() {
  const asked = process.env.CHROMIUM;
  if (asked) {
    if (existsSync(asked)) return asked;
    throw new Error(`CHROMIUM is set to ${asked}, which is not there.\n${RECIPE}`);
  }
  const found = KNOWN.find((path) => existsSync(path));
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    const options = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    process.stderr.write('Installing Chromium for the browser tests ...\n');
    execFileSync('apt-get', ['update', '-qq'], options);
    execFileSync(
      'apt-get',
      ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
      options,
    );
    if (existsSync(KNOWN[0])) return KNOWN[0];
  }
  throw new Error(RECIPE);
}
