/** A recipe with its numbers worked out on one field for one mower. Feet, degrees clockwise from +y. */
import type { Feet } from '../base/units';
import type { Point } from '../geometry/point';
import type { EdgeSide, Start, Way } from './model';

/** Widths of the wide mower that a pattern is laid with. */
export interface SwathWidths {
  /** What a pass adds: the cut less the overlap. */
  readonly swathFt: Feet;
  readonly cutFt: Feet;
  /** Smallest radius that it drives, at the middle of its cut. */
  readonly turnRadiusFt: Feet;
}

export type Guides =
  | {
      readonly kind: 'parallel';
      readonly bearingDeg: number;
      readonly through: Point;
      readonly shiftFt: Feet;
      readonly on: Start;
    }
  | { readonly kind: 'rings'; readonly centre: Point; readonly shiftFt: Feet }
  | {
      readonly kind: 'rays';
      readonly centre: Point;
      readonly fromDeg: number;
      readonly toDeg: number;
    }
  | {
      readonly kind: 'waves';
      readonly bearingDeg: number;
      readonly through: Point;
      readonly lengthFt: Feet;
      readonly heightFt: Feet;
      readonly shiftFt: Feet;
    }
  | { readonly kind: 'spiral'; readonly centre: Point; readonly turn: 'cw' | 'ccw' }
  | { readonly kind: 'edge'; readonly of: EdgeSide; readonly shiftFt: Feet }
  | { readonly kind: 'line'; readonly points: readonly Point[]; readonly shiftFt: Feet };

export type Area =
  | {
      readonly kind: 'half';
      readonly side: 'left' | 'right';
      readonly bearingDeg: number;
      readonly through: Point;
    }
  | {
      readonly kind: 'strip';
      readonly bearingDeg: number;
      readonly through: Point;
      readonly widthFt: Feet;
    }
  | {
      readonly kind: 'ring';
      readonly centre: Point;
      readonly fromFt: Feet;
      /** Infinity: no outer limit. */
      readonly toFt: Feet;
    }
  | {
      readonly kind: 'sector';
      readonly centre: Point;
      readonly fromDeg: number;
      readonly toDeg: number;
    }
  | { readonly kind: 'drawn'; readonly points: readonly Point[] }
  | {
      readonly kind: 'blocks';
      readonly bearingDeg: number;
      readonly through: Point;
      readonly acrossFt: Feet;
      /** Infinity: strips the whole way. */
      readonly alongFt: Feet;
      readonly pick: 'even' | 'odd';
    }
  | { readonly kind: 'edge'; readonly of: EdgeSide; readonly widthFt: Feet }
  | { readonly kind: 'all' }
  | { readonly kind: 'both'; readonly of: readonly Area[] }
  | { readonly kind: 'any'; readonly of: readonly Area[] }
  | { readonly kind: 'not'; readonly of: Area };

/** Width of a band, and in how many passes it is mown at least. */
export interface BandWidth {
  readonly ft: Feet;
  readonly passes: number;
}

export interface Mowing {
  /** JSON path of the rule, for problems. */
  readonly where: string;
  readonly guides: Guides;
  readonly widths: readonly BandWidth[];
  readonly lays: readonly Way[];
  readonly over: Area;
  readonly crosses: boolean;
}
