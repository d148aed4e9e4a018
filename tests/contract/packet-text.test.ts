/** Reads the printed packet as another program would, by the grammar of docs/sheets.md. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { LengthSystem } from '../../src/base/quantity';
import type { Plan } from '../../src/plan/model';
import { composePacket } from '../../src/sheets/compose-packet';
import { writePdf } from '../../src/sheets/write-pdf';
import type { SetMethod } from '../../src/stakeout/model';
import { planFixture } from '../sheets/plan-fixture';
import { readPdfLines } from '../sheets/read-pdf';
import { sheetFonts } from '../sheets/sheet-fonts';

const fonts = sheetFonts();
const READING = String.raw`(\d+' \d+(?: \d+\/\d+)?"|\d+\.\d{3} m)`;
const LIMIT = String.raw`(\d+(?: \d+\/\d+)?"|\d+\/\d+"|\d+ mm)`;
const STAKE = new RegExp(
  String.raw`^(\w+) (control|outline|pin|guide) (?:ties (\w+) ${READING} (\w+) ${READING} (left|right)|line (\w+) ${READING} (toward|away from) (\w+)|offset (\w+) ${READING} (\w+) ${READING} (left|right)|chord (\w+) (\w+) offset ${READING} (left|right)) check (\w+) ${READING} within ${LIMIT}( over)?$`,
);
const HANDS = new Map([
  ['left', 'L'],
  ['right', 'R'],
  ['toward', 'T'],
  ['away from', 'A'],
]);

/** What a row must say, in the order of its words. */
function plannedCells(set: SetMethod): string[] {
  switch (set.method) {
    case 'ties':
      return [set.tie1.from, set.tie1.reading.text, set.tie2.from, set.tie2.reading.text, set.side];
    case 'line':
      return [set.tie1.from, set.tie1.reading.text, set.side, set.lineTo];
    case 'offset':
      return [set.tie1.from, set.tie1.reading.text, set.lineTo, set.offset.text, set.side];
    case 'chord':
      return [set.chordFrom, set.lineTo, set.offset.text, set.side];
  }
}

const CONTROL = /^(\w+) (fixed|set) x (-?\d+\.\d{3}) y (-?\d+\.\d{3}) sigma (\d+\.\d\d) (.+)$/;
const PIECE = new RegExp(
  String.raw`^(\d+)\.(\d+) (?:string from (\w+) to (\w+)|swing from (\w+) to (\w+) pin (\w+) radius ${READING} turn (clockwise|counter-clockwise)|bend from (\w+) to (\w+) offset ${READING} (left|right)|circle pin (\w+) radius ${READING} full circle)$`,
);

describe.each<LengthSystem>(['feet-inches', 'metric'])('packet text in %s', (units) => {
  let plan: Plan;
  let bytes: Uint8Array;
  let lines: string[];
  beforeAll(async () => {
    plan = planFixture({ units, paper: units === 'metric' ? 'a4' : 'letter' });
    bytes = await writePdf(composePacket(plan, fonts), fonts, { title: plan.project.name });
    lines = (await readPdfLines(bytes)).flat();
  });

  it('holds every stake once, in setting order, as planned', () => {
    const rows = lines.map((line) => STAKE.exec(line)).filter((row) => row !== null);
    const printed = rows.map((r) => ({
      id: r[1],
      kind: r[2],
      set: r
        .slice(3, 21)
        .filter((cell) => cell !== undefined)
        .map((cell) => HANDS.get(cell) ?? cell),
      check: [r[21], r[22]],
      over: r[24] !== undefined,
    }));
    const planned = plan.stakes!.stakes.map((s) => ({
      id: s.id,
      kind: s.kind,
      set: plannedCells(s.set),
      check: [s.check.from, s.check.reading.text],
      over: plan.stakes!.overTarget.includes(s.id),
    }));
    expect(printed).toEqual(planned);
  });

  it('says how many stakes each round has', () => {
    const counts = lines
      .map((line) => /^Round (\d+) stakes (\d+) /.exec(line))
      .filter((row) => row !== null)
      .map((row) => [Number(row[1]), Number(row[2])]);
    expect(counts).toEqual(plan.stakes!.rounds.map((r) => [r.number, r.stakes.length]));
  });

  it('holds every control with its coordinates', () => {
    const rows = lines.map((line) => CONTROL.exec(line)).filter((row) => row !== null);
    expect(rows.map((r) => [r[1], r[2]])).toEqual(plan.stakes!.controls.map((c) => [c.id, c.kind]));
    for (const [i, c] of plan.stakes!.controls.entries()) {
      expect(Math.abs(Number(rows[i]![3]) - c.at.x)).toBeLessThanOrEqual(0.0005001);
      expect(Math.abs(Number(rows[i]![4]) - c.at.y)).toBeLessThanOrEqual(0.0005001);
    }
  });

  it('holds every piece of the outline, head to tail', () => {
    const rows = lines.map((line) => PIECE.exec(line)).filter((row) => row !== null);
    const printed = rows.map((r) => {
      const key = [r[1], r[2]];
      if (r[3]) return [...key, 'string', r[3], r[4]];
      if (r[10]) return [...key, 'bend', ...r.slice(10, 13), HANDS.get(r[13]!)];
      if (r[14]) return [...key, 'circle', r[14], r[15]];
      return [...key, 'swing', r[5], r[6], r[7], r[8], r[9]];
    });
    const planned = plan.stakes!.contours.flatMap((c) =>
      c.pieces.map((p, i) => {
        const key = [String(c.contour), String(i + 1), p.kind];
        if (p.kind === 'string') return [...key, p.from, p.to];
        if (p.kind === 'circle') return [...key, p.pin, p.radius.text];
        if (p.kind === 'bend') return [...key, p.from, p.to, p.offset.text, p.side];
        const turn = p.sweep === 'cw' ? 'clockwise' : 'counter-clockwise';
        return [...key, p.from, p.to, p.pin, p.radius.text, turn];
      }),
    );
    expect(printed).toEqual(planned);
  });

  it('prints the proving tapes with their limits', () => {
    const rows = lines.filter((line) => line.startsWith('prove '));
    expect(rows.length).toBe(plan.field.proving.length);
    for (const [i, tape] of plan.field.proving.entries())
      expect(rows[i]).toContain(`prove ${tape.from} to ${tape.to} ${tape.text} within `);
  });

  it('stays under 500 kB', () => {
    expect(bytes.length).toBeLessThan(500_000);
  });
});

/** The regular expressions as docs/sheets.md prints them. */
function documentedRows(): Map<string, RegExp> {
  const docs = readFileSync(new URL('../../docs/sheets.md', import.meta.url), 'utf8');
  const rows = [...docs.matchAll(/^([a-z]+) +(\^.*\$)$/gm)];
  return new Map(
    rows.map(([, name, text]) => [
      name!,
      new RegExp(text!.replaceAll('READING', READING).replaceAll('LIMIT', LIMIT)),
    ]),
  );
}

describe('the grammar in docs/sheets.md', () => {
  it('finds every row of a packet and nothing else', async () => {
    const plan = planFixture({ letters: 4 });
    const bytes = await writePdf(composePacket(plan, fonts), fonts, { title: 'x' });
    const lines = (await readPdfLines(bytes)).flat();
    const found = [...documentedRows()].map(([name, row]) => [
      name,
      lines.filter((line) => row.test(line)).length,
    ]);
    const stakes = plan.stakes!;
    expect(Object.fromEntries(found)).toEqual({
      control: stakes.controls.length,
      prove: plan.field.proving.length,
      ties: stakes.stakes.filter((s) => s.set.method === 'ties').length,
      line: stakes.stakes.filter((s) => s.set.method === 'line').length,
      offset: stakes.stakes.filter((s) => s.set.method === 'offset').length,
      chord: stakes.stakes.filter((s) => s.set.method === 'chord').length,
      count: stakes.rounds.length,
      graphic: 1,
      string: stakes.strings,
      bend: stakes.bends ?? 0,
      swing: stakes.swings,
      circle: 1,
    });
  });
});

describe('packet bytes', () => {
  it('are the same when the packet is made again', async () => {
    const plan = planFixture({ letters: 3 });
    const make = () => writePdf(composePacket(plan, fonts), fonts, { title: plan.project.name });
    const [first, second] = [await make(), await make()];
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  });
});
