/** How the grass looks from a seat. */
import type { Feet } from '../base/units';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';

export interface SeatSpec {
  /** File-name safe. */
  readonly id: string;
  readonly name: string;
  readonly at: Point;
  readonly eyeHeightFt: Feet;
  /** Where the seat looks. */
  readonly lookAt: Point;
}

/** What a seat sees of the graphic's outline. */
export interface Legibility {
  readonly seat: string;
  /** Share of outline length with Michelson contrast ≥ `threshold` across it, 0 to 1. */
  readonly share: number;
  readonly threshold: number;
  readonly outlineFt: Feet;
  /** The longest stretch below the threshold (empty when none). */
  readonly longestBelow: Polyline;
  readonly longestBelowFt: Feet;
  /** The outline cut where it changes between clear and faint, to be drawn. */
  readonly pieces: readonly { readonly line: Polyline; readonly clear: boolean }[];
}

/** 8-bit RGBA, row by row from the top. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
}
