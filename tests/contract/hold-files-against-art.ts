/**
 * The output contract read as a stranger would: from controls.csv, stakes.csv and outline.csv alone,
 * every stake is set out by its printed readings, the stakes are joined, and the result is compared
 * with the art. `tests/support/stranger.ts` shares no code with the engine.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Project } from '../../src/project/model';
import {
  compareAreas,
  joinOutline,
  largestGap,
  parseCsv,
  perimeter,
  readingFeet,
  setOut,
  type OutlineRow,
  type StakeRow,
  type Xy,
} from '../support/stranger';
import { stakeFilesOf } from './plan-of';

const stakeRow = (r: Record<string, string>): StakeRow => ({
  stake: r['stake']!,
  method: r['method'] as StakeRow['method'],
  from1: r['tie1_from']!,
  reading1: r['tie1_text']!,
  from2: r['tie2_from']!,
  reading2: r['tie2_text']!,
  offset: r['offset_text']!,
  side: r['side']!,
  checkFrom: r['check_from']!,
  checkReading: r['check_text']!,
});

const outlineRow = (r: Record<string, string>): OutlineRow => ({
  contour: `${r['graphic']}/${r['contour']}`,
  kind: r['kind'] as OutlineRow['kind'],
  from: r['from_stake']!,
  to: r['to_stake']!,
  pin: r['pin_stake']!,
  radius: r['radius_text']!,
  sweep: r['sweep']!,
  offset: r['offset_text']!,
  side: r['side']!,
});

const distance = (a: Xy, b: Xy): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Declares the tests of one job; `project` is read when they run. */
export function holdFilesAgainstArt(name: string, project: () => Project): void {
  describe(`${name}, set out from the files alone`, () => {
    let stakes: Record<string, string>[];
    let outline: Record<string, string>[];
    let fixed: Map<string, Xy>;
    let at: Map<string, Xy>;
    let art: Xy[][];
    let toleranceFt: number;
    let limitFt: number;

    beforeAll(() => {
      const job = project();
      const { files, graphic } = stakeFilesOf(job);
      const controls = parseCsv(files['controls.csv']!);
      stakes = parseCsv(files['stakes.csv']!);
      outline = parseCsv(files['outline.csv']!);
      fixed = new Map(
        controls
          .filter((c) => c['kind'] === 'fixed')
          .map((c): [string, Xy] => [c['id']!, [Number(c['x_ft']), Number(c['y_ft'])]]),
      );
      at = setOut(fixed, stakes.map(stakeRow));
      art = graphic.map((ring) => ring.map((p): Xy => [p.x, p.y]));
      toleranceFt = job.stakeout.toleranceIn / 12;
      limitFt = job.stakeout.tape.limitFt;
    });

    it('puts every stake where the file says the readings put it', () => {
      expect(stakes.length).toBeGreaterThan(10);
      for (const row of stakes) {
        const p = at.get(row['stake']!)!;
        expect(distance(p, [Number(row['x_ft']), Number(row['y_ft'])])).toBeLessThan(0.001);
      }
    });

    it('joins into the art within the tolerance and half an inch, both ways', () => {
      const drawn = joinOutline(outline.map(outlineRow), at);
      const bound = toleranceFt + 0.5 / 12;
      expect(largestGap(drawn, art)).toBeLessThanOrEqual(bound);
      expect(largestGap(art, drawn)).toBeLessThanOrEqual(bound);
      const areas = compareAreas(drawn, art);
      const missed = 1 - areas.both / (areas.a + areas.b - areas.both);
      expect(missed).toBeLessThanOrEqual((0.55 * toleranceFt * perimeter(art)) / areas.b);
    });

    it('keeps every clause of the contract', () => {
      const earlier = new Map(fixed);
      for (const row of stakes) {
        const readings = ['tie1', 'tie2', 'check', 'offset'];
        const texts = readings.map((name) => row[`${name}_text`]!);
        const values = readings.map((name) => row[`${name}_ft`]!);
        texts.forEach((text, i) => {
          if (text === '') return;
          expect(Math.abs(readingFeet(text) - Number(values[i]))).toBeLessThan(1e-9);
          expect(readingFeet(text)).toBeLessThanOrEqual(limitFt);
        });
        if (row['method'] === 'ties') {
          expect(Number(row['intersection_deg'])).toBeGreaterThanOrEqual(30);
          expect(Number(row['intersection_deg'])).toBeLessThanOrEqual(150);
          expect([row['offset_ft'], row['offset_text']]).toEqual(['', '']);
        } else {
          expect([row['tie2_ft'], row['tie2_text'], row['intersection_deg']]).toEqual(['', '', '']);
        }
        expect(row['method'] === 'chord').toBe(row['tie1_text'] === '');
        expect(row['method'] === 'line' ? ['T', 'A'] : ['L', 'R']).toContain(row['side']);
        const from = earlier.get(row['check_from']!);
        expect(from, `check of ${row['stake']} from an earlier place`).toBeDefined();
        const there = at.get(row['stake']!)!;
        const off = Math.abs(distance(from!, there) - readingFeet(row['check_text']!));
        expect(off * 12).toBeLessThanOrEqual(0.126); // half of a quarter inch, or of 5 mm
        expect(Number(row['check_limit_in'])).toBeGreaterThan(0);
        earlier.set(row['stake']!, there);
      }
    });

    it('keeps stakes 8 in apart and set controls 2 ft from every other stake', () => {
      const all = [...at].filter(([id]) => stakes.some((s) => s['stake'] === id));
      const controls = new Set(
        stakes.filter((s) => s['kind'] === 'control').map((s) => s['stake']!),
      );
      const close: string[] = [];
      all.forEach(([a, p], i) => {
        for (const [b, q] of all.slice(i + 1)) {
          const least = controls.has(a) || controls.has(b) ? 2 : 8 / 12;
          if (distance(p, q) < least) close.push(`${a}-${b}`);
        }
      });
      expect(close).toEqual([]);
    });

    it('swings at least 3 ft of tape, at most half a turn, with steps of at most 3/4 in', () => {
      for (const row of outline.filter((r) => r['pin_stake'] !== '')) {
        const radius = readingFeet(row['radius_text']!);
        expect(Math.abs(radius - Number(row['radius_ft']))).toBeLessThan(1e-9);
        expect(radius).toBeGreaterThanOrEqual(3);
        if (row['kind'] === 'circle') continue;
        const pin = at.get(row['pin_stake']!)!;
        const ends = [at.get(row['from_stake']!)!, at.get(row['to_stake']!)!] as const;
        for (const end of ends) {
          expect(Math.abs(distance(pin, end) - radius) * 12).toBeLessThanOrEqual(0.75);
        }
        const [from, to] = ends.map((p) => Math.atan2(p[1] - pin[1], p[0] - pin[0])) as [
          number,
          number,
        ];
        const ccw = (to - from + 4 * Math.PI) % (2 * Math.PI);
        expect(row['sweep'] === 'ccw' ? ccw : 2 * Math.PI - ccw).toBeLessThanOrEqual(
          Math.PI + 1e-9,
        );
      }
    });

    it('bends at most half a turn over 6 ft, an inch or more off the straight line', () => {
      for (const row of outline.filter((r) => r['kind'] === 'bend')) {
        const offset = readingFeet(row['offset_text']!);
        expect(Math.abs(offset - Number(row['offset_ft']))).toBeLessThan(1e-9);
        expect(offset).toBeGreaterThanOrEqual(1 / 12);
        const chord = distance(at.get(row['from_stake']!)!, at.get(row['to_stake']!)!);
        expect(chord).toBeLessThanOrEqual(6.1);
        expect(offset).toBeLessThanOrEqual(chord / 2);
      }
    });

    it('numbers rounds as consecutive stakes from the same two controls, or of a short tape', () => {
      const seen = new Map<string, string>();
      let last = 0;
      for (const row of stakes) {
        const round = Number(row['round']);
        expect(round === last || round === last + 1).toBe(true);
        const short = row['method'] === 'offset' || row['method'] === 'chord';
        const pair = short ? 'short' : [row['tie1_from'], row['tie2_from']].sort().join('+');
        expect(seen.get(row['round']!) ?? pair).toBe(pair);
        seen.set(row['round']!, pair);
        last = round;
      }
    });
  });
}
