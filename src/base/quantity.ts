/**
 * Lengths as text: what is printed, and what a person may type. The printed text of a reading is the
 * reading: everything downstream is computed from the value of that text.
 */
import { fail, problem, succeed, type Result } from './result';
import { feetToMetres, INCHES_PER_FOOT, metresToFeet, type Feet } from './units';

/** How lengths are shown: feet, inches and fractions, or metres. */
export type LengthSystem = 'feet-inches' | 'metric';

/** Steps a tape is read to: a quarter inch, or 5 mm. */
export const READING_STEP = { inchesDenominator: 4, metres: 0.005 } as const;

/** A printed tape reading: its text and the value of that text in feet. */
export interface Reading {
  readonly text: string;
  readonly ft: Feet;
}

/**
 * Feet and inches to the nearest 1/`denominator` inch, full-size ASCII: `127' 3 1/4"`, `3' 0"`,
 * `0' 7 1/2"`. Whole feet always carry inches, so that a torn-off figure cannot be misread.
 */
export function formatFeetInches(value: Feet, denominator = 4): string {
  const sign = value < 0 ? '-' : '';
  const steps = Math.round(Math.abs(value) * INCHES_PER_FOOT * denominator);
  const feet = Math.floor(steps / (INCHES_PER_FOOT * denominator));
  const rest = steps - feet * INCHES_PER_FOOT * denominator;
  const wholeInches = Math.floor(rest / denominator);
  const numerator = rest - wholeInches * denominator;
  const fraction = numerator === 0 ? '' : ` ${reduceFraction(numerator, denominator)}`;
  return `${sign}${feet}' ${wholeInches}${fraction}"`;
}

function reduceFraction(numerator: number, denominator: number): string {
  let n = numerator;
  let d = denominator;
  while (n % 2 === 0 && d % 2 === 0) {
    n /= 2;
    d /= 2;
  }
  return `${n}/${d}`;
}

/** Metres to the millimetre: `38.795 m`. */
export function formatMetres(value: Feet, decimals = 3): string {
  return `${feetToMetres(value).toFixed(decimals)} m`;
}

/** A length as the system writes it: `127' 3 1/4"` or `38.795 m`. */
export function formatLength(value: Feet, system: LengthSystem, denominator = 4): string {
  return system === 'metric' ? formatMetres(value) : formatFeetInches(value, denominator);
}

/** A distance rounded to what the tape can show, with its text and the value of that text. */
export function roundReading(value: Feet, system: LengthSystem): Reading {
  if (system === 'metric') {
    const metres = Math.round(feetToMetres(value) / READING_STEP.metres) * READING_STEP.metres;
    const ft = metresToFeet(Number(metres.toFixed(3)));
    return { text: formatMetres(ft), ft };
  }
  const perFoot = INCHES_PER_FOOT * READING_STEP.inchesDenominator;
  const ft = Math.round(value * perFoot) / perFoot;
  return { text: formatFeetInches(ft, READING_STEP.inchesDenominator), ft };
}

/** A tolerance or limit as printed, never rounded down: inches in quarters or whole millimetres. */
export function roundLimitIn(valueInches: number, system: LengthSystem): number {
  const perInch = system === 'metric' ? 25.4 : 4;
  return Math.ceil(valueInches * perInch - TINY) / perInch;
}

/** The text of a printed limit: `2 1/4"`, `57 mm`. */
export function formatLimit(valueInches: number, system: LengthSystem): string {
  const rounded = roundLimitIn(valueInches, system);
  if (system === 'metric') return `${Math.round(rounded * 25.4)} mm`;
  const steps = Math.round(rounded * 4);
  const whole = Math.floor(steps / 4);
  const numerator = steps - whole * 4;
  if (numerator === 0) return `${whole}"`;
  return whole === 0
    ? `${reduceFraction(numerator, 4)}"`
    : `${whole} ${reduceFraction(numerator, 4)}"`;
}

/** A rounding guard far below what any text shows, so that 2.25 does not become 2 1/2. */
const TINY = 1 / 1_000_000;

/**
 * A length as a person types it, in feet: `150`, `150 6`, `150'6`, `150' 6 1/2"`, `150-6 1/2`,
 * `7"`, `45.75m`, `45.75 m`, `30cm`. A bare number is feet (metres when `system` is metric). True
 * primes are accepted. Problem `length-unreadable` otherwise, and where a foot or more of inches
 * stands after the feet.
 */
export function parseLength(
  text: string,
  where = 'length',
  system: LengthSystem = 'feet-inches',
): Result<Feet> {
  const clean = text
    .trim()
    .toLowerCase()
    .replace(/[′’]/g, "'")
    .replace(/[″”]/g, '"')
    .replace(/¼/g, ' 1/4')
    .replace(/½/g, ' 1/2')
    .replace(/¾/g, ' 3/4')
    .replace(/\u00a0/g, ' ');
  const value = parseMetric(clean) ?? parseImperial(clean, system);
  if (value !== null && Number.isFinite(value)) return succeed(value);
  return fail(
    problem(
      'length-unreadable',
      where,
      `"${text}" is not a length`,
      `type feet and inches like 150' 6", 150 6 1/2 or 150.5, or metres like 45.75 m`,
    ),
  );
}

function parseMetric(text: string): number | null {
  const match = /^([+-]?\d+(?:\.\d+)?|[+-]?\.\d+)\s*(m|cm|mm)$/.exec(text);
  if (!match) return null;
  const scale = match[2] === 'm' ? 1 : match[2] === 'cm' ? 0.01 : 0.001;
  return metresToFeet(Number(match[1]) * scale);
}

const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`;
const INCH_PART = String.raw`(?:(${NUMBER})(?:\s+(\d+)\/(\d+))?|(\d+)\/(\d+))`;
const FEET_AND_INCHES = new RegExp(
  String.raw`^([+-]?)(${NUMBER})\s*(?:'|ft|feet)?\s*-?\s*(?:(?<=['\s-]|ft|feet)${INCH_PART}\s*(?:"|in|inches)?)?$`,
);
const INCHES_ONLY = new RegExp(String.raw`^([+-]?)${INCH_PART}\s*(?:"|in|inches)$`);

function parseImperial(text: string, system: LengthSystem): number | null {
  const onlyInches = INCHES_ONLY.exec(text);
  if (onlyInches && !/\d\s+\d+\s/.test(text)) {
    const value = inchPart(onlyInches.slice(2));
    return value === null ? null : (signOf(onlyInches[1]) * value) / INCHES_PER_FOOT;
  }
  const match = FEET_AND_INCHES.exec(text);
  if (!match) return null;
  const bare = /^[+-]?(\d+(\.\d+)?|\.\d+)$/.test(text);
  if (bare && system === 'metric') return metresToFeet(Number(text));
  const extra = match.slice(3).some((part) => part !== undefined) ? inchPart(match.slice(3)) : 0;
  if (extra === null || extra >= INCHES_PER_FOOT) return null;
  return signOf(match[1]) * (Number(match[2]) + extra / INCHES_PER_FOOT);
}

function signOf(text: string | undefined): number {
  return text === '-' ? -1 : 1;
}

function inchPart(parts: readonly (string | undefined)[]): number | null {
  const [whole, n1, d1, n2, d2] = parts;
  const numerator = n1 ?? n2;
  const denominator = d1 ?? d2;
  if (numerator !== undefined && !(Number(numerator) < Number(denominator))) return null;
  const fraction = numerator === undefined ? 0 : Number(numerator) / Number(denominator);
  return Number(whole ?? 0) + fraction;
}
