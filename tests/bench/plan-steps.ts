/**
 * Times every step of both demo plans, best of three, as seconds and as a ratio to a yardstick run in
 * the same process (one thousand-pointed star intersected with another by the boolean library), so
 * that runs on different machines can be compared. Prints one JSON line per step.
 */
import { engine } from '../../src/engine/api';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import { chooseControls } from '../../src/stakeout/choose-controls';
import { stakeGround } from '../../src/stakeout/ground';
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

/** Controls for 200 stakes over the outfield: tape and target, the last beyond that tape. */
function timeControls(): Map<string, number> {
  const field = buildField(defaultFieldSpec(), 'feet-inches');
  if (!field.ok) throw new Error('no field');
  const { controls } = field.value;
  const ground = stakeGround(field.value);
  const stakes = Array.from({ length: 200 }, (_, i) => ({
    x: -80 + 8.4 * (i % 20),
    y: 235 + 6.3 * Math.floor(i / 20),
  }));
  const tape = { readingSigmaIn: 0.25, proportional: 1 / 3750, scaleSigma: 1 / 5000 };
  const best = new Map<string, number>();
  for (const [limitFt, target95In] of [
    [100, 4],
    [200, 4],
    [300, 4],
    [200, 2],
  ] as const) {
    const spec = {
      ...({ toleranceIn: 3, target95In, system: 'feet-inches', crew: 3 } as const),
      tape: { ...tape, limitFt },
    };
    for (let i = 0; i < RUNS; i++) {
      const started = now();
      chooseControls(controls, stakes, ground, spec);
      const step = `controls, ${limitFt}-ft tape, ${target95In} in`;
      best.set(step, Math.min(now() - started, best.get(step) ?? Infinity));
    }
  }
  return best;
}

const unit = yardstick();
for (const [step, seconds] of timeControls()) {
  const line = { step, seconds: Number(seconds.toFixed(3)), ratio: Math.round(seconds / unit) };
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
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
