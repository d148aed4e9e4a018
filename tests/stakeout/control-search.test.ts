import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { knownPoint } from '../../src/adjust/precise-point';
import { roundCovariance } from '../../src/adjust/ellipse';
import { controlsFor } from '../../src/stakeout/choose-controls';
import { stakeGround } from '../../src/stakeout/ground';
import { pairRow, type PrecisionTable } from '../../src/stakeout/precision-table';
import type { SetMethod } from '../../src/stakeout/model';
import { coverTable, searchControls } from '../../src/stakeout/search-controls';
import { defaultField, SPEC } from './support/plans';

/** A table of chance precisions: what two controls make of a stake, 3 in (good) or 9 in. */
function chanceTable(seed: number, candidates: number, stakes: number, good: number) {
  const random = seededRandom(seed);
  const draw = (length: number) =>
    Float32Array.from({ length }, () => (random.uniform() < good ? 3 : 9));
  const point = (i: number) => ({ x: 20 * i, y: 0 });
  const ends = Array.from({ length: candidates }, (_, i) => ({
    id: '?',
    point: knownPoint(point(i), roundCovariance(0.5), 2),
    covariance: roundCovariance(0.5),
  }));
  const table: PrecisionTable = {
    task: {
      known: [],
      candidates: ends.map((end, i) => ({
        at: point(i),
        end,
        semiMajor95In: 1 + random.uniform(),
        checked: true,
      })),
      stakes: Array.from({ length: stakes }, (_, i) => ({ x: i, y: 200 })),
      held: [],
    },
    base: new Float32Array(stakes).fill(9),
    alone: draw(candidates * stakes),
    pairs: draw(pairRow(candidates, 0) * stakes),
  };
  return table;
}

/** The fewest candidates by trying every subset, read straight off the table; 5 for none of four. */
function fewestByTrial(table: PrecisionTable, candidates: number, stakes: number): number {
  const good = (row: Float32Array, i: number, stake: number) => row[i * stakes + stake] === 3;
  let best = 5;
  for (let set = 1; set < 1 << candidates; set++) {
    const members = Array.from({ length: candidates }, (_, i) => i).filter((i) => (set >> i) & 1);
    if (members.length >= best) continue;
    const all = Array.from({ length: stakes }, (_, s) => s).every((s) =>
      members.some(
        (i, k) =>
          good(table.alone, i, s) ||
          members.slice(0, k).some((j) => good(table.pairs, (i * (i - 1)) / 2 + j, s)),
      ),
    );
    if (all) best = members.length;
  }
  return best;
}

describe('the search for the fewest control stakes', () => {
  it.each([
    ['singles suffice', 0.7],
    ['pairs are needed', 0.35],
    ['three or four are needed', 0.22],
    ['often none is found', 0.14],
  ])('equals trying every subset where %s', (_, good) => {
    const sizes = new Set<number>();
    for (let seed = 0; seed < 60; seed++) {
      const table = chanceTable(seed, 10, 12, good);
      const found = searchControls(coverTable(table, 1000, 4), 4);
      const fewest = fewestByTrial(table, 10, 12);
      expect(found?.length ?? 5).toBe(fewest);
      sizes.add(fewest);
    }
    expect(sizes.size).toBeGreaterThan(1);
  });
});

/** Variances by hand, sharing no code with the engine: errors of every coordinate and tape pull. */
type Linear = number[];
interface Place {
  readonly x: number;
  readonly y: number;
  /** Responses to: the eight coordinates of the fixed controls, the tape's scale, then own pulls. */
  readonly ex: Linear;
  readonly ey: Linear;
}

const { readingSigmaIn: A, proportional: P, scaleSigma: S = 0 } = SPEC.tape;
let own = 9;

function tied(a: Place, b: Place, x: number, y: number): Place | null {
  const pulls = [a, b].map((c) => {
    const d = Math.hypot(x - c.x, y - c.y);
    const [ux, uy] = [(x - c.x) / d, (y - c.y) / d];
    const e: Linear = [];
    for (let i = 0; i < Math.max(c.ex.length, 9); i++) {
      e[i] = ux * (c.ex[i] ?? 0) + uy * (c.ey[i] ?? 0);
    }
    e[8]! += S * d * 12;
    e[own++] = Math.hypot(A, P * d * 12);
    return { d, ux, uy, e };
  });
  const [p, q] = [pulls[0]!, pulls[1]!];
  const det = p.ux * q.uy - p.uy * q.ux;
  if (p.d > 200 || q.d > 200 || Math.abs(det) < Math.sin((30.5 * Math.PI) / 180)) return null;
  const length = Math.max(p.e.length, q.e.length);
  const ex = Array.from({ length }, (_, i) => ((p.e[i] ?? 0) * q.uy - (q.e[i] ?? 0) * p.uy) / det);
  const ey = Array.from({ length }, (_, i) => ((q.e[i] ?? 0) * p.ux - (p.e[i] ?? 0) * q.ux) / det);
  return { x, y, ex, ey };
}

/** `along` feet from a on the line through b (negative: away from b), across as sighted. */
function lined(a: Place, b: Place, along: number): Place {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [x, y] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const pull: Linear = [];
  const across: Linear = [];
  for (let i = 0; i < Math.max(a.ex.length, b.ex.length, 9); i++) {
    const [ax, ay, bx, by] = [a.ex[i] ?? 0, a.ey[i] ?? 0, b.ex[i] ?? 0, b.ey[i] ?? 0];
    pull[i] = x * ax + y * ay + (i === 8 ? S * along * 12 : 0);
    across[i] = (1 - along / length) * (x * ay - y * ax) + (along / length) * (x * by - y * bx);
  }
  pull[own] = Math.hypot(A, P * along * 12);
  across[own++] = 0;
  across[own] = Math.hypot(0.25, (along * 12) / 4000);
  pull[own++] = 0;
  const ex = Array.from(across, (v, i) => x * (pull[i] ?? 0) - y * (v ?? 0));
  const ey = Array.from(across, (v, i) => y * (pull[i] ?? 0) + x * (v ?? 0));
  return { x: a.x + x * along, y: a.y + y * along, ex, ey };
}

function axis95(p: Place): number {
  const sum = (f: Linear, g: Linear) => f.reduce((s, v, i) => s + (v ?? 0) * (g[i] ?? 0), 0);
  const [xx, xy, yy] = [sum(p.ex, p.ex), sum(p.ex, p.ey), sum(p.ey, p.ey)];
  return Math.sqrt(5.991465 * ((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)));
}

const best = (known: Place[], x: number, y: number): number =>
  Math.min(
    ...known.flatMap((b, j) =>
      known.slice(0, j).map((a) => {
        own = 60;
        const p = tied(a, b, x, y);
        return p ? axis95(p) : Infinity;
      }),
    ),
  );

const alongOf = (way: SetMethod): number => (way.method === 'line' ? way.tie1.reading.ft : NaN);

describe('the controls chosen on the field', () => {
  const field = defaultField();
  const stakes = [-60, -20, 20, 60].flatMap((x) => [250, 285].map((y) => ({ x, y })));
  const fixed = field.controls.map((c, i): Place => {
    const e = (k: number) => Array.from({ length: 9 }, (_, j) => (j === k ? 0.5 : 0));
    return { x: c.at.x, y: c.at.y, ex: e(2 * i), ey: e(2 * i + 1) };
  });
  const plan = controlsFor(field.controls, stakes, stakeGround(field), SPEC, 4)!;

  it('let every stake meet the target, by sums written for this test', () => {
    own = 9;
    const set: Place[] = [];
    const ids = [...field.controls.map((c) => c.id), ...plan.set.map((c) => c.id)];
    const place = (id: string) => [...fixed, ...set][ids.indexOf(id)]!;
    for (const { stake } of plan.set) {
      const { set: way, point } = stake;
      const a = place(way.method === 'chord' ? way.chordFrom : way.tie1.from);
      const made =
        way.method === 'ties'
          ? tied(a, place(way.tie2.from), point.at.x, point.at.y)!
          : lined(a, place(way.lineTo), (way.side === 'A' ? -1 : 1) * alongOf(way));
      set.push(made);
      expect(axis95(made)).toBeCloseTo(stake.semiMajor95In, 6);
    }
    for (const s of stakes) expect(best([...fixed, ...set], s.x, s.y)).toBeLessThanOrEqual(4);
  });

  it('cannot be fewer: one control tied every 5 ft or lined up every 10 ft leaves a stake above it', () => {
    expect(plan.set).toHaveLength(2);
    for (let x = -200; x <= 200; x += 5) {
      for (let y = 60; y <= 380; y += 5) {
        own = 9;
        const ways = fixed.flatMap((b, j) =>
          fixed.slice(0, j).flatMap((a) => tied(a, b, x, y) ?? []),
        );
        const one = ways.sort((p, q) => axis95(p) - axis95(q))[0];
        if (!one) continue;
        expect(stakes.every((s) => best([...fixed, one], s.x, s.y) <= 3.92)).toBe(false);
      }
    }
    // On the foul lines and the centre line every 10 ft from home, as candidates stand.
    for (const far of fixed.slice(1)) {
      const length = Math.hypot(far.x, far.y);
      for (let along = 10; along <= 400; along += 10) {
        for (const [a, b, from] of [
          [fixed[0]!, far, along],
          [far, fixed[0]!, length - along],
        ] as const) {
          own = 9;
          const one = lined(a, b, from);
          // Within the tape, and a third control in reach to check it.
          const checks = fixed.filter((f) => Math.hypot(f.x - one.x, f.y - one.y) < 200);
          if (Math.abs(from) > 200 || !checks.some((f) => f !== a && f !== b)) continue;
          expect(stakes.every((s) => best([...fixed, one], s.x, s.y) <= 3.92)).toBe(false);
        }
      }
    }
  });
});
