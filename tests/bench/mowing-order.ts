/**
 * How long ordering and driving passes takes, cost matrix included, and what the turns and empty runs
 * come to. Prints one JSON line for 60, 300 and 1,500 passes and for each demo with and without its
 * graphic. Seconds are of the processor, so that other work on the machine does not count.
 */
import { defaultFieldSpec } from '../../src/field/default-field';
import { buildField } from '../../src/field/build-field';
import { prepareField } from '../../src/mowing/drive-ground';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { swathFt } from '../../src/mowing/machines';
import type { Leg } from '../../src/mowing/model';
import { planRoute } from '../../src/mowing/plan-route';
import type { Swath } from '../../src/mowing/swath-model';
import { demoRoute } from '../support/demo-route';

const say = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
const cpuSeconds = (): number => process.cpuUsage().user / 1e6;

const built = buildField(defaultFieldSpec(), 'feet-inches');
if (!built.ok) throw new Error('the default field must build');
const field = built.value;
const machine = (id: string) => MACHINES.find((m) => m.id === id)!;
const [WIDE, NARROW] = [machine('triplex-reel'), machine('rotary-roller-21')];

/** Bands of three over the outfield, cut across into blocks where more passes are wanted. */
function stripes(count: number): Swath[] {
  const columns = 60;
  const rows = Math.ceil(count / columns);
  const [low, high] = [215, 330];
  const step = (high - low) / rows;
  const gap = rows === 1 ? 0 : 2;
  return Array.from({ length: count }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const x = (column - columns / 2) * swathFt(WIDE);
    const near = { x, y: low + row * step };
    const far = { x, y: low + (row + 1) * step - gap };
    const out = (Math.floor(column / 3) + row) % 2 === 0;
    return {
      id: `block/${i}`,
      patch: `block-${row}`,
      role: 'wide',
      phase: 'background',
      line: out ? [near, far] : [far, near],
      widthFt: WIDE.cutWidthIn / 12,
      group: 0,
    };
  });
}

const transits = (legs: readonly Leg[]) =>
  legs.filter((leg) => leg.kind === 'turn' || leg.kind === 'run');
const total = (legs: readonly Leg[]): number =>
  Math.round(transits(legs).reduce((n, leg) => n + leg.seconds, 0));

for (const count of [60, 300, 1500]) {
  const design = { patches: [], guides: {}, graphic: [], quiet: [], strokes: [] };
  const swaths = stripes(count);
  const layout = { swaths, blocked: [], uncovered: [], graphicCovered: 1, laidOutside: 0 };
  const input = { field, design, wide: WIDE, narrow: NARROW, gate: { x: 200, y: 160 } };
  const ground = prepareField(field);
  const before = cpuSeconds();
  const route = planRoute({ ...input, setOutSeconds: 0 }, layout, ground);
  if (!route.ok) throw new Error('the block must be driven');
  say({
    passes: route.value.passes.length,
    cpu_s: Number((cpuSeconds() - before).toFixed(2)),
    transit_s: total(route.value.legs),
    turn_ft: Math.round(route.value.turnFt),
    run_ft: Math.round(route.value.runFt),
  });
}
for (const demo of ['lanterns-word', 'lantern-emblem']) {
  for (const graphic of [true, false]) {
    const { plan } = demoRoute(demo, (p) => (graphic ? p : { ...p, art: null }));
    say({
      demo,
      graphic,
      passes: plan.passes.length,
      transit_s: total(plan.legs),
      turn_ft: Math.round(plan.turnFt),
      run_ft: Math.round(plan.runFt),
    });
  }
}
