import { describe, expect, it } from 'vitest';
import { layStrips, stripSoFar, stripsDone, type LayStrip } from '../../src/app/drive/lay-strips';
import { machineNow } from '../../src/app/drive/machine-now';
import { seededRandom } from '../../src/base/random';
import type { Point } from '../../src/geometry/point';
import type { Leg } from '../../src/mowing/model';
import { planOf, readDemo } from '../contract/plan-of';

const emblem = planOf(readDemo('lantern-emblem.json'));
const { legs, machines } = emblem.passes;
const strips = layStrips(legs);

/** Where and which way every laying machine is, each quarter foot of every leg: no strip is asked. */
interface Step {
  readonly at: Point;
  readonly way: Point;
  readonly time: number;
  readonly half: number;
}
function stepsOf(leg: Leg): Step[] {
  const long = leg.points.slice(1).map((p, i) => {
    const a = leg.points[i]!;
    return Math.hypot(p.x - a.x, p.y - a.y);
  });
  const whole = long.reduce((n, l) => n + l, 0);
  const steps: Step[] = [];
  let gone = 0;
  long.forEach((l, i) => {
    const [a, b] = [leg.points[i]!, leg.points[i + 1]!];
    const count = Math.ceil(l / 0.25);
    for (let k = 0; k < count; k++) {
      const t = (k + 0.5) / count;
      steps.push({
        at: { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t },
        way: { x: (b.x - a.x) / l, y: (b.y - a.y) / l },
        time: leg.startS + (leg.seconds * (gone + t * l)) / whole,
        half: leg.widthFt / 2,
      });
    }
    gone += l;
  });
  return steps;
}
const steps = legs.filter((l) => l.lays).flatMap(stepsOf);

const within = (p: Point, a: Point, way: Point, half: number, reach: number): boolean => {
  const dx = p.x - a.x;
  const dy = p.y - a.y;
  return Math.abs(dx * way.x + dy * way.y) <= reach && Math.abs(-dx * way.y + dy * way.x) <= half;
};

/** Lean of the last step over `p` by `clockS`; null when none has been there. */
function leanBySteps(p: Point, clockS: number): number | null {
  let last: Step | null = null;
  for (const s of steps) {
    if (s.time > clockS || (last && s.time < last.time)) continue;
    if (within(p, s.at, s.way, s.half, 0.2)) last = s;
  }
  return last && -(last.way.x * p.x + last.way.y * p.y) / Math.hypot(p.x, p.y);
}

/** Lean of the last painted strip over `p`, finished ones whole, others as far as they are made. */
function leanByStrips(p: Point, clockS: number): number | null {
  const done = stripsDone(strips, clockS);
  const begun = strips.slice(done).filter((s) => s.fromS < clockS);
  const painted: (readonly [LayStrip, readonly Point[]])[] = [
    ...strips.slice(0, done).map((s) => [s, s.points] as const),
    ...begun.map((s) => [s, stripSoFar(s, clockS)] as const),
  ];
  let lean: number | null = null;
  for (const [strip, line] of painted) {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1]!, line[i]!];
      const l = Math.hypot(b.x - a.x, b.y - a.y);
      if (l === 0) continue;
      const way = { x: (b.x - a.x) / l, y: (b.y - a.y) / l };
      const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      if (within(p, middle, way, strip.widthFt / 2, l / 2)) lean = strip.lean;
    }
  }
  return lean;
}

describe('the lay as it is made', () => {
  it('is at any place and moment that of the last machine that went over it', () => {
    const random = seededRandom(7);
    const end = Math.max(...legs.map((l) => l.startS + l.seconds));
    const hold = legs.find((l) => l.kind === 'hold')!;
    let laid = 0;
    let agree = 0;
    const count = 500;
    for (let k = 0; k < count; k++) {
      const angle = (0.25 + 0.5 * random.uniform()) * Math.PI;
      const far = 130 + 240 * random.uniform();
      const p = { x: far * Math.cos(angle), y: far * Math.sin(angle) };
      const isBefore = random.uniform() < 0.5;
      const clockS = isBefore
        ? random.uniform() * hold.startS
        : hold.startS + hold.seconds + random.uniform() * (end - hold.startS - hold.seconds);
      const want = leanBySteps(p, clockS);
      const got = leanByStrips(p, clockS);
      if (want !== null) laid++;
      const isSame = want === null || got === null ? want === got : Math.abs(want - got) < 0.2;
      if (isSame) agree++;
    }
    expect(laid).toBeGreaterThan(count / 3);
    // A few points lie within a quarter foot of an end or in the wedge outside a bend.
    expect(agree / count).toBeGreaterThan(0.985);
  });

  it('comes in the order of finishing, in short strips that take up the legs that lay', () => {
    for (let i = 1; i < strips.length; i++) {
      expect(strips[i]!.toS).toBeGreaterThanOrEqual(strips[i - 1]!.toS);
    }
    const time = strips.reduce((n, s) => n + s.toS - s.fromS, 0);
    const laying = legs.filter((l) => l.lays && l.points.length > 1);
    expect(time).toBeCloseTo(
      laying.reduce((n, l) => n + l.seconds, 0),
      3,
    );
    expect(stripsDone(strips, -1)).toBe(0);
    expect(stripsDone(strips, Infinity)).toBe(strips.length);
  });

  it('takes in the turns of a drum that stays down', () => {
    const turns = legs
      .filter((l) => l.kind === 'turn' && l.phase === 'graphic')
      .map((l) => ({ ...l, lays: true }));
    expect(turns.length).toBeGreaterThan(5);
    const times = layStrips(turns).reduce((n, s) => n + s.toS - s.fromS, 0);
    expect(times).toBeCloseTo(
      turns.reduce((n, l) => n + l.seconds, 0),
      3,
    );
  });
});

describe('a machine at a moment', () => {
  const wide = machines.find((m) => m.role === 'wide')!;
  const own = legs.filter((l) => l.machine === wide.id);

  it('stands at every leg’s start and end, and does what the leg is', () => {
    const doing = { mow: 'pass', turn: 'turning', run: 'empty', hold: 'count' };
    for (const leg of own) {
      const start = machineNow(wide, own, leg.startS + 1e-6)!;
      expect(Math.hypot(start.at.x - leg.points[0]!.x, start.at.y - leg.points[0]!.y)).toBeLessThan(
        0.01,
      );
      expect(start.doing).toBe(doing[leg.kind]);
      if (leg.kind === 'mow') expect(start.pass).toBe(leg.pass);
    }
  });

  it('comes off the grass at the end, and faces against a way that it backs along', () => {
    const last = own[own.length - 1]!;
    expect(machineNow(wide, own, last.startS + last.seconds + 1)!.doing).toBe('done');
    expect(machineNow(wide, own, -1)!.doing).toBe('to-come');
    expect(machineNow(wide, [], 0)).toBeNull();
    const back = own.find((l) => l.gear === 'reverse' && l.points.length > 1)!;
    const [a, b] = [back.points[0]!, back.points[1]!];
    const { heading } = machineNow(wide, own, back.startS + 1e-6)!;
    expect(Math.cos(heading) * (b.x - a.x) + Math.sin(heading) * (b.y - a.y)).toBeLessThan(0);
  });
});
