/** One band of a family of guide lines, before it is cut to the grass. */
import type { Feet } from '../base/units';
import type { Path } from '../geometry/arc';
import type { Polyline } from '../geometry/polyline';
import type { Region } from '../geometry/region';
import type { Way } from './model';

/** The lay: one bearing, or along a line in its own direction. */
export type BandLay = { readonly bearingDeg: number } | { readonly guide: Path };

/** Middles of the passes, directed as driven. */
export type Lanes =
  | {
      readonly kind: 'straight';
      readonly bearingDeg: number;
      /** Across the frame of the bearing (`layFrame`), from the left. */
      readonly middles: readonly Feet[];
    }
  | {
      readonly kind: 'along';
      readonly lines: readonly Polyline[];
      /** The lines close on themselves, first point repeated at the end. */
      readonly closed: boolean;
    };

export interface GuideBand {
  readonly index: number;
  readonly way: Way;
  /** The band's ground as far as the family reaches. */
  readonly strip: Region;
  readonly lay: BandLay;
  readonly lanes: Lanes;
}

/** A family laid out; `tight`: passes left out because the mower cannot bend so far. */
export interface LaidFamily {
  readonly bands: readonly GuideBand[];
  readonly tight: number;
}
