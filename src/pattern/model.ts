/** Patterns: straight bands for now; the recipe language grows here. */
import type { Feet } from '../base/units';

export interface BandsSpec {
  readonly kind: 'bands';
  /** Bearing of the first lay; the alternate lay is 180° from it. */
  readonly bearingDeg: number;
  /** Band width in passes of the wide mower. */
  readonly passesPerBand: number;
  /** Shifts the band edges square to the bearing; 0 puts an edge through second base's line. */
  readonly offsetFt: Feet;
}

export type PatternSpec = BandsSpec;
