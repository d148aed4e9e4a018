import { describe, expect, it } from 'vitest';
import { auditReadings } from '../../src/audit/audit-readings';
import { CREW_FORMAT, CREW_VERSION } from '../../src/exchange/crew-file-model';
import { asSetCsv, outlineAsSetCsv } from '../../src/exchange/audit-files';
import { readReadings } from '../../src/exchange/readings-csv';
import { outlineCsv } from '../../src/exchange/stake-files';
import { SMALL_ART, SMALL_PLAN } from '../audit/support/small-plan';

const PLAN = { stakes: SMALL_PLAN, inputHash: 'abcdef0123456789' };
const read = (text: string) => readReadings(text, 'day.csv', PLAN);
const codes = (text: string) => read(text).problems.map((p) => [p.code, p.where]);
const planned = (id: string) => SMALL_PLAN.stakes.find((s) => s.id === id)!.check;
const check = (id: string) => `${id},${planned(id).from},${planned(id).reading.text}`;
const six = ['1', '2', '3', '4', '5', '6'];

function values(text: string) {
  const result = read(text);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value.map((r) => [r.line, r.stake, r.from, r.ft]);
}

describe('a table of readings', () => {
  it('is read bare or in quotes, in any order of columns, with what spreadsheets add', () => {
    const { from, reading } = planned('3');
    const quoted = `"${reading.text.replace('"', '""')}"`;
    const want = [[2, '3', from, reading.ft]];
    expect(values(`stake,from,reading\n3,${from},${reading.text}\n`)).toEqual(want);
    expect(values(`stake,from,reading,note\r\n3,${from},${quoted},"wet, cold"\r\n`)).toEqual(want);
    expect(values(`\uFEFFFrom;Stake;Reading\n${from};#3;${reading.text}\n`)).toEqual(want);
    expect(values(`stake\tfrom\treading\n03\t${from.toLowerCase()}\t${reading.text}`)).toEqual(
      want,
    );
  });

  it('may be plain numbers when the header has the unit', () => {
    const ft = planned('3').reading.ft;
    expect(values(`stake,from,reading_ft\n3,1B,${ft}\n`)[0]![3]).toBe(ft);
    expect(values(`stake,from,reading_m\n3,1B,${ft * 0.3048}\n`)[0]![3]).toBeCloseTo(ft, 9);
    expect(values(`stake,from,reading\n3,1B,${(ft * 0.3048).toFixed(3)} m\n`)[0]![3]).toBeCloseTo(
      ft,
      2,
    );
  });

  it('may leave readings out that were not taken', () => {
    expect(values(`stake,from,reading\n3,1B,\n${check('4')}\n\n`)).toHaveLength(1);
  });
});

describe('a bad table', () => {
  it('is named by line, all lines at once', () => {
    const text = [
      'stake,from,reading',
      check('1'),
      ',HP,148\' 2"',
      '99,HP,148\' 2"',
      '3,HP,about 148',
      '3,HP,148.2',
      `148' 2",HP,3`,
      '3,HP,0\' 0"',
    ].join('\n');
    expect(codes(text)).toEqual([
      ['reading-stake-missing', 'day.csv: line 3'],
      ['reading-unknown', 'day.csv: line 4'],
      ['reading-unreadable', 'day.csv: line 5'],
      ['reading-no-unit', 'day.csv: line 6'],
      ['readings-columns-swapped', 'day.csv: line 7'],
      ['reading-bad', 'day.csv: line 8'],
    ]);
  });

  it('with a decimal comma, a value too far right or a foot of inches is named', () => {
    const metres = [
      'stake,from,reading_m,note',
      '3,1B,45,175',
      '3,1B,45,175,wet',
      '3,1B,,45.175 m',
      '3,1B,45.175,"wet, cold"',
      '3,1B,45.175,2',
    ].join('\n');
    expect(codes(metres)).toEqual(
      [2, 3, 4].map((line) => ['reading-misplaced', `day.csv: line ${line}`]),
    );
    const feet = [
      'stake,from,reading,who',
      `3,1B,,148' 2"`,
      `3,1B,148' 14"`,
      `3,1B,148' 2 5/4"`,
      `3,1B,148' 2,5"`,
      `3,1B,148' 4,75`,
      `3,1B,148' 2",2`,
    ].join('\n');
    expect(codes(feet)).toEqual([
      ['reading-misplaced', 'day.csv: line 2'],
      ['reading-unreadable', 'day.csv: line 3'],
      ['reading-unreadable', 'day.csv: line 4'],
      ['reading-misplaced', 'day.csv: line 5'],
      ['reading-misplaced', 'day.csv: line 6'],
    ]);
    expect(codes('stake,from,reading,note\n3,1B,148,wet\n')[0]![0]).toBe('reading-no-unit');
    expect(values(`stake,from,reading,who,who\n${check('4')},a,b\n`)).toHaveLength(1);
    const { from, reading } = planned('3');
    expect(values(`stake,from,reading\n3,${from},${reading.text},,\n`)).toHaveLength(1);
  });

  it('without a header, with two units, empty, or endless is refused', () => {
    expect(codes(check('1'))).toEqual([['readings-header', 'day.csv: line 1']]);
    expect(codes('stake,from,reading_ft,reading_m\n1,HP,2,3')[0]![0]).toBe('readings-header');
    expect(codes('stake,from,reading,From\n1,HP,2,3')[0]![0]).toBe('readings-header');
    expect(codes('')).toEqual([['readings-empty', 'day.csv']]);
    expect(codes('stake,from,reading\n')).toEqual([['readings-empty', 'day.csv']]);
    expect(codes(`stake,from,reading\n${`${check('1')}\n`.repeat(5001)}`)[0]![0]).toBe(
      'readings-huge',
    );
    expect(codes('x'.repeat(2_000_001))[0]![0]).toBe('readings-huge');
  });

  it('of metres for feet, of feet for metres or of inches is recognised as a whole', () => {
    const rows = (unit: string, factor: number) =>
      [
        `stake,from,reading_${unit}`,
        ...six.map((id) => `${id},${planned(id).from},${planned(id).reading.ft * factor}`),
      ].join('\n');
    const said = (text: string) => {
      const [p] = read(text).problems;
      return [p?.code, p?.what, p?.fix];
    };
    expect(said(rows('ft', 0.3048))[1]).toMatch(/factor of 3\.28: they look like metres/);
    expect(said(rows('ft', 0.3048))[2]).toBe('name the column reading_m');
    expect(said(rows('m', 1))[1]).toMatch(/factor of 3\.28: they look like feet/);
    expect(said(rows('ft', 12))[1]).toMatch(/they look like inches/);
  });

  it('with two readings of one distance that disagree names both lines', () => {
    const { from, reading } = planned('3');
    const text = `stake,from,reading_ft\n3,${from},${reading.ft}\n${from},3,${reading.ft + 1}\n`;
    expect(codes(text)).toEqual([['readings-disagree', 'day.csv: lines 2 and 3']]);
  });

  it('of another job is not audited', () => {
    const rows = six.map((id) => `${id},${planned(id).from},${planned(id).reading.ft + 30}`);
    expect(codes(`stake,from,reading_ft\n${rows.join('\n')}`)[0]![0]).toBe(
      'readings-of-another-plan',
    );
  });
});

describe('the phone page’s file', () => {
  const file = (plan: string, change: object = {}) =>
    JSON.stringify({
      format: CREW_FORMAT,
      version: CREW_VERSION,
      plan,
      job: 'A job',
      saved_at: '2027-04-16T12:30:00.000Z',
      rounds: [],
      stakes: six.map((id, i) => ({
        stake: id,
        kind: 'outline',
        round: 1,
        set_at: null,
        seconds: null,
        check_from: planned(id).from,
        check_ft: i === 0 ? null : planned(id).reading.ft,
        check_text: planned(id).reading.text,
        note: '',
        ...(i === 2 ? change : {}),
      })),
    });

  it('gives its check readings, those that were taken', () => {
    expect(values(file('abcdef01')).map((v) => v[1])).toEqual(['2', '3', '4', '5', '6']);
  });

  it.each([
    ['a stake that is not there', { stake: '99' }, 'reading-unknown'],
    ['a control that is not there', { check_from: 'K9' }, 'reading-unknown'],
    ['a reading of nothing', { check_ft: 0 }, 'reading-bad'],
  ])('with %s is named by entry', (_, change, code) => {
    expect(codes(file('abcdef01', change))).toEqual([[code, 'day.csv: entry 3']]);
  });

  it('with words for numbers, or cut short, is refused whole', () => {
    expect(codes(file('abcdef01', { check_ft: 20_000 }))[0]![0]).toBe('value-range');
    expect(read(file('abcdef01', { check_ft: 'about 12' })).ok).toBe(false);
    expect(read(file('abcdef01', { stake: 12 })).ok).toBe(false);
    expect(read(file('abcdef01').slice(0, -20)).ok).toBe(false);
  });

  it('of another plan is refused', () => {
    expect(codes(file('00000000'))[0]![0]).toBe('readings-of-another-plan');
  });
});

describe('the files of an audit', () => {
  const readings = read(`stake,from,reading\n${six.map(check).join('\n')}\n`);
  const result = readings.ok && auditReadings(SMALL_PLAN, SMALL_ART, readings.value);
  if (!result || !result.ok) throw new Error('the planned readings did not fit the plan');

  it('have a row per stake and per piece, the outline’s own columns first', () => {
    const asSet = asSetCsv(result.value).trimEnd().split('\r\n');
    expect(asSet).toHaveLength(1 + SMALL_PLAN.stakes.length);
    const outline = outlineAsSetCsv(SMALL_PLAN, result.value).trimEnd().split('\r\n');
    expect(outline).toHaveLength(1 + 8);
    expect(outline[0]!.startsWith(outlineCsv(null).trimEnd())).toBe(true);
    for (const row of outline.slice(1)) expect(row).toMatch(/,(yes|no),yes$/);
  });
});
