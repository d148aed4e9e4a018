/** The proofs of `npm run proof` with few draws, on the word demo. */
import { beforeAll, describe, expect, it } from 'vitest';
import { holdLinesAgainstArt } from '../contract/hold-packet-against-art';
import { packetOf, planOf, readDemo } from '../contract/plan-of';
import { readPdfLines } from '../sheets/read-pdf';
import { fieldOf } from '../support/field-crew';
import { catcherOf, catchSlips, type Catcher } from './catch-slips';
import { SLIP_KINDS } from './draw-slips';
import { filesOf } from './files-of';
import { followPacket } from './follow-packet';
import { holdEllipses } from './hold-ellipses';
import { auditorOf } from './hold-slips';
import { nameSlips } from './name-slips';
import { printedSizes } from './printed-sizes';
import { readJob, type Files } from './read-job';

const PROJECT = readDemo('lanterns-word.json');

describe('the word demo on the grass', () => {
  let files: Files;
  let lines: readonly string[];
  let catcher: Catcher;

  beforeAll(async () => {
    const plan = planOf(PROJECT);
    files = filesOf(plan);
    lines = (await readPdfLines(await packetOf(plan))).flat();
    catcher = catcherOf(fieldOf(readJob(files)));
  });

  it('meets the art when nothing errs', () => holdLinesAgainstArt(lines, planOf(PROJECT)));

  it('lies 94 to 96 times in 100 in the printed ellipses, as long as simulated', () => {
    const tally = holdEllipses(files, 1000, 20_270_402);
    expect(tally.insideShare).toBeGreaterThan(0.94);
    expect(tally.insideShare).toBeLessThan(0.96);
    // One sigma of a simulated axis is 1/√2000 of it.
    for (const off of tally.semiMajorOff) expect(Math.abs(off)).toBeLessThan(4.5 / Math.sqrt(2000));
  });

  it('is painted within tolerance + 1.7 ellipses by crews that have the packet alone', () => {
    const tally = followPacket(lines, files, 25, 20_270_402);
    expect(tally.within / tally.crews).toBeGreaterThanOrEqual(0.95);
  });

  it.each(SLIP_KINDS)('shows a slip as often as theory says: %s', (kind) => {
    const draws = 150;
    const { caught, theory } = catchSlips(catcher, kind, draws);
    const sigma = Math.sqrt(Math.max(theory * (1 - theory), 1 / draws) / draws);
    expect(Math.abs(caught - theory)).toBeLessThan(4 * sigma);
    if (kind === 'reading 12') expect(caught).toBeGreaterThanOrEqual(0.95);
  });

  it('shows slips from the printed size on, where the sheets say so', () => {
    const { short, told } = printedSizes(planOf(PROJECT), catcher);
    expect(short).toEqual([]);
    expect(told).toBeGreaterThan(0.95 * catcher.field.rows.length);
  });

  it('has most slips of 12 in traced to their stake by the audit', () => {
    const { asked } = nameSlips(catcher.field, auditorOf(planOf(PROJECT)), 'reading 12', 3);
    expect(asked.stake).toBeGreaterThanOrEqual(2 / 3);
    expect(asked.reading).toBeGreaterThanOrEqual(2 / 3);
  });
});
