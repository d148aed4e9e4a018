import { describe, expect, it } from 'vitest';
import { findMachines } from '../../src/mowing/machines';
import type { MowingSpec } from '../../src/mowing/model';
import { SET_OUT_MARGIN_FT } from '../../src/mowing/set-out-area';
import { findOrderBreaches } from '../support/check-order';
import { findBreaks } from '../support/check-route';
import { demoRoute, type DemoRoute } from '../support/demo-route';
import type { Pair, RouteLeg } from '../support/raster';

const withFurther = (name: string, further: readonly string[], art = true) =>
  demoRoute(name, (p) => ({
    ...p,
    art: art ? p.art : null,
    mowing: { ...p.mowing, ...(further.length > 0 ? { further } : {}) },
  }));

const endOf = (legs: readonly RouteLeg[]): number =>
  Math.max(...legs.map((leg) => leg.start_s + leg.seconds));

/** Where a machine is at a time, at an even pace along its legs. */
function placeAt(legs: readonly RouteLeg[], t: number): Pair | null {
  const leg = legs.find((l) => t >= l.start_s && t < l.start_s + l.seconds);
  if (!leg) return null;
  const lengths = leg.points.slice(1).map(([x, y], i) => {
    const [a, b] = leg.points[i]!;
    return Math.hypot(x - a, y - b);
  });
  let left = ((t - leg.start_s) / leg.seconds) * lengths.reduce((n, l) => n + l, 0);
  for (let i = 0; i < lengths.length; i++) {
    const [[ax, ay], [bx, by]] = [leg.points[i]!, leg.points[i + 1]!];
    const share = lengths[i]! > 0 ? left / lengths[i]! : 0;
    if (share <= 1) return [ax + (bx - ax) * share, ay + (by - ay) * share];
    left -= lengths[i]!;
  }
  return leg.points[leg.points.length - 1]!;
}

/** Spells in which two machines of a kind are nearer than a body's length, sampled every half second. */
function meetings({ legs, bodies }: DemoRoute, kind: string): number {
  const own = Object.keys(bodies)
    .filter((id) => id.startsWith(kind))
    .map((id) => legs.filter((leg) => leg.machine === id));
  const { frontFt, rearFt } = bodies[kind]!;
  let [count, near] = [0, false];
  for (let t = 0; t < endOf(legs); t += 0.5) {
    const places = own.map((l) => placeAt(l, t)).filter((p) => p !== null);
    const now = places.some((a, i) =>
      places.slice(i + 1).some((b) => Math.hypot(a[0] - b[0], a[1] - b[1]) < frontFt + rearFt - 1),
    );
    if (now && !near) count++;
    near = now;
  }
  return count;
}

describe('two mowers of a kind', () => {
  const one = withFurther('lanterns-word', [], false);
  const two = withFurther('lanterns-word', ['triplex-reel'], false);

  it('finish in 58 % of the time of one, and mow all that it mows', () => {
    expect(endOf(two.legs)).toBeLessThan(0.58 * endOf(one.legs));
    expect(two.plan.passes).toHaveLength(one.plan.passes.length);
    expect(two.plan.mowFt).toBeCloseTo(one.plan.mowFt, 3);
    const own = ['triplex-reel', 'triplex-reel-2'].map((id) =>
      endOf(two.legs.filter((leg) => leg.machine === id)),
    );
    expect(Math.min(...own)).toBeGreaterThan(0.85 * Math.max(...own));
  });

  it('have legs that join in place and in time', () => {
    expect(findBreaks(two.legs)).toEqual([]);
  });

  it('start a group when both have finished the one before', () => {
    const mown = (phase: string) =>
      two.legs.filter((leg) => leg.kind === 'mow' && leg.phase === phase);
    const borders = Math.min(...mown('border').map((leg) => leg.start_s));
    expect(borders).toBeGreaterThanOrEqual(endOf(mown('background')) - 0.001);
  });

  it('come no nearer each other than a body, but where the plan says so', () => {
    const said = two.problems.find((p) => p.startsWith('machines-meet'));
    const times = said === undefined ? 0 : Number(/(\d+) times/.exec(said)?.[1] ?? 1);
    expect(meetings(two, 'triplex-reel')).toBeLessThanOrEqual(times);
    expect(times).toBeLessThanOrEqual(2);
  });
});

describe('two of each kind on an emblem', () => {
  const four = withFurther('lantern-emblem', ['triplex-reel', 'rotary-roller-21']);

  it('keep the order of work, and all four wait for one count', () => {
    const graphic = four.design.graphics;
    const powered = Object.keys(four.bodies);
    expect(powered).toHaveLength(4);
    const points = graphic.flatMap((g) => g.rings.flat());
    expect(findOrderBreaches(four.legs, powered, points, SET_OUT_MARGIN_FT)).toEqual([]);
    expect(four.legs.filter((leg) => leg.kind === 'hold')).toHaveLength(4);
    expect(findBreaks(four.legs)).toEqual([]);
  });
});

describe('further machines', () => {
  const spec: MowingSpec = {
    wide: 'triplex-reel',
    narrow: 'rotary-roller-21',
    overrides: {},
    gate: { x: 0, y: 0 },
  };

  it('are told apart by number, and by kind', () => {
    const found = findMachines({ ...spec, further: ['triplex-reel', 'triplex-reel'] });
    expect(found.ok && found.value.further.map((m) => m.id)).toEqual([
      'triplex-reel-2',
      'triplex-reel-3',
    ]);
    expect(findMachines(spec).ok).toBe(true);
  });

  it('must be known and cut as wide as the first', () => {
    const codes = ['tractor', 'five-gang-reel'].map(
      (id) => findMachines({ ...spec, further: [id] }).problems.map((p) => [p.code, p.where])[0],
    );
    expect(codes).toEqual([
      ['machine-unknown', 'mowing.further.0'],
      ['machine-cut', 'mowing.further.0'],
    ]);
    const same = { 'greens-reel-22': { cutWidthIn: 21 } };
    const taken = findMachines({ ...spec, further: ['greens-reel-22'], overrides: same });
    expect(taken.ok && taken.value.further.map((m) => m.id)).toEqual(['greens-reel-22']);
  });
});
