/** Stakes and readings in words that a crew can follow. */
import { formatLimit, roundReading, type LengthSystem } from '../base/quantity';
import { limitIn, readingOf, type CrewCheck, type CrewStake } from '../exchange/crew-data';

const NAMES = {
  control: 'Control stake',
  outline: 'Outline stake',
  pin: 'Swing pin',
  guide: 'Guide stake',
} as const;

export const kindName = (stake: CrewStake): string => NAMES[stake.kind];

/** True primes, and blanks that never break. */
export const withPrimes = (text: string): string =>
  text.replace(/'/g, '′').replace(/"/g, '″').replace(/ /g, '\u00a0');

const sideWord = (stake: CrewStake): string => (stake.side === 'R' ? 'right' : 'left');
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Where it stands, in one line. */
export function sideSentence(stake: CrewStake): string {
  const { from, to } = stake;
  switch (stake.method) {
    case 'ties':
      return `${capital(sideWord(stake))} of the line ${from} to ${to}`;
    case 'line':
      return stake.side === 'T'
        ? `On the line ${from} to ${to}`
        : `Beyond ${from}, in line with ${to}`;
    case 'offset':
      return `Square off the line ${from} to ${to}, to the ${sideWord(stake)}`;
    case 'chord':
      return `Square off the middle of ${from} to ${to}, to the ${sideWord(stake)}`;
  }
}

export interface Pull {
  /** A tape held here; null when the row is measured from a line. */
  readonly at: string | null;
  readonly label: string;
  readonly reading: string;
}

/** The rows to be read large, in the order in which they are pulled. */
export function pullsOf(stake: CrewStake, system: LengthSystem): Pull[] {
  const text = (steps: number): string => withPrimes(readingOf(steps, system).text);
  const { from, to, first, second } = stake;
  switch (stake.method) {
    case 'ties':
      return [
        { at: from, label: from, reading: text(first) },
        { at: to, label: to, reading: text(second) },
      ];
    case 'line':
      return [{ at: from, label: from, reading: text(first) }];
    case 'offset':
      return [
        { at: from, label: `${from} → ${to}`, reading: text(first) },
        { at: null, label: `square ${sideWord(stake)}`, reading: text(second) },
      ];
    case 'chord':
      return [{ at: null, label: `square ${sideWord(stake)}`, reading: text(second) }];
  }
}

export const lengthText = (steps: number, system: LengthSystem): string =>
  withPrimes(readingOf(steps, system).text);

export const limitText = (limit: number, system: LengthSystem): string =>
  withPrimes(formatLimit(limitIn(limit, system), system));

export interface Verdict {
  readonly good: boolean;
  readonly text: string;
  /** As it is spoken. */
  readonly said: string;
}

const INCHES_PER_FOOT = 12;

/** A check reading in feet against the printed one: good up to the printed limit and no further. */
export function judgeCheck(check: CrewCheck, readFt: number, system: LengthSystem): Verdict {
  const offIn = Math.abs(readFt - readingOf(check.steps, system).ft) * INCHES_PER_FOOT;
  const good = offIn <= limitIn(check.limit, system) + ROUNDING_GUARD;
  const off = withPrimes(offText(offIn, system));
  const limit = limitText(check.limit, system);
  return good
    ? { good, text: `${off} off, within ${limit}`, said: 'Good.' }
    : {
        good,
        text: `${off} off, more than ${limit}: pull it and set it again`,
        said: `Off by ${spokenSize(offIn, system)}. Pull it and set it again.`,
      };
}

/** In inches up to two feet and never rounded down; as a length beyond. */
function offText(offIn: number, system: LengthSystem): string {
  if (offIn < 2 * INCHES_PER_FOOT) return formatLimit(offIn, system);
  return roundReading(offIn / INCHES_PER_FOOT, system).text;
}

/** A thousandth of an inch: far below any tape, above any rounding. */
const ROUNDING_GUARD = 1 / 1000;

function spokenSize(inches: number, system: LengthSystem): string {
  if (system === 'metric') return `${Math.ceil(inches * 2.54 - ROUNDING_GUARD)} centimetres`;
  const whole = Math.ceil(inches - ROUNDING_GUARD);
  const feet = Math.floor(whole / INCHES_PER_FOOT);
  const rest = whole - feet * INCHES_PER_FOOT;
  const some = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
  if (feet === 0) return some(rest, 'inch', 'inches');
  return `${some(feet, 'foot', 'feet')} ${some(rest, 'inch', 'inches')}`;
}

/** A reading as the tape shows it, plain characters. */
export const withInches = (ft: number, system: LengthSystem): string =>
  roundReading(ft, system).text;
