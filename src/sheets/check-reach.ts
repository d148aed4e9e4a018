/** How small a slip the stakes' checks show, and what they cannot tell. */
import { formatLimit, type LengthSystem } from '../base/quantity';
import { feetToInches, inches } from '../base/units';
import {
  pointDistance,
  pointSubtract,
  vectorDot,
  vectorCross,
  vectorLeft,
  vectorUnit,
} from '../geometry/point';
import type { Point } from '../geometry/point';
import type { Stake } from '../stakeout/model';
import { pointNamed } from './kit';

type Places = ReadonlyMap<string, Point>;

/**
 * Size of a slip, in sigmas of the check, that a test at 3.29 sigma shows 8 times in 10 (W. Baarda,
 * A testing procedure for use in geodetic networks, 1968: 0.1 % of false alarms, power 80 %). The
 * limit printed here is 3 sigma, so that it shows a little more often.
 */
const SHOWN_SIGMAS = 4.13;
/** A check's limit is this many sigmas. */
const LIMIT_SIGMAS = 3;
/** Slips beyond this are told as not shown, inches: nobody misreads a tape by more unseen. */
const MOST_IN = 24;

/**
 * Inches of slip, in whichever one reading of the stake hides best, from which on its check shows it at
 * least 8 times in 10; Infinity when that is over two feet, or the check loses a larger slip.
 */
export function leastShownIn(stake: Stake, at: Places): number {
  const from = pointNamed(at, stake.check.from);
  const toward = unitTo(from, stake.at);
  const moves = slipMoves(stake, at);
  const shift = (SHOWN_SIGMAS * stake.check.limitIn) / LIMIT_SIGMAS;
  const shows = (size: number) =>
    moves.every((move) => leastShiftIn(stake, from, move, size) >= shift);
  // Made straight at the stake; a slip of inches bends round a near mark, and takes a little more.
  let least = shift / Math.min(...moves.map((move) => Math.abs(vectorDot(move, toward))));
  while (least <= MOST_IN && !shows(least)) least *= GROWTH;
  return least <= MOST_IN && LARGER_IN.every((size) => size < least || shows(size))
    ? least
    : Infinity;
}

const GROWTH = 1.02;
/** Larger slips that must show as well, inches: one, two, five feet. They may end past a near mark. */
const LARGER_IN = [12, 24, 60] as const;

/** Change of the check, inches, by a slip of `size` inches, whichever way it changes less. */
function leastShiftIn(stake: Stake, from: Point, move: Point, size: number): number {
  const right = pointDistance(stake.at, from);
  const shifts = [inches(size), -inches(size)].map((by) => {
    const slipped = { x: stake.at.x + by * move.x, y: stake.at.y + by * move.y };
    return Math.abs(pointDistance(slipped, from) - right);
  });
  return feetToInches(Math.min(...shifts));
}

const unitTo = (from: Point, to: Point): Point =>
  vectorUnit(pointSubtract(to, from)) ?? { x: 0, y: 0 };

/** Where the stake goes for each inch that one of its readings is out, one vector to a reading. */
function slipMoves(stake: Stake, at: Places): Point[] {
  const { set } = stake;
  const place = (id: string) => pointNamed(at, id);
  if (set.method === 'ties') {
    const a = unitTo(place(set.tie1.from), stake.at);
    const b = unitTo(place(set.tie2.from), stake.at);
    return [alongOther(a, b), alongOther(b, a)];
  }
  if (set.method === 'line') return [unitTo(place(set.tie1.from), stake.at)];
  const from = set.method === 'chord' ? set.chordFrom : set.tie1.from;
  const along = unitTo(place(from), place(set.lineTo));
  return set.method === 'chord' ? [vectorLeft(along)] : [along, vectorLeft(along)];
}

/** One tape an inch out, the other held: the stake slides round the other's circle. */
function alongOther(out: Point, held: Point): Point {
  const across = vectorLeft(held);
  const share = 1 / vectorCross(held, out);
  return { x: across.x * share, y: across.y * share };
}

/** Whether the check may miss a large slip in one of the readings: they are to be read twice. */
export const isBlind = (stake: Stake, at: Places): boolean => leastShownIn(stake, at) > MOST_IN;

/** The head's sentence of a round: from which size on its checks show a slip, and where they do not. */
export function roundCheckWords(rows: readonly Stake[], at: Places, system: LengthSystem): string {
  const slips = rows.map((stake) => ({ id: stake.id, least: leastShownIn(stake, at) }));
  const shown = slips.filter(({ least }) => least <= MOST_IN);
  const rest = slips.filter(({ least }) => least > MOST_IN).map(({ id }) => id);
  const blind = `At ${idList(rest)} (two black squares) the check may miss a slip in one of the readings: take them twice.`;
  if (shown.length === 0) return blind;
  const size = formatLimit(Math.max(...shown.map(({ least }) => least)), system);
  const seen = `The checks show a slip of ${size} or more in any one reading.`;
  return rest.length === 0 ? seen : `${seen} ${blind}`;
}

/** All of them: what a check cannot see is printed where it stands. */
function idList(ids: readonly string[]): string {
  if (ids.length === 1) return ids[0]!;
  return `${ids.slice(0, -1).join(', ')} and ${ids[ids.length - 1]}`;
}

export interface CheckLimit {
  readonly head: string;
  readonly text: string;
}

/** Slips told of, inches: half a foot, a foot misread, two. */
const SLIPS_IN = [6, 12, 24] as const;

/** What the checks of a plan can and cannot catch. */
export function checkLimits(
  stakes: readonly Stake[],
  at: Places,
  system: LengthSystem,
): readonly CheckLimit[] {
  const slips = stakes.map((stake) => leastShownIn(stake, at));
  const shown = (inches: number) => slips.filter((least) => least <= inches).length;
  const enough = SLIPS_IN.findIndex((inches) => shown(inches) === slips.length);
  const told = enough < 0 ? SLIPS_IN : SLIPS_IN.slice(0, enough + 1);
  const parts = told.map((inches) => `of ${formatLimit(inches, system)} at ${shown(inches)}`);
  return [
    {
      head: 'That it is wrong, not where.',
      text: 'One spare tape shows that something is wrong, not which reading. Over its limit: take both readings and the check again; never shift the stake to suit the check.',
    },
    {
      head: 'From what size.',
      text: `A slip in any one reading shows at least 8 times in 10 when it is ${parts.join(', ')} of the ${stakes.length} stakes; at twice that size practically always. A smaller one may pass. Each round gives its own figure.`,
    },
    {
      head: 'What no check sees.',
      text: 'An error that all tapes share: stretched, held at a wrong zero, read in other units. A control out of its place when the check hangs on it too. Two tags swapped. A stake knocked after its check. So tapes and controls are proved first, and before a string is pulled someone looks whether the stakes make the shape on the drawing.',
    },
  ];
}
