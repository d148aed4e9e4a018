/** Numbers and lengths as SVG writes them. */
import { MAX_COORDINATE } from './limits';

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;

/** A single number that is finite and of a size a drawing can have, or null. */
export function readNumber(text: string): number | null {
  const list = readNumbers(text);
  return list?.length === 1 ? list[0]! : null;
}

/** Numbers parted by spaces, commas, or nothing where a sign or a dot starts the next; null if not. */
export function readNumbers(text: string): number[] | null {
  const out: number[] = [];
  const clean = text.trim();
  let at = 0;
  while (at < clean.length) {
    NUMBER.lastIndex = at;
    const match = NUMBER.exec(clean);
    if (!match) return null;
    const value = Number(match[0]);
    if (!isSane(value)) return null;
    out.push(value);
    at = skipGap(clean, NUMBER.lastIndex);
  }
  return out;
}

/** Past spaces with at most one comma among them. */
function skipGap(text: string, from: number): number {
  let at = from;
  let commas = 0;
  while (at < text.length && (/\s/.test(text[at]!) || (text[at] === ',' && commas === 0))) {
    if (text[at] === ',') commas += 1;
    at += 1;
  }
  return at;
}

/** A finite coordinate of a size that a drawing has. */
export const isSane = (value: number): boolean =>
  Number.isFinite(value) && Math.abs(value) <= MAX_COORDINATE;

/** User units (96 to the inch, CSS Values 3) per unit; font units at the initial 16 px. */
const UNITS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  q: 96 / 101.6,
  pt: 96 / 72,
  pc: 16,
  em: 16,
  rem: 16,
  ex: 8,
};

/** A length in user units; a percentage is of `whole`. Null when it is not a length. */
export function readLength(text: string, whole: number): number | null {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(%|[a-z]*)\s*$/i.exec(text);
  if (!match) return null;
  const unit = match[2]!.toLowerCase();
  const factor = unit === '%' ? whole / 100 : UNITS[unit];
  if (factor === undefined) return null;
  const value = Number(match[1]) * factor;
  return isSane(value) ? value : null;
}
