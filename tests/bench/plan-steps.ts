/**
 * Times every step of both demo plans, best of three, as seconds and as a ratio to a yardstick run in
 * the same process (one thousand-pointed star intersected with another by the boolean library), so
 * that runs on different machines can be compared. Prints one JSON line per step.
 */
import { engine } from '../../src/engine/api';
import { regionIntersect } from '../../src/geometry/region';
import { planOf, readDemo, sheetFonts } from '../contract/plan-of';

const RUNS = 3;
const now = (): number => Number(process.hrtime.bigint()) / 1e9;

function star(turn: number) {
  return Array.from({ length: 1000 }, (_, i) => {
    const a = (2 * Math.PI * i) / 1000 + turn;
    const r = i % 2 === 0 ? 100 : 60;
    return { x: r * Math.cos(a), y: r * Math.sin(a) };
  });
}

function yardstick(): number {
  const times = Array.from({ length: 5 }, () => {
    const started = now();
    regionIntersect([star(0)], [star(0.01)]);
    return now() - started;
  });
  return Math.min(...times);
}

async function timeDemo(file: string): Promise<Map<string, number>> {
  const best = new Map<string, number>();
  const note = (step: string, seconds: number): void => {
    best.set(step, Math.min(seconds, best.get(step) ?? Infinity));
  };
  for (let i = 0; i < RUNS; i++) {
    const started = now();
    const plan = planOf(readDemo(file));
    note('plan', now() - started);
    const filesAt = now();
    engine.makeFiles(plan);
    note('files', now() - filesAt);
    const packetAt = now();
    await engine.makePacket(plan, sheetFonts());
    note('packet', now() - packetAt);
  }
  return best;
}

const unit = yardstick();
for (const file of ['lanterns-word.json', 'lantern-emblem.json']) {
  for (const [step, seconds] of await timeDemo(file)) {
    const line = {
      file,
      step,
      seconds: Number(seconds.toFixed(3)),
      ratio: Math.round(seconds / unit),
    };
    process.stdout.write(`${JSON.stringify(line)}\n`);
  }
}
