/** The stake-out: strings, swings, controls, ties, order. Geometry in feet, precision in inches. */
import type { LengthSystem, Reading } from '../base/quantity';
import type { Feet } from '../base/units';
import type { Control, Covariance } from '../field/model';
import type { Point } from '../geometry/point';

export interface TapeSpec {
  /** Reading error of one pull, inches, 1 sigma. */
  readonly readingSigmaIn: number;
  /** Proportional part, 1 sigma: 1/3000 is 0.000333. */
  readonly proportional: number;
  readonly limitFt: Feet;
}

export interface StakeoutSpec {
  /** The drawn outline may stray this far from the art. */
  readonly toleranceIn: number;
  readonly target95In: number;
  readonly tape: TapeSpec;
  readonly system: LengthSystem;
  /** People setting out: two tape holders and one or two markers. */
  readonly crew: 2 | 3 | 4;
}

export type StakeKind = 'control' | 'outline' | 'pin' | 'guide';

/** `ties`: two circles cross. `line`: on the line through two controls at a distance from the first. */
export type SetMethod =
  | {
      readonly method: 'ties';
      readonly tie1: Tie;
      readonly tie2: Tie;
      /** Standing at tie1.from facing tie2.from. */
      readonly side: 'L' | 'R';
      readonly intersectionDeg: number;
    }
  | {
      readonly method: 'line';
      /** On the line from tie1.from through `lineTo`, tie1.reading from tie1.from. */
      readonly tie1: Tie;
      readonly lineTo: string;
      /** Toward `lineTo`, or away from it. */
      readonly side: 'T' | 'A';
    };

export interface Tie {
  readonly from: string;
  readonly reading: Reading;
}

export interface Check {
  /** A control or an earlier stake. */
  readonly from: string;
  readonly reading: Reading;
  /** 3 sigma of the difference, inches. */
  readonly limitIn: number;
}

export interface Stake {
  /** As printed: K1, K2 … for controls; 1, 2, 3 … in setting order for the rest. */
  readonly id: string;
  readonly kind: StakeKind;
  /** Rounds count from 1: consecutive stakes pulled from the same two controls. */
  readonly round: number;
  /** Where the printed readings put it. */
  readonly at: Point;
  readonly set: SetMethod;
  readonly check: Check;
  readonly covariance: Covariance;
  /** Semi-major axis of the 95 % ellipse, inches. */
  readonly semiMajor95In: number;
}

export type OutlinePiece =
  | { readonly kind: 'string'; readonly from: string; readonly to: string }
  | {
      readonly kind: 'swing';
      readonly from: string;
      readonly to: string;
      readonly pin: string;
      readonly radius: Reading;
      readonly sweep: 'cw' | 'ccw';
    }
  | { readonly kind: 'circle'; readonly pin: string; readonly radius: Reading };

/** A closed contour, head to tail. */
export interface Contour {
  readonly graphic: string;
  readonly contour: number;
  readonly pieces: readonly OutlinePiece[];
}

export interface Round {
  readonly number: number;
  /** The two controls the tapes are held at. */
  readonly from: readonly [string, string];
  readonly stakes: readonly string[];
}

export interface StakePlan {
  readonly spec: StakeoutSpec;
  /** Fixed controls first, then the set ones in setting order. */
  readonly controls: readonly Control[];
  /** In setting order, set controls included. */
  readonly stakes: readonly Stake[];
  readonly rounds: readonly Round[];
  readonly contours: readonly Contour[];
  readonly strings: number;
  readonly swings: number;
  readonly stringFt: Feet;
  readonly worstSemiMajor95In: number;
  /** Largest gap between art and drawn outline, both ways, as printed, inches. */
  readonly largestGapIn: number;
  /** Ids of stakes whose ellipse is above the target. */
  readonly overTarget: readonly string[];
}
