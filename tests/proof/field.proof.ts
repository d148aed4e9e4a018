/** Precision from the files, and crews that have the packet alone, at full size. */
import { beforeAll, describe, expect, it } from 'vitest';
import { packetOf, planOf, readDemo } from '../contract/plan-of';
import { readPdfLines } from '../sheets/read-pdf';
import { filesOf } from './files-of';
import { followPacket, type CrewTally } from './follow-packet';
import { holdEllipses, type EllipseTally } from './hold-ellipses';
import { holdTable, percent } from './proof-doc';
import type { Files } from './read-job';

const DAYS = 25_000;
const CREWS = 500;
const DEMOS = ['lantern-emblem', 'lanterns-word'];

interface Proven {
  readonly demo: string;
  readonly ellipses: EllipseTally;
  readonly crews: CrewTally;
}

const farthest = (values: readonly number[]): number => Math.max(...values.map(Math.abs));
const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

async function prove(demo: string): Promise<Proven> {
  const plan = planOf(readDemo(`${demo}.json`));
  const files: Files = filesOf(plan);
  const lines = (await readPdfLines(await packetOf(plan))).flat();
  return {
    demo,
    ellipses: holdEllipses(files, DAYS, 2027),
    crews: followPacket(lines, files, CREWS, 415),
  };
}

describe('both demos on the grass', () => {
  let proven: Proven[];

  beforeAll(async () => {
    proven = [];
    for (const demo of DEMOS) proven.push(await prove(demo));
  }, 3_600_000);

  it('95 % ellipses hold 94 to 96 % of all stakes of 25,000 days', () => {
    for (const { ellipses } of proven) {
      expect(ellipses.insideShare).toBeGreaterThan(0.94);
      expect(ellipses.insideShare).toBeLessThan(0.96);
    }
  });

  it('every printed semi-major axis is within 2 % of the simulated one', () => {
    for (const { ellipses } of proven) expect(farthest(ellipses.semiMajorOff)).toBeLessThan(0.02);
  });

  it("every check's printed limit is three sigmas of the simulated difference, within 3 %", () => {
    for (const { ellipses } of proven) expect(farthest(ellipses.limitOff)).toBeLessThan(0.03);
  });

  it('95 of 100 crews with the packet alone are within tolerance + 1.7 ellipses everywhere', () => {
    for (const { crews } of proven) {
      expect(crews.crews).toBeGreaterThanOrEqual(500);
      expect(crews.within / crews.crews).toBeGreaterThanOrEqual(0.95);
    }
  });

  it('stands in docs/proof.md as measured', async () => {
    const precision = await holdTable('precision', {
      head: ['job', 'stakes', 'inside', 'semi-major', 'limit'],
      rows: proven.map(({ demo, ellipses }) => [
        demo,
        ellipses.semiMajorOff.length,
        percent(ellipses.insideShare),
        percent(farthest(ellipses.semiMajorOff)),
        percent(farthest(ellipses.limitOff)),
      ]),
    });
    const crews = await holdTable('crews', {
      head: ['job', 'crews', 'within', 'middle', 'worst'],
      rows: proven.map(({ demo, crews: tally }) => [
        demo,
        tally.crews,
        percent(tally.within / tally.crews),
        middle(tally.worst).toFixed(2),
        Math.max(...tally.worst).toFixed(2),
      ]),
    });
    expect(Math.max(precision, crews)).toBeLessThanOrEqual(5);
  });
});
