/** What this phone keeps, in the browser's own storage, by plan and round. */
import { EMPTY_ROUND, type RoundLog, type StakeEntry } from './log';

export interface Place {
  /** Stake in hand. */
  readonly stake: string | null;
  readonly sound: boolean;
  readonly facing: number;
}

export interface Store {
  readonly round: (plan: string, round: number) => RoundLog;
  /** False when the browser keeps nothing (a private window, some files opened from mail). */
  readonly keepRound: (plan: string, round: number, log: RoundLog) => boolean;
  readonly place: (plan: string) => Place;
  readonly keepPlace: (plan: string, place: Place) => boolean;
  readonly codes: (plan: string) => readonly string[];
  readonly keepCodes: (plan: string, codes: readonly string[]) => boolean;
  /** The plan opened last from a code. */
  readonly lastPlan: () => string | null;
}

const PREFIX = 'swathscribe crew';
const nameOf = (...parts: readonly (string | number)[]): string => [PREFIX, ...parts].join(' ');
const LAST = nameOf('last');

/** The browser's storage; one that is shut keeps nothing and says so. */
export function openStore(): Store {
  return {
    round: (plan, round) => toRound(read(nameOf(plan, round))),
    keepRound: (plan, round, log) => write(nameOf(plan, round), log),
    place: (plan) => toPlace(read(nameOf(plan, 'place'))),
    keepPlace: (plan, place) => write(nameOf(plan, 'place'), place),
    codes: (plan) => toTexts(read(nameOf(plan, 'codes'))),
    keepCodes: (plan, codes) => write(nameOf(plan, 'codes'), codes) && write(LAST, plan),
    lastPlan: () => toText(read(LAST)),
  };
}

function read(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(name) ?? 'null') as unknown;
  } catch {
    return null;
  }
}

function write(name: string, value: unknown): boolean {
  try {
    localStorage.setItem(name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

type Loose = Readonly<Record<string, unknown>>;
const toLoose = (value: unknown): Loose =>
  typeof value === 'object' && value !== null ? (value as Loose) : {};
const toNumber = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;
const toText = (value: unknown): string | null => (typeof value === 'string' ? value : null);
const toTexts = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((item) => typeof item === 'string') : [];

function toPlace(value: unknown): Place {
  const { stake, sound, facing } = toLoose(value);
  return { stake: toText(stake), sound: sound !== false, facing: toNumber(facing) ?? 0 };
}

function toRound(value: unknown): RoundLog {
  const loose = toLoose(value);
  const entries = Object.entries(toLoose(loose['stakes'])).map(
    ([id, entry]) => [id, toEntry(entry)] as const,
  );
  return {
    ...EMPTY_ROUND,
    startedAt: toNumber(loose['startedAt']),
    moveSeconds: toNumber(loose['moveSeconds']),
    mark: toNumber(loose['mark']),
    pausedAt: toNumber(loose['pausedAt']),
    stakes: Object.fromEntries(entries),
  };
}

function toEntry(value: unknown): StakeEntry {
  const { at, seconds, read: typed, readFt, note } = toLoose(value);
  return {
    at: toNumber(at),
    seconds: toNumber(seconds),
    read: toText(typed) ?? '',
    readFt: toNumber(readFt),
    note: toText(note) ?? '',
  };
}
