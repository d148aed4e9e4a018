/** Readings made on the field, from a table or from the phone page's file. */
import { unknownMark } from '../audit/audit-readings';
import type { MeasuredReading } from '../audit/model';
import { parseLength } from '../base/quantity';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { metresToFeet } from '../base/units';
import type { StakePlan } from '../stakeout/model';
import { shortFingerprint } from './crew-data';
import { readCrewFile } from './crew-file';
import { anotherPlan, knownPlaces, misfitProblems, type Known } from './misfit-readings';
import { parseCsv, type CsvLine } from './parse-csv';

/** The plan that readings are of. */
export interface ReadingsFor {
  readonly stakes: StakePlan;
  /** The plan's fingerprint. */
  readonly inputHash: string;
}

const LONGEST_FILE = 2_000_000;
const MOST_READINGS = 5000;
const LONGEST_FT = 10_000;
const HEADER = 'stake,from,reading,note';

/** The columns that are read; others may stand beside them. */
const COLUMNS: readonly string[] = ['stake', 'from', 'reading', 'reading_ft', 'reading_m', 'note'];

type Unit = 'text' | 'ft' | 'm';

interface Columns {
  readonly stake: number;
  readonly from: number;
  readonly reading: number;
  readonly note: number;
  readonly unit: Unit;
  /** How many the header names. */
  readonly count: number;
}

/**
 * Reads `text`, the phone page's file when it begins with a brace, a table otherwise; `where` names the
 * file. Every bad line is named. Problems: `readings-huge`, `readings-empty`, `readings-header`,
 * `readings-columns-swapped`, `reading-misplaced`, `reading-stake-missing`, `reading-unknown`, `reading-no-unit`,
 * `reading-unreadable`, `reading-bad`, `readings-disagree`, `readings-units`,
 * `readings-of-another-plan`, and those of `readCrewFile`.
 */
export function readReadings(
  text: string,
  where: string,
  plan: ReadingsFor,
): Result<readonly MeasuredReading[]> {
  if (text.length > LONGEST_FILE) return fail(tooLong(where));
  const isCrewFile = text.trimStart().startsWith('{');
  const read = isCrewFile
    ? crewReadings(text, where, plan)
    : tableReadings(text, where, plan.stakes);
  if (!read.ok) return read;
  if (read.value.length === 0) return fail(emptyFile(where));
  const problems = misfitProblems(read.value, where, plan.stakes);
  return problems.length > 0 ? fail(...problems) : succeed(read.value);
}

const tooLong = (where: string): Problem =>
  problem(
    'readings-huge',
    where,
    `it is longer than ${MOST_READINGS} readings can be`,
    'give the readings of one job',
  );

function crewReadings(
  text: string,
  where: string,
  plan: ReadingsFor,
): Result<readonly MeasuredReading[]> {
  const file = readCrewFile(text, where);
  if (!file.ok) return file;
  if (file.value.plan !== shortFingerprint(plan.inputHash)) {
    return fail(anotherPlan(where, 'it was saved for a plan made from other figures'));
  }
  const checked = file.value.stakes.flatMap((s, i): MeasuredReading[] =>
    s.check_ft === null
      ? []
      : [
          {
            line: i + 1,
            stake: s.stake,
            from: s.check_from,
            ft: s.check_ft,
            text: s.check_text,
            note: s.note,
          },
        ],
  );
  const known = knownPlaces(plan.stakes);
  const problems = checked.flatMap((r) => [
    ...unknownIds(r, `${where}: entry ${r.line}`, known),
    ...lengthProblems(r.ft, `${where}: entry ${r.line}`),
  ]);
  return problems.length > 0 ? fail(...problems) : succeed(checked);
}

function tableReadings(
  text: string,
  where: string,
  plan: StakePlan,
): Result<readonly MeasuredReading[]> {
  const [header, ...lines] = parseCsv(text);
  if (!header) return fail(emptyFile(where));
  const columns = readHeader(header, where);
  if (!columns.ok) return columns;
  if (lines.length > MOST_READINGS) return fail(tooLong(where));
  const known = knownPlaces(plan);
  const rows = lines.map((line) => readRow(line, columns.value, where, known, plan));
  const problems = rows.flatMap((r) => r.problems);
  if (problems.length > 0) return fail(...problems);
  return succeed(rows.flatMap((r) => (r.ok && r.value ? [r.value] : [])));
}

const emptyFile = (where: string): Problem =>
  problem('readings-empty', where, 'there are no readings in it', `begin with a line ${HEADER}`);

function readHeader({ line, cells }: CsvLine, where: string): Result<Columns> {
  const names = cells.map((c) => c.toLowerCase());
  const at = (name: string) => names.indexOf(name);
  const units: readonly (readonly [string, Unit])[] = [
    ['reading', 'text'],
    ['reading_ft', 'ft'],
    ['reading_m', 'm'],
  ];
  const given = units.filter(([name]) => at(name) >= 0);
  const twice = names.find((name, i) => COLUMNS.includes(name) && at(name) !== i);
  if (twice !== undefined) {
    const what = `the column "${twice.slice(0, 40)}" is named twice`;
    return fail(
      problem('readings-header', `${where}: line ${line}`, what, 'name each column once'),
    );
  }
  if (at('stake') < 0 || at('from') < 0 || given.length !== 1) {
    return fail(
      problem(
        'readings-header',
        `${where}: line ${line}`,
        'the first line must name the columns stake, from, and one of reading, reading_ft or reading_m',
        `begin with a line ${HEADER}`,
      ),
    );
  }
  const [name, unit] = given[0]!;
  return succeed({
    stake: at('stake'),
    from: at('from'),
    reading: at(name),
    note: at('note'),
    unit,
    count: names.length,
  });
}

/** Ids as people write them: `k1` is K1, `#12` and `012` are 12. */
function findId(cell: string, known: Known): string {
  const plain = cell.replace(/^#/, '').toUpperCase();
  const bare = plain.replace(/^0+(?=\d)/, '');
  return known.has(plain) ? plain : known.has(bare) ? bare : cell;
}

/** Null for a line whose reading was left empty: it was not taken. */
function readRow(
  { line, cells }: CsvLine,
  columns: Columns,
  file: string,
  known: Known,
  plan: StakePlan,
): Result<MeasuredReading | null> {
  const where = `${file}: line ${line}`;
  const cell = (at: number) => (at < 0 ? '' : (cells[at] ?? ''));
  const text = cell(columns.reading);
  const [stake, from] = [findId(cell(columns.stake), known), findId(cell(columns.from), known)];
  const misplaced = misplacedWords(cells, columns);
  if (misplaced !== null) return fail(misplacedReading(where, misplaced));
  if (text === '') return succeed(null);
  if (stake === '' || from === '') return fail(missingEnd(where));
  const ends = { stake, from };
  if (isSwapped(ends, text, columns.unit, known)) return fail(swapped(where));
  const length = readLength(text, columns.unit, where, plan);
  const problems = [...unknownIds(ends, where, known), ...length.problems];
  if (!length.ok || problems.length > 0) return fail(...problems);
  const wrong = lengthProblems(length.value, where);
  if (wrong.length > 0) return fail(...wrong);
  return succeed({ line, ...ends, ft: length.value, text, note: cell(columns.note) });
}

const DIGITS = /^\d+$/;
/** The rest of a reading after a decimal comma: `5"`, `75`, `5 cm`. */
const AFTER_COMMA = /^\d+\s*(["″”]|in|inches|m|cm|mm)?$/i;

/** A reading that a comma cut in two, or that stands one column too far; null when it does not. */
function misplacedWords(cells: readonly string[], columns: Columns): string | null {
  if (cells.slice(columns.count).some((cell) => cell !== '')) {
    return `it has ${cells.length} values under ${columns.count} names`;
  }
  const { reading: at, unit } = columns;
  const [reading, next] = [cells[at] ?? '', isPlace(at + 1, columns) ? '' : (cells[at + 1] ?? '')];
  if (reading === '' && HAS_UNIT.test(next) && parseLength(next).ok) {
    return `the reading is empty and after it stands ${next}`;
  }
  if (unit !== 'text') {
    return DIGITS.test(reading) && DIGITS.test(next)
      ? `${reading} and after it ${next} look like one number with a decimal comma`
      : null;
  }
  return /\d$/.test(reading) && AFTER_COMMA.test(next)
    ? `${reading} and after it ${next} look like one reading with a decimal comma`
    : null;
}

const isPlace = (at: number, { stake, from }: Columns): boolean => at === stake || at === from;

const misplacedReading = (where: string, what: string): Problem =>
  problem(
    'reading-misplaced',
    where,
    what,
    'write decimals with a point, a note that has a comma in quotes, and each value under its name',
  );

const missingEnd = (where: string): Problem =>
  problem(
    'reading-stake-missing',
    where,
    'a stake or what it was taped from is missing',
    'write both ends of the tape',
  );

/** The reading's column holds a mark of the plan, and a mark's column holds a length. */
function isSwapped(
  ends: { readonly stake: string; readonly from: string },
  text: string,
  unit: Unit,
  known: Known,
): boolean {
  const isLength = (cell: string) =>
    !known.has(cell) && parseLength(unit === 'text' ? cell : `${cell} ${unit}`).ok;
  return known.has(findId(text, known)) && (isLength(ends.stake) || isLength(ends.from));
}

const swapped = (where: string): Problem =>
  problem(
    'readings-columns-swapped',
    where,
    'a reading stands where a stake belongs, and a stake where the reading belongs',
    'put the columns under their names',
  );

function unknownIds(
  ends: { readonly stake: string; readonly from: string },
  where: string,
  known: Known,
): Problem[] {
  return [ends.stake, ends.from].filter((id) => !known.has(id)).map((id) => unknownMark(id, where));
}

const NUMBER = /^\d+(\.\d+)?$/;
const HAS_UNIT = /['"′″’”]|(ft|feet|in|inches|m|cm|mm)$/i;

function readLength(text: string, unit: Unit, where: string, plan: StakePlan): Result<number> {
  if (unit === 'text') {
    if (NUMBER.test(text)) return fail(noUnit(text, where));
    const length = HAS_UNIT.test(text) ? parseLength(text, where, plan.spec.system) : null;
    return length?.ok ? length : fail(unreadable(text, where));
  }
  if (!NUMBER.test(text)) return fail(unreadable(text, where));
  return succeed(unit === 'm' ? metresToFeet(Number(text)) : Number(text));
}

const noUnit = (text: string, where: string): Problem =>
  problem(
    'reading-no-unit',
    where,
    `${text} has no unit`,
    `write it as 148' 2 1/2" or 45.175 m, or name the column reading_ft or reading_m`,
  );

const unreadable = (text: string, where: string): Problem =>
  problem(
    'reading-unreadable',
    where,
    `"${text.slice(0, 40)}" is not a tape reading`,
    `write it as 148' 2 1/2" or 45.175 m; in a column reading_ft or reading_m, a plain number`,
  );

const lengthProblems = (ft: number, where: string): Problem[] =>
  ft > 0 && ft <= LONGEST_FT
    ? []
    : [
        problem(
          'reading-bad',
          where,
          `a tape reads more than nothing and less than ${LONGEST_FT} ft`,
          'correct the reading',
        ),
      ];
