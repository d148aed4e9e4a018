/**
 * What the crew has done, as plain data: every change is a function from one log to the next, with the
 * time handed in (milliseconds of the clock).
 */

export interface StakeEntry {
  /** When it was ticked; null while it is not in. */
  readonly at: number | null;
  /** Seconds it took; null when that cannot be told. */
  readonly seconds: number | null;
  /** The check as typed, and in feet. */
  readonly read: string;
  readonly readFt: number | null;
  readonly note: string;
}

export interface RoundLog {
  /** When the tapes were held and the first stake begun; null before. */
  readonly startedAt: number | null;
  /** Seconds from the last stake of another round to this start; null when that cannot be told. */
  readonly moveSeconds: number | null;
  /** From when the stake in hand is timed; null when its time cannot be told. */
  readonly mark: number | null;
  readonly pausedAt: number | null;
  readonly stakes: Readonly<Record<string, StakeEntry>>;
}

export const EMPTY_ROUND: RoundLog = {
  startedAt: null,
  moveSeconds: null,
  mark: null,
  pausedAt: null,
  stakes: {},
};
const EMPTY_ENTRY: StakeEntry = { at: null, seconds: null, read: '', readFt: null, note: '' };

/** A gap longer than this between two ticks is a break, not a stake (assumption). */
const LONGEST_STAKE_S = 600;
/** Likewise between the last tick of a round and the start of the next (assumption). */
const LONGEST_MOVE_S = 1200;

export const entryOf = (log: RoundLog, stake: string): StakeEntry =>
  Object.hasOwn(log.stakes, stake) ? log.stakes[stake]! : EMPTY_ENTRY;

export const isIn = (log: RoundLog, stake: string): boolean => entryOf(log, stake).at !== null;

/** The tapes are held: timing starts. `lastTick` is the newest tick of all other rounds. */
export function startRound(log: RoundLog, now: number, lastTick: number | null): RoundLog {
  return {
    ...log,
    startedAt: now,
    moveSeconds: secondsBetween(lastTick, now, LONGEST_MOVE_S),
    mark: now,
    pausedAt: null,
  };
}

/** The stake is in. A stake that is set again adds the new time to the old. */
export function tickStake(log: RoundLog, stake: string, now: number): RoundLog {
  const entry = entryOf(log, stake);
  const took = log.pausedAt === null ? secondsBetween(log.mark, now, LONGEST_STAKE_S) : null;
  const seconds = took === null ? null : took + (entry.seconds ?? 0);
  return { ...put(log, stake, { ...entry, at: now, seconds }), mark: now, pausedAt: null };
}

/** The stake is not in after all; its time so far is kept for when it is set again. */
export function takeBack(log: RoundLog, stake: string): RoundLog {
  return put(log, stake, { ...entryOf(log, stake), at: null });
}

export function writeCheck(
  log: RoundLog,
  stake: string,
  read: string,
  readFt: number | null,
): RoundLog {
  return put(log, stake, { ...entryOf(log, stake), read, readFt });
}

export function writeNote(log: RoundLog, stake: string, note: string): RoundLog {
  return put(log, stake, { ...entryOf(log, stake), note });
}

/** The crew was at another round: the next stake's time cannot be told. */
export const comeBack = (log: RoundLog): RoundLog => ({ ...log, mark: null, pausedAt: null });

export const pause = (log: RoundLog, now: number): RoundLog => ({ ...log, pausedAt: now });

/** Work goes on: the pause counts for no stake. */
export function goOn(log: RoundLog, now: number): RoundLog {
  if (log.pausedAt === null) return log;
  const mark = log.mark === null ? null : log.mark + (now - log.pausedAt);
  return { ...log, mark, pausedAt: null };
}

/** The newest tick, or null. */
export function lastTickOf(log: RoundLog): number | null {
  const ticks = Object.values(log.stakes).flatMap((entry) => entry.at ?? []);
  return ticks.length === 0 ? null : Math.max(...ticks);
}

function put(log: RoundLog, stake: string, entry: StakeEntry): RoundLog {
  return { ...log, stakes: { ...log.stakes, [stake]: entry } };
}

/** To a tenth; null without a start, when the clock went back, or past the longest that counts. */
function secondsBetween(from: number | null, to: number, longest: number): number | null {
  if (from === null) return null;
  const seconds = Math.round((to - from) / 100) / 10;
  return seconds >= 0 && seconds <= longest ? seconds : null;
}
