/** Words for patterns: places, widths. */
import type { LengthSystem } from '../../base/quantity';
import type { Lay, Patch } from '../../design/model';
import { bearingDifference } from '../../geometry/angle';
import type { NamedPlace, Recipe } from '../../pattern/model';
import { designLength } from './figures';

export const PLACE_NAMES: Readonly<Record<NamedPlace, string>> = {
  home: 'Home plate, foul lines',
  'first-base': 'First base',
  'second-base': 'Second base',
  'third-base': 'Third base',
  mound: 'The mound',
  'outfield-middle': 'Middle of the outfield',
  'left-pole': 'Left-field pole',
  'right-pole': 'Right-field pole',
};

/** How many mowings a recipe takes, in words. */
export function mowingsText({ mowings }: Recipe): string {
  const crossing = mowings.some((m) => m.crosses);
  return crossing ? 'mown twice, once across' : 'mown once';
}

/** A band of so many passes, in feet. */
export const passesText = (passes: number, swathFt: number, units: LengthSystem): string =>
  `${passes} ${passes === 1 ? 'pass' : 'passes'}, ${designLength(passes * swathFt, units)}`;

/** A bearing within this of straight out or straight in is away or toward, degrees. */
const AWAY_DEG = 60;

/**
 * What light and dark say of a pattern; `between` where two mowings cross, `driven`
 * while it is shown being mown.
 */
export function layWords(patches: readonly Patch[]): {
  readonly light: string;
  readonly dark: string;
  readonly between: string;
  readonly driven: string;
} {
  const ground = patches.filter((p) => p.kind === 'background');
  const isPlain = ground.every((p) => p.lays.every(isAwayOrToward));
  const crossed = ground.some((p) => p.lays.length > 1);
  return {
    light: isPlain ? 'Laid away from home, shows light' : 'Laid one way, as the arrows say',
    dark: isPlain ? 'Laid toward home, shows dark' : 'Laid the other way',
    driven: isPlain
      ? 'Not mown; laid away, laid toward home'
      : 'Not mown; laid one way, laid the other',
    between: crossed ? 'Tones between: two mowings cross' : '',
  };
}

function isAwayOrToward(lay: Lay): boolean {
  if (!('bearingDeg' in lay)) return false;
  const off = bearingDifference(lay.bearingDeg, 0);
  return Math.min(off, 180 - off) <= AWAY_DEG;
}
