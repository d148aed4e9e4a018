/**
 * The ground: what the user says of it (`FieldSpec`, saved in the project) and what is made of it
 * (`Field`). Feet in the field frame: origin at the rear point of home plate, +y toward second base
 * and centre field, +x toward right field; bearings in degrees clockwise from +y.
 */
import type { Feet } from '../base/units';
import type { Path } from '../geometry/arc';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import type { Region } from '../geometry/region';

export interface FencePoint {
  readonly bearingDeg: number;
  readonly distanceFt: Feet;
}

/** A foul pole whose distance the crew has measured; a painted sign alone is nominal. */
export interface MeasuredPole {
  readonly distanceFt: Feet;
  readonly sigmaIn: number;
}

/** An area that nothing may be driven over and no stake driven into. */
export interface KeepOutSpec {
  readonly id: string;
  readonly name: string;
  readonly centre: Point;
  readonly radiusFt: Feet;
}

/** What grows and how it is cut. */
export interface Turf {
  readonly grass: 'cool-season' | 'bermuda' | 'other';
  readonly heightIn: number;
}

export interface FieldSpec {
  readonly name: string;
  /** Rule-book preset; figures below override the book's. */
  readonly book: 'baseball-90';
  /** 15 or 18 in square bases: says where the corners and anchor sockets lie. */
  readonly baseSizeIn: 15 | 18;
  /** Whether first and third are tied at the base's outer back corner or at the empty socket. */
  readonly bases: 'in' | 'out';
  /** Pole to pole, left (bearing −45°) to right (+45°), at least three. */
  readonly fence: readonly FencePoint[];
  /** How the fence runs between its points. */
  readonly fenceShape: 'smooth' | 'straight';
  readonly trackWidthFt: Feet;
  /** Centre of the 95-ft skin arc: front edge or rear edge of the pitcher's plate. */
  readonly skinArcFrom: 'plate-front' | 'plate-rear';
  readonly skinRadiusFt: Feet;
  /** Distance from the foul line to the side fence or dugout line, and behind home plate. */
  readonly foulWidthFt: Feet;
  readonly poles: { readonly left: MeasuredPole | null; readonly right: MeasuredPole | null };
  /** 1-sigma per coordinate of plate and bases. */
  readonly controlSigmaIn: number;
  readonly keepOuts: readonly KeepOutSpec[];
  /** Absent: cool-season grass at 1.5 in, an assumption. */
  readonly turf?: Turf;
}

export type SurfaceKind =
  | 'outfield-grass'
  | 'infield-grass'
  | 'foul-grass'
  | 'skin'
  | 'mound'
  | 'home-circle'
  | 'warning-track';

/** A named area of the ground. The surfaces do not overlap and fill the ground inside the fence. */
export interface Surface {
  readonly id: string;
  readonly kind: SurfaceKind;
  readonly name: string;
  /** True boundary: closed paths of lines and arcs, outer counter-clockwise, holes clockwise. */
  readonly boundary: readonly Path[];
  /** The same as polygons, within `FLATTEN`. */
  readonly region: Region;
  /** From the true boundary, arcs exact. */
  readonly areaSqFt: number;
}

/** What a tape's zero is held to, for the small picture beside the words. */
export type TouchPicture =
  | 'plate-point'
  | 'base-corner-first'
  | 'base-corner-third'
  | 'socket-centre-first'
  | 'socket-centre-third'
  | 'second-centre'
  | 'pole-left'
  | 'pole-right'
  | 'stake';

/** Covariance of (x, y), square inches. */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** A known point that tapes are pulled from. */
export interface Control {
  /** Short, as printed: HP, 1B, 2B, 3B, LP, RP; K1, K2 … for stakes the crew sets. */
  readonly id: string;
  readonly name: string;
  /** In words, what the tape touches. */
  readonly touch: string;
  readonly picture: TouchPicture;
  readonly kind: 'fixed' | 'set';
  readonly at: Point;
  readonly covariance: Covariance;
}

/** A distance taped before round 1 to prove the fixed controls. */
export interface ProvingTape {
  readonly from: string;
  readonly to: string;
  readonly ft: Feet;
  readonly text: string;
  /** 3 sigma of the difference, inches; more than this off: stop and find out why. */
  readonly limitIn: number;
}

export interface Bases {
  /** Rear point of home plate: the origin. */
  readonly home: Point;
  /** Outer back corners of first and third; centre of second. */
  readonly first: Point;
  readonly second: Point;
  readonly third: Point;
}

export interface Field {
  readonly spec: FieldSpec;
  readonly bases: Bases;
  /** Front edge centre of the pitcher's plate, and centre of the mound circle. */
  readonly pitcherPlate: Point;
  readonly moundCentre: Point;
  readonly skinArcCentre: Point;
  readonly surfaces: readonly Surface[];
  /** Left pole to right pole along the fence face. */
  readonly fenceLine: Polyline;
  readonly poles: { readonly left: Point; readonly right: Point };
  /** Foul lines, home to pole, outer edges. */
  readonly foulLines: { readonly left: Polyline; readonly right: Polyline };
  /** Everything inside fence, side fences and backstop. */
  readonly ground: Region;
  /** The outfield grass less the keep-outs: what is mown. */
  readonly outfieldGrass: Region;
  readonly keepOuts: readonly {
    readonly id: string;
    readonly name: string;
    readonly region: Region;
  }[];
  /** Fixed controls only. */
  readonly controls: readonly Control[];
  readonly proving: readonly ProvingTape[];
}
