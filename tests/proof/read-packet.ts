/** A crew's list as the packet prints it, by the grammar of docs/sheets.md and nothing else. */
import { readPacketLines } from '../contract/packet-reading';
import type { FixedMark, SetRow } from '../support/field-crew';
import { readingFeet, type OutlineRow, type StakeRow } from '../support/stranger';

export interface CrewList {
  readonly fixed: readonly FixedMark[];
  readonly rows: readonly SetRow[];
  readonly outline: readonly OutlineRow[];
}

const CONTROL = /^(\w+) fixed x \S+ y \S+ sigma (\d+\.\d\d) /;
const LIMIT = /^(\w+) (control|outline|pin|guide) .* within (\S+(?: \d+\/\d+)?"|\d+ mm)( over)?$/;

export function readCrewList(lines: readonly string[]): CrewList {
  const packet = readPacketLines(lines);
  const sigmas = new Map<string, number>();
  const ends = new Map<string, { readonly kind: string; readonly limitIn: number }>();
  for (const raw of lines) {
    const line = raw.replace(/\s+/g, ' ').trim();
    const control = CONTROL.exec(line);
    if (control) sigmas.set(control[1]!, Number(control[2]));
    const row = LIMIT.exec(line);
    if (row) ends.set(row[1]!, { kind: row[2]!, limitIn: limitInches(row[3]!) });
  }
  return {
    fixed: [...packet.fixed].map(([id, [x, y]]) => ({ id, x, y, sigmaIn: sigmas.get(id)! })),
    rows: packet.stakes.map((s) => setRow(s, ends.get(s.stake)!)),
    outline: packet.outline,
  };
}

/** `2 1/4"`, `3"`, `3/4"` or `57 mm`. */
export function limitInches(text: string): number {
  const metric = /^(\d+) mm$/.exec(text);
  if (metric) return Number(metric[1]) / 25.4;
  const parts = /^(?:(\d+)(?: (?=\d+\/)|(?=")))?(?:(\d+)\/(\d+))?"$/.exec(text);
  if (!parts) throw new Error(`a limit that nobody can read: ${text}`);
  return Number(parts[1] ?? 0) + (parts[2] ? Number(parts[2]) / Number(parts[3]) : 0);
}

const feet = (text: string): number => (text === '' ? 0 : readingFeet(text));

function setRow(s: StakeRow, end: { readonly kind: string; readonly limitIn: number }): SetRow {
  return {
    stake: s.stake,
    kind: end.kind,
    method: s.method,
    from1: s.from1,
    from2: s.from2,
    first: feet(s.reading1),
    second: feet(s.reading2),
    offset: feet(s.offset),
    side: s.side,
    checkFrom: s.checkFrom,
    check: feet(s.checkReading),
    limitIn: end.limitIn,
    tape1: 0,
    tape2: 0,
    checkTape: 0,
  };
}
