/**
 * Times every step of both demo plans, best of three, as seconds and as a ratio to a yardstick run in
 * the same process (one thousand-pointed star intersected with another by the boolean library), so
 * that runs on different machines can be compared. Prints one JSON line per step.
 */
import { engine } from '../../src/engine/api';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { Field } from '../../src/field/model';
import { placeGraphic } from '../../src/plan/make-plan';
import type { Project } from '../../src/project/model';
import { adviseChanges } from '../../src/stakeout/advise';
import { chooseControls } from '../../src/stakeout/choose-controls';
import { stakeGround } from '../../src/stakeout/ground';
import { planStakes } from '../../src/stakeout/plan-stakes';
import { printShortest, settleStakes } from '../../src/stakeout/set-out';
import { regionIntersect } from '../../src/geometry/region';
import { assetsOf, readDemo, sheetFonts } from '../contract/plan-of';

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
    const project = readDemo(file);
    const started = now();
    const made = engine.makePlan(project, assetsOf(project));
    note('plan', now() - started);
    if (!made.ok) throw new Error(`${file} has no plan`);
    const plan = made.value;
    const stakesAt = now();
    timeStakes(project);
    note('stakes', now() - stakesAt);
    const filesAt = now();
    engine.makeFiles(plan);
    note('files', now() - filesAt);
    const packetAt = now();
    await engine.makePacket(plan, sheetFonts());
    note('packet', now() - packetAt);
  }
  return best;
}

/** The stake-out alone. */
function timeStakes(project: Project): void {
  const field = buildField(project.field, project.units);
  const graphic = placeGraphic(project, assetsOf(project));
  if (!field.ok || !graphic.ok) throw new Error('no ground or graphic');
  const spec = { ...project.stakeout, system: project.units };
  planStakes({ field: field.value, graphic: graphic.value, spec });
}

/** 200 stakes over the outfield. */
const STAKES = Array.from({ length: 200 }, (_, i) => ({
  x: -80 + 8.4 * (i % 20),
  y: 235 + 6.3 * Math.floor(i / 20),
}));
const TAPE = { readingSigmaIn: 0.25, proportional: 1 / 3750, scaleSigma: 1 / 5000 };
const BASICS = { toleranceIn: 3, target95In: 4, system: 'feet-inches', crew: 3 } as const;

function bareField(): Field {
  const field = buildField(defaultFieldSpec(), 'feet-inches');
  if (!field.ok) throw new Error('no field');
  return field.value;
}

/** How each of 200 stakes is set, printed in the shortest order found; its controls are not timed. */
function timeOrder(): Map<string, number> {
  const field = bareField();
  const spec = { ...BASICS, tape: { ...TAPE, limitFt: 200 } };
  const controls = chooseControls(field.controls, STAKES, stakeGround(field), spec);
  const wanted = STAKES.map((at) => ({ at, kind: 'outline' as const }));
  const best = new Map<string, number>();
  for (let i = 0; i < RUNS; i++) {
    const started = now();
    printShortest(settleStakes(wanted, controls, spec));
    const step = 'ways and order of 200 stakes';
    best.set(step, Math.min(now() - started, best.get(step) ?? Infinity));
  }
  return best;
}

/** What would let 200 stakes meet a target that they do not meet. */
function timeAdvice(): Map<string, number> {
  const field = bareField();
  const spec = { ...BASICS, target95In: 2, tape: { ...TAPE, limitFt: 200 } };
  const task = { field, stakes: STAKES, ground: stakeGround(field), spec, targetIn: 2 };
  const best = new Map<string, number>();
  for (let i = 0; i < RUNS; i++) {
    const started = now();
    adviseChanges(task);
    const step = 'advice for 200 stakes';
    best.set(step, Math.min(now() - started, best.get(step) ?? Infinity));
  }
  return best;
}

/** Controls for 200 stakes: tape and target, the last beyond that tape. */
function timeControls(): Map<string, number> {
  const field = bareField();
  const { controls } = field;
  const ground = stakeGround(field);
  const best = new Map<string, number>();
  for (const [limitFt, target95In] of [
    [100, 4],
    [200, 4],
    [300, 4],
    [200, 2],
  ] as const) {
    const spec = { ...BASICS, target95In, tape: { ...TAPE, limitFt } };
    for (let i = 0; i < RUNS; i++) {
      const started = now();
      chooseControls(controls, STAKES, ground, spec);
      const step = `controls, ${limitFt}-ft tape, ${target95In} in`;
      best.set(step, Math.min(now() - started, best.get(step) ?? Infinity));
    }
  }
  return best;
}

const unit = yardstick();
for (const [step, seconds] of [...timeControls(), ...timeOrder(), ...timeAdvice()]) {
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
