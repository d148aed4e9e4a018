/** What the audit says, in plain words. */
import type { NetworkReading } from '../adjust/network-model';
import { formatLimit, type LengthSystem } from '../base/quantity';
import type { Point } from '../geometry/point';
import type { AuditRow } from './audit-network';
import type { Explanation } from './model';

/** A length without its sign: `12 1/4 in`, `31 mm`. */
export const howFar = (valueIn: number, system: LengthSystem): string =>
  formatLimit(Math.abs(valueIn), system);

/** Directions on the grass, each 45° of the circle, clockwise from straight out. */
const OUTWARD = [
  'toward the fence',
  'toward the fence and right field',
  'toward right field',
  'toward home plate and right field',
  'toward home plate',
  'toward home plate and left field',
  'toward left field',
  'toward the fence and left field',
] as const;

/** Which way `off` points for someone at `at`: outward is away from home plate. */
export function towardWords(at: Point, off: Point): string {
  if (!(Math.hypot(off.x, off.y) > 0)) return '';
  const outward = Math.atan2(at.x, at.y);
  const turn = Math.atan2(off.x, off.y) - outward;
  const eighth = Math.round((turn * 4) / Math.PI);
  return OUTWARD[((eighth % 8) + 8) % 8]!;
}

/** What one wrong reading of a setting means for where the stake stands. `tooLongIn`: reading less truth. */
export function settingWords(
  r: NetworkReading,
  text: string,
  tooLongIn: number,
  system: LengthSystem,
): string {
  const by = howFar(tooLongIn, system);
  if (!('point' in r)) {
    const where = tooLongIn > 0 ? 'nearer to' : 'farther from';
    return `it stands ${by} ${where} ${r.from} than its reading ${text}`;
  }
  switch (r.kind) {
    case 'along':
      return `it stands ${by} ${tooLongIn > 0 === r.distance > 0 ? 'short of' : 'beyond'} its distance from ${r.from}, ${text}`;
    case 'middle':
      return `it stands ${by} off the middle, toward ${tooLongIn > 0 ? r.from : r.to}`;
    case 'across':
      return r.distance === 0
        ? `it stands ${by} ${tooLongIn > 0 ? 'right' : 'left'} of the line from ${r.from} to ${r.to}`
        : `its offset from the line ${r.from} to ${r.to} is ${by} ${tooLongIn > 0 === r.distance > 0 ? 'short' : 'long'}`;
  }
}

/** A reading made on the field that is wrong by itself. */
export const readingWords = (row: AuditRow, tooLongIn: number, system: LengthSystem): string =>
  `the reading of ${row.reading.to} from ${row.reading.from}, ${row.text}, is ${howFar(tooLongIn, system)} too ${tooLongIn > 0 ? 'long' : 'short'}`;

/** An explanation as a sentence without its full stop. */
export function explanationWords(e: Explanation): string {
  if (e.kind === 'reading' || e.kind === 'read-from-another') return e.words;
  return `${e.kind === 'control' ? 'control' : 'stake'} ${e.stake}: ${e.words}`;
}
