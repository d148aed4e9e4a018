import { describe, expect, it } from 'vitest';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import { effectiveCapacity, reachedEfficiency } from '../../src/mowing/mowing-time';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { swathFt } from '../../src/mowing/machines';
import { planRoute } from '../../src/mowing/plan-route';
import type { Swath } from '../../src/mowing/swath-model';

/**
 * Published effective capacities, acres an hour: extension bulletins PM 696 (2001) and A3-24,
 * Estimating Field Capacity of Farm Machines; the last three progressiveforage.com, efficiency and
 * capacity. Width ft, speed mph, efficiency, printed capacity.
 */
const PUBLISHED: readonly (readonly [number, number, number, number])[] = [
  [40, 6, 0.7, 20.4],
  [15, 5, 0.63, 5.7],
  [15, 6, 0.63, 6.9],
  [20, 6, 0.63, 9.2],
  [30, 6, 0.6, 13.1],
  [60, 6, 0.68, 29.7],
  [60, 12, 0.68, 59.3],
  [80, 12, 0.68, 79.1],
  [45, 5, 0.6, 16.4],
  [(7 * 16) / 12, 5, 0.85, 4.8],
  [(8 * 18) / 12, 5, 0.85, 6.2],
  [30, 5, 1, 18.2],
  [30, 5, 0.8, 14.5],
  [30, 5, 0.6, 10.9],
];

const TRIPLEX = MACHINES[0]!;
const HAND = MACHINES.find((m) => m.id === 'hand-roller-24')!;

/** Parallel passes across open grass in centre field, alternating, far from every edge. */
function blockRoute(passes: number, lengthFt: number) {
  const field = buildField(defaultFieldSpec(), 'feet-inches');
  if (!field.ok) throw new Error('the default field must build');
  const w = swathFt(TRIPLEX);
  const swaths: Swath[] = Array.from({ length: passes }, (_, i) => {
    const x = -80 + i * w;
    const ends = [
      { x, y: 220 },
      { x, y: 220 + lengthFt },
    ];
    const line = i % 2 === 0 ? ends : ends.reverse();
    return {
      id: `block/${i}`,
      patch: 'block',
      role: 'wide',
      phase: 'background',
      line,
      widthFt: TRIPLEX.cutWidthIn / 12,
      group: 0,
      band: i,
    };
  });
  const design = { patches: [], guides: {}, graphic: [], quiet: [], strokes: [] };
  const layout = { swaths, blocked: [], uncovered: [], graphicCovered: 1, laidOutside: 0 };
  const gate = { x: 200, y: 160 };
  const input = { field: field.value, design, wide: TRIPLEX, narrow: HAND, gate, setOutSeconds: 0 };
  const route = planRoute(input, layout);
  if (!route.ok) throw new Error('the block must be driven');
  return route.value;
}

describe('effective capacity', () => {
  it('agrees with the published figures to their last printed place', () => {
    for (const [width, speed, efficiency, printed] of PUBLISHED) {
      expect(Math.abs(effectiveCapacity(width, speed, efficiency) - printed)).toBeLessThan(0.05);
    }
  });

  it('is turned round by the efficiency reached', () => {
    for (const [width, speed, efficiency] of PUBLISHED) {
      const acres = effectiveCapacity(width, speed, efficiency) * 1.5;
      expect(reachedEfficiency(acres * 43560, 1.5 * 3600, width, speed)).toBeCloseTo(efficiency, 9);
    }
    expect(reachedEfficiency(100, 0, 5, 4)).toBe(0);
  });
});

describe('the time of a driven block', () => {
  it('is passes at cutting speed plus turns, and its capacity is C = S·W·E / 8.25', () => {
    const route = blockRoute(12, 80);
    const mown = route.legs.filter((leg) => leg.kind === 'mow');
    const cutting = mown.reduce((n, leg) => n + leg.seconds, 0);
    // 12 passes of 80 ft at 4 mph: 88 ft a minute to the mile an hour.
    expect(cutting).toBeCloseTo((12 * 80 * 60) / (4 * 88), 6);
    const turns = route.legs.filter((leg) => leg.kind !== 'mow' && leg.phase !== 'carry');
    const all = cutting + turns.reduce((n, leg) => n + leg.seconds, 0);
    const reached = route.efficiency[0]!.reached;
    const acres = (12 * 80 * swathFt(TRIPLEX)) / 43560;
    const capacity = effectiveCapacity(TRIPLEX.cutWidthIn / 12, TRIPLEX.cuttingMph, reached);
    expect(acres / (all / 3600)).toBeCloseTo(capacity, 6);
  });

  it('loses less to turns the longer the passes, and never reaches the swath over the cut', () => {
    const short = blockRoute(12, 40).efficiency[0]!.reached;
    const long = blockRoute(12, 120).efficiency[0]!.reached;
    expect(short).toBeLessThan(long);
    expect(long).toBeLessThan(swathFt(TRIPLEX) / (TRIPLEX.cutWidthIn / 12));
    // Mowers: 75 to 85 % in the field, from memory of ASAE D497; 40 to 80 ft lawns lie below.
    expect(long).toBeLessThan(0.85);
  });
});
