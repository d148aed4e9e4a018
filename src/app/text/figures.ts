/** How figures are set on the screen: true primes, thin gaps that never break, quarters as one glyph. */
import { formatLength, formatLimit, type LengthSystem } from '../../base/quantity';
import { feetToMetres, METRES_PER_FOOT } from '../../base/units';

const NARROW_GAP = '\u00a0';
const GLYPHS: Readonly<Record<string, string>> = { '1/2': '½', '1/4': '¼', '3/4': '¾' };

/** Printed ASCII (`187' 4 1/2"`) in true primes, the fraction full size: `187′ 4 1/2″`. */
export function withPrimes(text: string): string {
  return text.replace(/'/g, '′').replace(/"/g, '″').replace(/ /g, NARROW_GAP);
}

/** Printed ASCII with its fraction as one glyph: `187′ 4½″`. */
export function compact(text: string): string {
  return withPrimes(text.replace(/ ?(1\/2|1\/4|3\/4)/, (_, part: string) => GLYPHS[part] ?? part));
}

/** A sentence with every reading in it set like the figures: `stands 12¼″ toward the fence`. */
export const wordsWithSizes = (text: string): string =>
  text.replace(/\d+'(?: \d+(?: \d\/\d)?")?|\d+(?: \d\/\d)?"|\d\/\d"/g, compact);

/** A design length, to the inch or the centimetre. */
export function designLength(ft: number, system: LengthSystem): string {
  if (system === 'metric') return trueMinus(`${feetToMetres(ft).toFixed(2)}${NARROW_GAP}m`);
  return trueMinus(withPrimes(formatLength(ft, system, 1)));
}

/** A length on the ground, to the quarter inch or the millimetre. */
export function groundLength(ft: number, system: LengthSystem): string {
  return trueMinus(compact(formatLength(ft, system, 4)));
}

/** A leading hyphen as a minus sign; nothing is never negative. */
function trueMinus(text: string): string {
  return /[1-9]/.test(text) ? text.replace(/^-/, '−') : text.replace(/^-/, '');
}

/** Whole feet or metres for long runs: `12,380 ft`. */
export function longLength(ft: number, system: LengthSystem): string {
  if (system === 'metric') return `${thousands(feetToMetres(ft))}${NARROW_GAP}m`;
  return `${thousands(ft)}${NARROW_GAP}ft`;
}

/** A tolerance or limit, rounded up, never down. */
export function limit(valueIn: number, system: LengthSystem): string {
  return `±${compact(formatLimit(valueIn, system))}`;
}

/** A small size in inches or millimetres without a sign, rounded up. */
export function smallSize(valueIn: number, system: LengthSystem): string {
  return compact(formatLimit(valueIn, system));
}

export function areaText(sqFt: number, system: LengthSystem): string {
  if (system === 'metric') {
    return `${thousands(sqFt * METRES_PER_FOOT * METRES_PER_FOOT)}${NARROW_GAP}m²`;
  }
  return `${thousands(sqFt)}${NARROW_GAP}sq${NARROW_GAP}ft`;
}

export function thousands(value: number): string {
  return Math.round(value)
    .toString()
    .replace(/\B(?=(\d{3})+(?!\d))/g, ',');
}

export function angleText(deg: number): string {
  const rounded = Math.round(deg * 10) / 10;
  return `${(rounded === 0 ? 0 : rounded).toFixed(1)}°`;
}

/** A share in whole percent; 99.6 % never shows as 100 %. */
export function percent(share: number): string {
  const value = share >= 1 ? 100 : Math.min(99, Math.floor(share * 100));
  return `${value}${NARROW_GAP}%`;
}

/** `HH:MM` (24 h) as the crew says it: `1:24 pm`. */
export function clockText(hhmm: string): string {
  const [h = 0, m = 0] = hhmm.split(':').map(Number);
  return minutesClock(h * 60 + m);
}

/** Minutes after midnight as `1:24 pm`; past midnight says the day. */
export function minutesClock(minutes: number): string {
  const whole = Math.round(minutes);
  const day = Math.floor(whole / 1440);
  const inDay = whole - day * 1440;
  const h = Math.floor(inDay / 60);
  const m = inDay % 60;
  const half = h < 12 ? 'am' : 'pm';
  const next = day > 0 ? `${NARROW_GAP}next${NARROW_GAP}day` : '';
  return `${((h + 11) % 12) + 1}:${String(m).padStart(2, '0')}${NARROW_GAP}${half}${next}`;
}

export function clockMinutes(hhmm: string): number {
  const [h = 0, m = 0] = hhmm.split(':').map(Number);
  return h * 60 + m;
}

/** A span: `6 h 30 min`, `24 min`. */
export function spanText(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  const h = Math.floor(whole / 60);
  const m = whole % 60;
  if (h === 0) return `${m}${NARROW_GAP}min`;
  return m === 0 ? `${h}${NARROW_GAP}h` : `${h}${NARROW_GAP}h${NARROW_GAP}${m}${NARROW_GAP}min`;
}

/** A clock as a person types it (`6:30`, `630`, `1 pm`, `13:00`) as `HH:MM`, or null. */
export function parseClock(text: string): string | null {
  const clean = text
    .toLowerCase()
    .replace(/\u00a0/g, ' ')
    .trim();
  const match = /^(\d{1,2})(?::?(\d{2}))?\s*(a|am|p|pm)?\.?$/.exec(clean);
  if (!match) return null;
  const half = match[3]?.charAt(0);
  let h = Number(match[1]);
  const m = Number(match[2] ?? 0);
  if (m > 59 || h > 23 || (half !== undefined && (h < 1 || h > 12))) return null;
  if (half === 'p' && h < 12) h += 12;
  if (half === 'a' && h === 12) h = 0;
  return `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`;
}

/** Odds in words: `1 day in 5`. */
export function oddsText(chanceOver: number): string {
  if (chanceOver < 0.01) return 'less than 1 day in 100';
  if (chanceOver > 0.5) return `${Math.round(chanceOver * 10)} days in 10`;
  return `1 day in ${Math.round(1 / chanceOver)}`;
}

/** ISO day as `Sat 13 June`; empty stays empty. */
export function dayText(iso: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (!match) return '';
  const date = new Date(Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])));
  const part = (options: Intl.DateTimeFormatOptions) =>
    date.toLocaleDateString('en-US', { ...options, timeZone: 'UTC' });
  return `${part({ weekday: 'short' })} ${date.getUTCDate()} ${part({ month: 'long' })}`;
}

/** A sentence from a problem's words: capital first, one stop at the end. */
export const sentence = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1).replace(/\.$/, '')}.`;

export const plural = (n: number, one: string, many = `${one}s`): string =>
  `${thousands(n)} ${n === 1 ? one : many}`;
