/** Full size, one demo to a file so that both cores work. */
import { beforeAll, describe, expect, it } from 'vitest';
import { planOf, readDemo } from '../contract/plan-of';
import { fieldOf, newDay, workThrough } from '../support/field-crew';
import { catcherOf, planted, type Catcher } from './catch-slips';
import { filesOf } from './files-of';
import { auditByCommand, auditorOf, slipTable, tallySlips, type SlipTally } from './hold-slips';
import { falseAlarms, readingsOf, type Auditor } from './name-slips';
import { printedSizes, type PrintedSizes } from './printed-sizes';
import { holdTable } from './proof-doc';
import { readJob } from './read-job';

const DRAWS = 2000;
const AUDITED = 240;
/** Days without a slip. */
const QUIET_DAYS = 200;
const POINTS = 0.03;

export function proveSlips(demo: string): void {
  describe(`planted slips: ${demo}`, () => {
    let catcher: Catcher;
    let audit: Auditor;
    let sizes: PrintedSizes;
    let tallies: readonly SlipTally[];

    beforeAll(() => {
      const plan = planOf(readDemo(`${demo}.json`));
      catcher = catcherOf(fieldOf(readJob(filesOf(plan))));
      audit = auditorOf(plan);
      sizes = printedSizes(plan, catcher);
      tallies = tallySlips(catcher, audit, DRAWS, AUDITED);
    }, 3_600_000);

    it('are caught as often as theory says, within 3 points, of every kind', () => {
      for (const { caught } of tallies) {
        expect(Math.abs(caught.caught - caught.theory), caught.kind).toBeLessThan(POINTS);
      }
    });

    it('of 12 in in one reading are caught at once in 95 of 100', () => {
      const twelve = tallies.find(({ caught }) => caught.kind === 'reading 12')!;
      expect(twelve.caught.caught).toBeGreaterThanOrEqual(0.95);
    });

    it('show from the printed size on, 8 times in 10 or more, where the sheets say so', () => {
      expect(sizes.short).toEqual([]);
      expect(sizes.told).toBeGreaterThan(0.95 * catcher.field.rows.length);
    });

    it('of 12 in are traced to their stake, and to their reading when what is asked for is measured', () => {
      const { named } = tallies.find(({ caught }) => caught.kind === 'reading 12')!;
      expect(named.checks.stake).toBeGreaterThan(0.85);
      expect(named.asked.stake).toBeGreaterThan(0.95);
      expect(named.asked.reading).toBeGreaterThan(0.9);
    });

    it('raise an alarm on days without a slip as often as the audit says of itself', () => {
      const { share, said } = falseAlarms(catcher.field, audit, QUIET_DAYS, 77);
      const sigma = Math.sqrt((said * (1 - said)) / QUIET_DAYS);
      expect(share).toBeGreaterThan(said - 4 * sigma);
      expect(share).toBeLessThan(said + 4 * sigma);
    });

    it('are judged by the command as by the engine', () => {
      const [one] = planted(catcher.field, 'reading 12', 1);
      const day = newDay(catcher.field);
      workThrough(catcher.field, one!.z, day, one!.slip);
      const readings = readingsOf(catcher.field, day);
      expect(auditByCommand(demo, readings).suspects).toEqual(
        JSON.parse(JSON.stringify(audit(readings)!.suspects)),
      );
    });

    it('stand in docs/proof.md as measured', async () => {
      // The figures are per cents: a plan that changes a little may move them by this much.
      expect(await holdTable(demo, slipTable(tallies))).toBeLessThanOrEqual(5);
    });
  });
}
