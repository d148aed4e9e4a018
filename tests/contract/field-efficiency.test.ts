import { describe, expect, it } from 'vitest';
import { routeJson, summaryJson } from '../../src/exchange/json-files';
import { MACHINES } from '../../src/mowing/machine-catalogue';
import { planOf, readDemo } from './plan-of';

interface RouteLeg {
  readonly machine: string;
  readonly phase: string;
  readonly kind: string;
  readonly points: readonly [number, number][];
  readonly seconds: number;
}
interface Figures {
  readonly reached: number;
  readonly handbook_low: number;
  readonly handbook_high: number;
  readonly source: string;
}

const feet = (points: readonly [number, number][]): number =>
  points.slice(1).reduce((n, [x, y], i) => n + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);

describe('field efficiency', () => {
  it.each(['lanterns-word.json', 'lantern-emblem.json'])(
    'of %s is what route.json gives by area, time, width and speed',
    (demo) => {
      const plan = planOf(readDemo(demo));
      const { legs } = JSON.parse(routeJson(plan)) as { legs: RouteLeg[] };
      const { field_efficiency: figures } = JSON.parse(summaryJson(plan)) as {
        field_efficiency: Record<string, Figures>;
      };
      expect(Object.keys(figures).sort()).toEqual([...new Set(legs.map((l) => l.machine))].sort());
      for (const [id, said] of Object.entries(figures)) {
        const { cutWidthIn, overlapIn, cuttingMph } = MACHINES.find((m) => m.id === id)!;
        const own = legs.filter(
          (l) => l.machine === id && l.kind !== 'hold' && l.phase !== 'carry',
        );
        const mown = own.filter((l) => l.kind === 'mow').reduce((n, l) => n + feet(l.points), 0);
        const areaSqFt = (mown * (cutWidthIn - overlapIn)) / 12;
        const hours = own.reduce((n, l) => n + l.seconds, 0) / 3600;
        const fullSqFtPerHour = (cutWidthIn / 12) * cuttingMph * 5280;
        expect(said.reached).toBeCloseTo(areaSqFt / hours / fullSqFtPerHour, 9);
        // A ballpark's short passes stay below what handbooks give for open fields.
        expect(said.reached).toBeLessThan(said.handbook_low);
        expect(said.handbook_low).toBeLessThan(said.handbook_high);
        expect(said.source).toMatch(/D497/);
      }
      expect(plan.problems.map((p) => p.code)).not.toContain('efficiency-above-handbook');
    },
  );
});
