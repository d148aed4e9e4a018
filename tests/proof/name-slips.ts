/**
 * Planted slips, and what the audit says of the readings that the crew brings back. The scenario is
 * ours; reading the file and judging it are the product's, by the same two steps as its command.
 */
import {
  drawCauses,
  newDay,
  seeded,
  tapeShows,
  workThrough,
  type Day,
  type Field,
  type Noise,
  type SetRow,
  type Slip,
} from '../support/field-crew';
import { planted } from './catch-slips';
import { SLIP_KINDS, type SlipKind } from './draw-slips';

/** The parts of the audit's JSON that are judged (docs/audit.md). */
export interface Said {
  readonly falseAlarmChance: number;
  readonly suspects: readonly {
    readonly likeliest: {
      readonly kind: string;
      readonly stake: string | null;
      readonly reading: {
        readonly from: string;
        readonly to: string;
        readonly text: string;
      } | null;
    };
    readonly sure: 'reading' | 'stake' | 'neither';
    readonly next: { readonly stake: string; readonly from: string } | null;
  }[];
}

/** Readings file in, what the audit says out; null when the file is refused. */
export type Auditor = (readings: string) => Said | null;

export interface NameTally {
  readonly kind: SlipKind;
  readonly draws: number;
  /** Of all drawn, by the printed checks alone. */
  readonly checks: Named;
  /** Of all drawn, when the readings that the audit asks for were made as well, three at most. */
  readonly asked: Named;
  /** Further readings, on average. */
  readonly more: number;
  readonly refused: number;
}

/** Shares of all drawn. */
export interface Named {
  readonly stake: number;
  readonly reading: number;
  /** Says that it knows the stake or the reading, and names a wrong stake. */
  readonly misled: number;
}

const MOST_ASKED = 3;

interface Verdict {
  readonly stake: boolean;
  readonly reading: boolean;
  readonly misled: boolean;
}

export function nameSlips(field: Field, audit: Auditor, kind: SlipKind, draws: number): NameTally {
  const noise = seeded(9000 + SLIP_KINDS.indexOf(kind));
  const verdicts: { first: Verdict; last: Verdict; more: number; refused: boolean }[] = [];
  for (const { slip, z } of planted(field, kind, draws)) {
    verdicts.push(walkThrough(field, audit, slip, z, noise));
  }
  const share = (of: (v: (typeof verdicts)[number]) => boolean): number =>
    verdicts.filter(of).length / draws;
  const named = (at: 'first' | 'last'): Named => ({
    stake: share((v) => v[at].stake),
    reading: share((v) => v[at].reading),
    misled: share((v) => v[at].misled),
  });
  return {
    kind,
    draws,
    checks: named('first'),
    asked: named('last'),
    more: verdicts.reduce((sum, v) => sum + v.more, 0) / draws,
    refused: share((v) => v.refused),
  };
}

/** One day: all is set and checked, the checks are brought back, and what is asked for is measured. */
function walkThrough(field: Field, audit: Auditor, slip: Slip, z: Float64Array, noise: Noise) {
  const day = newDay(field);
  workThrough(field, z, day, slip);
  if (day.stuck >= 0) {
    // The crew stands at a stake that cannot be set: it knows which, and not why.
    const here = { stake: day.stuck === slip.row, reading: false, misled: false };
    return { first: here, last: here, more: 0, refused: false };
  }
  const lines = checkLines(field, day);
  let said = audit(csv(lines));
  const first = judge(field, slip, said);
  let more = 0;
  for (; more < MOST_ASKED; more++) {
    const next = said?.suspects[0]?.next;
    if (!next) break;
    keepLast(lines, next, measure(field, z, day, next, noise.normal()));
    said = audit(csv(lines));
  }
  return { first, last: judge(field, slip, said), more, refused: said === null };
}

/** A distance taped again replaces the reading that was there. */
function keepLast(
  lines: string[],
  { stake, from }: { readonly stake: string; readonly from: string },
  ft: number,
): void {
  const old = lines.findIndex(
    (l) => l.startsWith(`${stake},${from},`) || l.startsWith(`${from},${stake},`),
  );
  if (old >= 0) lines.splice(old, 1);
  lines.push(readingLine(stake, from, ft));
}

/** Every printed check as the crew reads it. */
const checkLines = (field: Field, day: Day): string[] =>
  field.rows.map((r, k) => readingLine(r.stake, r.checkFrom, r.check + day.offIn[k]! / 12));

/** The file of readings after a day's work. */
export const readingsOf = (field: Field, day: Day): string => csv(checkLines(field, day));

function measure(
  field: Field,
  z: Float64Array,
  day: Day,
  next: { readonly stake: string; readonly from: string },
  unit: number,
): number {
  const [a, b] = [field.ids.indexOf(next.stake), field.ids.indexOf(next.from)];
  const distance = Math.hypot(day.x[a]! - day.x[b]!, day.y[a]! - day.y[b]!);
  return tapeShows(field, z, 0, distance, unit);
}

const csv = (lines: readonly string[]): string =>
  ['stake,from,reading,note', ...lines, ''].join('\r\n');

/** As a crew writes it: to the quarter inch. */
function readingLine(stake: string, from: string, ft: number): string {
  const quarters = Math.max(1, Math.round(Math.abs(ft) * 48));
  const whole = Math.floor(quarters / 48);
  const inch = Math.floor((quarters % 48) / 4);
  const fraction = ['', ' 1/4', ' 1/2', ' 3/4'][quarters % 4]!;
  return `${stake},${from},"${whole}' ${inch}${fraction}""",`;
}

function judge(field: Field, slip: Slip, said: Said | null): Verdict {
  const suspect = said?.suspects[0];
  if (!suspect) return { stake: false, reading: false, misled: false };
  const row = field.rows[slip.row]!;
  const { likeliest } = suspect;
  const reading = namesReading(slip, row, likeliest);
  const stake = reading || likeliest.stake === row.stake;
  return { stake, reading, misled: suspect.sure !== 'neither' && !stake };
}

type Likeliest = Said['suspects'][number]['likeliest'];

function namesReading(slip: Slip, row: SetRow, said: Likeliest): boolean {
  if (slip.kind === 'swapped') return said.kind === 'tapes-swapped' && said.stake === row.stake;
  if (slip.kind === 'side') {
    return ['wrong-side', 'wrong-way'].includes(said.kind) && said.stake === row.stake;
  }
  if (slip.kind === 'end') return said.kind === 'wrong-end' && said.stake === row.stake;
  if (slip.kind === 'held') {
    const meant = slip.end === 1 ? row.from1 : row.from2;
    return (
      said.kind === 'wrong-control' && said.stake === row.stake && said.reading?.from === meant
    );
  }
  if (slip.which === 'check') {
    const ends = [said.reading?.from, said.reading?.to].sort().join(' ');
    return said.kind === 'reading' && ends === [row.stake, row.checkFrom].sort().join(' ');
  }
  if (said.kind !== 'tie' || said.stake !== row.stake || !said.reading) return false;
  const printed = slip.which === 'second' ? row.second : row[slip.which];
  const from = slip.which === 'second' ? row.from2 : row.from1;
  return said.reading.from === from && Math.abs(textFeet(said.reading.text) - printed) < 1 / 96;
}

/** Feet of a reading's text; NaN for words such as `the middle of 4 to 5`. */
function textFeet(text: string): number {
  const match = /^(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/.exec(text);
  if (!match) return NaN;
  return (
    Number(match[1]) +
    (Number(match[2]) + (match[3] ? Number(match[3]) / Number(match[4]) : 0)) / 12
  );
}

export interface FalseAlarms {
  /** Of days without a slip: the audit suspects something all the same. */
  readonly share: number;
  /** What it says of itself, on average. */
  readonly said: number;
}

export function falseAlarms(field: Field, audit: Auditor, days: number, seed: number): FalseAlarms {
  const noise = seeded(seed);
  const day = newDay(field);
  let [alarms, said] = [0, 0];
  for (let n = 0; n < days; n++) {
    workThrough(field, drawCauses(field, noise), day);
    const heard = audit(readingsOf(field, day));
    if (!heard) throw new Error('readings without a slip were refused');
    alarms += heard.suspects.length > 0 ? 1 : 0;
    said += heard.falseAlarmChance;
  }
  return { share: alarms / days, said: said / days };
}
