/**
 * The stake sheets as a plain list for the phone: whole numbers of tape steps (a quarter inch, or
 * 5 mm), so that what the phone shows is what is printed.
 */
import { READING_STEP, roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { INCHES_PER_FOOT, metresToFeet, type Feet } from '../base/units';
import type { Point } from '../geometry/point';
import type { OutlinePiece, Stake, StakeKind, StakePlan } from '../stakeout/model';

export type CrewMethod = 'ties' | 'line' | 'offset' | 'chord';
/** L and R standing at `from` facing `to`; T toward `to`, A away from it. */
export type CrewSide = 'L' | 'R' | 'T' | 'A';

export interface CrewCheck {
  readonly from: string;
  readonly steps: number;
  /** As printed: quarter inches, or millimetres. */
  readonly limit: number;
}

export interface CrewStake {
  readonly id: string;
  readonly kind: StakeKind;
  readonly method: CrewMethod;
  readonly from: string;
  readonly to: string;
  /** Tape steps from `from`; 0 for a chord, which starts at the middle. */
  readonly first: number;
  /** Tape steps from `to` (ties), or square to the line (offset, chord); 0 on a line. */
  readonly second: number;
  readonly side: CrewSide;
  readonly check: CrewCheck;
}

/** A control or earlier stake that a list refers to; tape steps in the field frame. */
export interface CrewPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

/** Stakes of one round, or a part of them. */
export interface CrewList {
  /** First eight digits of the plan's fingerprint. */
  readonly plan: string;
  /** Of the job, cut short when it is long. */
  readonly name: string;
  readonly system: LengthSystem;
  readonly round: number;
  /** Rounds in the whole job. */
  readonly rounds: number;
  /** From 1, of `parts`. */
  readonly part: number;
  readonly parts: number;
  /** Where both tapes are held; null in a round of short tapes. */
  readonly hold: readonly [string, string] | null;
  readonly points: readonly CrewPoint[];
  readonly stakes: readonly CrewStake[];
}

const PLAN_DIGITS = 8;
const NAME_LENGTH = 24;

export interface CrewJob {
  readonly name: string;
  readonly fingerprint: string;
  readonly system: LengthSystem;
  readonly stakes: StakePlan;
}

/** The fingerprint as the phone knows it. */
export const shortFingerprint = (fingerprint: string): string => fingerprint.slice(0, PLAN_DIGITS);

/** One list per round, in setting order. */
export function crewLists(job: CrewJob): CrewList[] {
  const byId = new Map(job.stakes.stakes.map((stake) => [stake.id, stake]));
  return job.stakes.rounds.map((round) => {
    const stakes = round.stakes.flatMap((id) => byId.get(id) ?? []);
    return crewList(job, round, stakes.map(crewStake(job.system)), 1, 1);
  });
}

/** A part of a round, with every point that it refers to and does not set itself. */
export function crewList(
  job: CrewJob,
  round: { readonly number: number; readonly from: readonly [string, string] | null },
  stakes: readonly CrewStake[],
  part: number,
  parts: number,
): CrewList {
  return {
    plan: shortFingerprint(job.fingerprint),
    name: [...job.name].slice(0, NAME_LENGTH).join('').trim(),
    system: job.system,
    round: round.number,
    rounds: job.stakes.rounds.length,
    part,
    parts,
    hold: round.from,
    points: pointsFor(job, round.from ?? [], stakes),
    stakes,
  };
}

function pointsFor(
  job: CrewJob,
  hold: readonly string[],
  stakes: readonly CrewStake[],
): CrewPoint[] {
  const at = new Map<string, Point>();
  for (const control of job.stakes.controls) at.set(control.id, control.at);
  for (const stake of job.stakes.stakes) at.set(stake.id, stake.at);
  const wanted = new Set(hold);
  const known = new Set<string>();
  for (const stake of stakes) {
    for (const id of [stake.from, stake.to, stake.check.from]) if (!known.has(id)) wanted.add(id);
    known.add(stake.id);
  }
  return [...wanted].flatMap((id) => {
    const point = at.get(id);
    return point ? [{ id, x: toSteps(point.x, job.system), y: toSteps(point.y, job.system) }] : [];
  });
}

const crewStake =
  (system: LengthSystem) =>
  (stake: Stake): CrewStake => ({
    id: stake.id,
    kind: stake.kind,
    ...crewWay(stake.set, (reading) => toSteps(reading.ft, system)),
    check: {
      from: stake.check.from,
      steps: toSteps(stake.check.reading.ft, system),
      limit: limitSteps(stake.check.limitIn, system),
    },
  });

type CrewWay = Pick<CrewStake, 'method' | 'from' | 'to' | 'first' | 'second' | 'side'>;

function crewWay(set: Stake['set'], steps: (reading: Reading) => number): CrewWay {
  switch (set.method) {
    case 'ties':
      return {
        method: 'ties',
        from: set.tie1.from,
        to: set.tie2.from,
        first: steps(set.tie1.reading),
        second: steps(set.tie2.reading),
        side: set.side,
      };
    case 'line':
      return {
        method: 'line',
        from: set.tie1.from,
        to: set.lineTo,
        first: steps(set.tie1.reading),
        second: 0,
        side: set.side,
      };
    case 'offset':
      return {
        method: 'offset',
        from: set.tie1.from,
        to: set.lineTo,
        first: steps(set.tie1.reading),
        second: steps(set.offset),
        side: set.side,
      };
    case 'chord':
      return {
        method: 'chord',
        from: set.chordFrom,
        to: set.lineTo,
        first: 0,
        second: steps(set.offset),
        side: set.side,
      };
  }
}

/** Feet of one step. */
export const stepFt = (system: LengthSystem): Feet =>
  system === 'metric'
    ? metresToFeet(READING_STEP.metres)
    : 1 / (INCHES_PER_FOOT * READING_STEP.inchesDenominator);

const toSteps = (ft: Feet, system: LengthSystem): number => Math.round(ft / stepFt(system));

/** The reading of that many steps, as printed. */
export const readingOf = (steps: number, system: LengthSystem): Reading =>
  roundReading(steps * stepFt(system), system);

/** Inches of one step of a limit: a quarter inch or a millimetre. */
const limitStepIn = (system: LengthSystem): number => (system === 'metric' ? 1 / 25.4 : 1 / 4);

/** The printed limit, which is never rounded down, in its own steps. */
const limitSteps = (inches: number, system: LengthSystem): number =>
  Math.ceil(inches / limitStepIn(system) - ROUNDING_GUARD);

/** Far below any step, so that a limit of exactly 2 1/4 in stays 2 1/4. */
const ROUNDING_GUARD = 1 / 1_000_000;

/** A limit in inches. */
export const limitIn = (limit: number, system: LengthSystem): number => limit * limitStepIn(system);

/**
 * Where the readings put a stake, in tape steps, from points already known; null when they cannot
 * meet or a point is not known. Only sums, products and roots, so that every machine finds the same.
 */
export function placeStake(stake: CrewStake, known: ReadonlyMap<string, Point>): Point | null {
  const a = known.get(stake.from);
  const b = known.get(stake.to);
  if (!a || !b) return null;
  const apart = distance(a, b);
  if (apart === 0) return null;
  const along = alongOf(stake, apart);
  const across = acrossOf(stake, along);
  if (across === null) return null;
  const u = { x: (b.x - a.x) / apart, y: (b.y - a.y) / apart };
  return { x: a.x + u.x * along - u.y * across, y: a.y + u.y * along + u.x * across };
}

function alongOf(stake: CrewStake, apart: number): number {
  switch (stake.method) {
    case 'ties':
      return (stake.first ** 2 - stake.second ** 2 + apart * apart) / (2 * apart);
    case 'line':
      return stake.side === 'A' ? -stake.first : stake.first;
    case 'offset':
      return stake.first;
    case 'chord':
      return apart / 2;
  }
}

function acrossOf(stake: CrewStake, along: number): number | null {
  const left = stake.side === 'R' ? -1 : 1;
  if (stake.method === 'line') return 0;
  if (stake.method !== 'ties') return left * stake.second;
  const square = stake.first ** 2 - along * along;
  return square < 0 ? null : left * Math.sqrt(square);
}

/** Not `Math.hypot`, whose last digit differs from machine to machine. */
export const distance = (a: Point, b: Point): number =>
  Math.sqrt((a.x - b.x) ** 2 + (a.y - b.y) ** 2);

/** A piece of the outline for the picture: lengths in tape steps. */
export interface CrewLine {
  readonly kind: OutlinePiece['kind'];
  readonly from: string;
  readonly to: string;
  readonly pin: string;
  readonly steps: number;
  readonly turn: 'cw' | 'ccw' | 'L' | 'R' | '';
}

/** Strings, swings, bends and circles, contour after contour. */
export function crewLines(job: CrewJob): CrewLine[] {
  return job.stakes.contours.flatMap((c) => c.pieces.map((piece) => crewLine(piece, job.system)));
}

function crewLine(piece: OutlinePiece, system: LengthSystem): CrewLine {
  const none = { kind: piece.kind, from: '', to: '', pin: '', steps: 0, turn: '' } as const;
  switch (piece.kind) {
    case 'string':
      return { ...none, from: piece.from, to: piece.to };
    case 'swing': {
      const { from, to, pin, sweep } = piece;
      return { ...none, from, to, pin, steps: toSteps(piece.radius.ft, system), turn: sweep };
    }
    case 'bend': {
      const { from, to, offset, side } = piece;
      return { ...none, from, to, steps: toSteps(offset.ft, system), turn: side };
    }
    case 'circle':
      return { ...none, pin: piece.pin, steps: toSteps(piece.radius.ft, system), turn: 'ccw' };
  }
}
