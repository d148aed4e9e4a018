/** The stake-out: strings, swings, controls, ties, order. Geometry in feet, precision in inches. */
import type { LengthSystem, Reading } from '../base/quantity';
import type { Feet, Seconds } from '../base/units';
import type { SteelUse } from '../adjust/steel-tape';
import type { Control, Covariance } from '../field/model';
import type { TapeClass } from '../field/tape-classes';
import type { Point } from '../geometry/point';
import type { CrewMinutes } from './minutes';

export interface TapeSpec {
  readonly name?: string;
  readonly material?: 'fibreglass' | 'steel';
  readonly accuracyClass?: TapeClass;
  /** Reading error of one pull, inches, 1 sigma. */
  readonly readingSigmaIn: number;
  /** Proportional part of one pull, 1 sigma: 1/3000 is 0.000333. */
  readonly proportional: number;
  /** Scale error common to all pulls with this tape, 1 sigma; absent: counted in `proportional`. */
  readonly scaleSigma?: number;
  readonly limitFt: Feet;
}

/** Which tape is held: 1 is `tape`, 2 is `secondTape`. */
export type TapeNumber = 1 | 2;

export interface StakeoutSpec {
  /** The drawn outline may stray this far from the art. */
  readonly toleranceIn: number;
  readonly target95In: number;
  readonly tape: TapeSpec;
  /** The other holder's tape when it is of another kind; absent: two of the first kind. */
  readonly secondTape?: TapeSpec;
  /** How a steel tape is used on the day, for the printed corrections. */
  readonly steel?: SteelUse;
  readonly system: LengthSystem;
  /** People setting out: two tape holders and one or two markers. */
  readonly crew: 2 | 3 | 4;
  /** What keeps a short offset square to its line; absent: a carpenter's square. */
  readonly square?: SquareTool;
  /** The customary grid is printed as well, its strings this far apart; absent: no grid. */
  readonly gridSheet?: { readonly spacingFt: Feet };
  /** What each step costs the crew; absent: `DEFAULT_MINUTES`. */
  readonly minutes?: CrewMinutes;
}

/** Judged by eye, a carpenter's square, or a 3-4-5 triangle of tape. */
export type SquareTool = 'eye' | 'square' | 'triangle';

export type StakeKind = 'control' | 'outline' | 'pin' | 'guide';

/**
 * `ties`: two circles cross. `line`: on the line through two controls at a distance from the first.
 * `offset`: along a line between two places already set, then square to it. `chord`: square to the
 * middle of the line between two places already set. Offset and chord take a short tape and no holders.
 */
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
    }
  | {
      readonly method: 'offset';
      /** Along the line from tie1.from toward `lineTo`. */
      readonly tie1: Tie;
      readonly lineTo: string;
      /** Square to the line. */
      readonly offset: Reading;
      /** Standing at tie1.from facing `lineTo`. */
      readonly side: 'L' | 'R';
    }
  | {
      readonly method: 'chord';
      readonly chordFrom: string;
      readonly lineTo: string;
      /** Square to the middle of the line from `chordFrom` to `lineTo`. */
      readonly offset: Reading;
      /** Standing at `chordFrom` facing `lineTo`. */
      readonly side: 'L' | 'R';
    };

export interface Tie {
  readonly from: string;
  readonly reading: Reading;
  /** Absent when both tapes are of one kind. */
  readonly tape?: TapeNumber;
}

export interface Check {
  /** A control or an earlier stake. */
  readonly from: string;
  readonly reading: Reading;
  /** Absent when both tapes are of one kind. */
  readonly tape?: TapeNumber;
  /** 3 sigma of the difference, inches. */
  readonly limitIn: number;
}

export interface Stake {
  /** As printed: K1, K2 … for controls; 1, 2, 3 … in setting order for the rest. */
  readonly id: string;
  readonly kind: StakeKind;
  /** Rounds count from 1: consecutive stakes pulled from the same two controls, or with a short tape. */
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
  | { readonly kind: 'circle'; readonly pin: string; readonly radius: Reading }
  /**
   * A short curve drawn by hand through a mark `offset` away from the middle of the straight line from→to
   * and square to it, left or right standing at `from`: the arc through the three, at most half a turn.
   */
  | {
      readonly kind: 'bend';
      readonly from: string;
      readonly to: string;
      readonly offset: Reading;
      readonly side: 'L' | 'R';
    };

/** A closed contour, head to tail. */
export interface Contour {
  readonly graphic: string;
  readonly contour: number;
  readonly pieces: readonly OutlinePiece[];
  /**
   * The contour whose pieces and readings these are as well, in the same order; in a mirror image they
   * run backward. Absent for a shape of its own.
   */
  readonly like?: { readonly contour: number; readonly mirrored: boolean };
}

export interface Round {
  readonly number: number;
  /** The two controls the tapes are held at; null in a round of short tapes. */
  readonly from: readonly [string, string] | null;
  /** Which tape is held at each of the two; absent when both are of one kind. */
  readonly tapes?: readonly [TapeNumber, TapeNumber];
  readonly stakes: readonly string[];
}

/** A change of means, planned anew, that was found to let every stake meet the target. */
export interface StakeOption {
  readonly change: 'longer-tape' | 'steel-tape' | 'more-controls' | 'measured-poles' | 'several';
  /** What to bring or do: `a tape of 300' 0"`. */
  readonly words: string;
  /** Control stakes that the crew then sets. */
  readonly controls: number;
}

/** What can be met when the target cannot. */
export interface StakeAdvice {
  /** Stakes within the target as planned, of all. */
  readonly within: number;
  readonly of: number;
  /** Tightest target that all stakes were found to meet, inches; null: only reach was found. */
  readonly tightestIn: number | null;
  /** What would let every stake meet the target; empty: nothing that was tried. */
  readonly options: readonly StakeOption[];
}

/** The marker's path from the last control stake through all stakes of the graphic. */
export interface StakeWalk {
  readonly ft: Feet;
  /** Times that the tapes move to another pair of controls. */
  readonly changes: number;
  /** Walking and moving tapes; setting itself left out. */
  readonly seconds: Seconds;
  /** No order of these stakes with these pairs takes less. */
  readonly boundSeconds: Seconds;
}

/** Beside the customary grid transfer, drawn by hand through its marks within the same tolerance. */
export interface GridSaving {
  /** The largest cell that keeps the tolerance wherever its strings fall. */
  readonly cellFt: Feet;
  /** Crossings and corners to mark with that cell. */
  readonly gridMarks: number;
  /** Outline stakes and pins of this plan. */
  readonly marks: number;
  /** Middle marks of its bends. */
  readonly bendMarks: number;
  /** `marks` ÷ `gridMarks`. */
  readonly ratio: number;
}

export interface StakePlan {
  readonly spec: StakeoutSpec;
  /** Fixed controls first, then the set ones in setting order. */
  readonly controls: readonly Control[];
  /** In setting order, set controls included. */
  readonly stakes: readonly Stake[];
  readonly rounds: readonly Round[];
  readonly walk: StakeWalk;
  readonly contours: readonly Contour[];
  readonly strings: number;
  readonly swings: number;
  /** Absent in plans without bends. */
  readonly bends?: number;
  readonly stringFt: Feet;
  /** Null when no grid keeps the tolerance; absent in plans made without the comparison. */
  readonly saving?: GridSaving | null;
  readonly worstSemiMajor95In: number;
  /** Largest gap between art and drawn outline, both ways, as printed, inches. */
  readonly largestGapIn: number;
  /** Ids of stakes whose ellipse is above the target. */
  readonly overTarget: readonly string[];
  /** Present when a stake is above the target. */
  readonly advice?: StakeAdvice;
}
