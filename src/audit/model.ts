/** Readings made on the field, and what they say of the stakes. Feet; precision in inches. */
import type { Reading } from '../base/quantity';
import type { Feet } from '../base/units';
import type { Point } from '../geometry/point';
import type { OutlinePiece, StakeKind } from '../stakeout/model';

/** A distance taped on the field between two marks that stand: controls or stakes, either way round. */
export interface MeasuredReading {
  /** Where it stands in its file, for messages; from 1. */
  readonly line: number;
  readonly stake: string;
  readonly from: string;
  readonly ft: Feet;
  /** As written. */
  readonly text: string;
  readonly note: string;
}

/**
 * What may have happened. `tie`: one reading of a stake's setting was pulled wrong. `reading`: a
 * reading made on the field is wrong. `moved`: the stake does not stand where its readings put it.
 * `control`: a control is not where the plan has it. The rest are mix-ups that explain the readings
 * without any unknown: the two tapes swapped, a tape held at another control, the other side of the
 * line, the other way along it, from its other end, and a reading made from another control.
 */
export type SlipKind =
  | 'tie'
  | 'reading'
  | 'moved'
  | 'control'
  | 'tapes-swapped'
  | 'wrong-control'
  | 'wrong-side'
  | 'wrong-way'
  | 'wrong-end'
  | 'read-from-another';

/** One explanation of what does not fit. */
export interface Explanation {
  readonly kind: SlipKind;
  /** The stake, or the control, that is wrong; null when a reading made on the field is. */
  readonly stake: string | null;
  /** The reading that is wrong, as its two ends; null when no single one is. */
  readonly reading: { readonly from: string; readonly to: string; readonly text: string } | null;
  /** Line of the readings file when the wrong reading stands there. */
  readonly line: number | null;
  /** How much longer the reading says than the place is, inches; null when no single one is wrong. */
  readonly tooLongIn: number | null;
  /** What was done, in words: `the tape from HP was let out 12.1 in too far`. */
  readonly words: string;
  /** Misfit that this leaves, with what it costs to assume it. Smaller is likelier. */
  readonly cost: number;
}

/** The one reading that would best tell explanations apart. */
export interface NextReading {
  readonly stake: string;
  readonly from: string;
  /** What it would read, one for each explanation, the likeliest first. */
  readonly wouldRead: readonly { readonly reading: Reading; readonly words: string }[];
  /** Mean difference between two explanations, in sigmas of the reading; more than 4 counts as 4. */
  readonly sigmas: number;
}

export interface Suspect {
  readonly likeliest: Explanation;
  /** All other explanations that these readings cannot rule out, likeliest first. */
  readonly rivals: readonly Explanation[];
  /** Whether the readings tell which reading is wrong, or only which stake, or neither. */
  readonly sure: 'reading' | 'stake' | 'neither';
  /** Beyond the family's limit; else it is a doubt, and to be measured again first. */
  readonly strong: boolean;
  /** Standardised residual of what does not fit. */
  readonly standardised: number;
  /** Null when nothing is left to decide, or no reading in reach would. */
  readonly next: NextReading | null;
}

/**
 * `proven`: a foot of slip in either reading of its setting would show. `partly`: in one of them, or a
 * larger one. `unproven`: no reading controls it.
 */
export type Proof = 'proven' | 'partly' | 'unproven';

export interface AsSetStake {
  readonly stake: string;
  readonly kind: StakeKind;
  /** Where it stands by all readings together. */
  readonly at: Point;
  /** Off from the plan, feet. */
  readonly off: Point;
  readonly offIn: number;
  /** `toward the fence and left field`; empty when it is not off. */
  readonly toward: string;
  /** The 95 % ellipse of where it stands; the bearing of its long axis, degrees from +y clockwise. */
  readonly semiMajor95In: number;
  readonly semiMinor95In: number;
  readonly bearingDeg: number;
  readonly proof: Proof;
  /** Smallest slip in either reading of its setting that would show, inches; null: none would. */
  readonly smallestSlipIn: number | null;
  /** Named by the likeliest explanation of a suspect. */
  readonly suspect: boolean;
  /**
   * Pull it and set it again, for the outline cannot be drawn well from where it stands: now, or only
   * once its readings are made again, for that it stands there is no more than a doubt.
   */
  readonly move: 'no' | 'now' | 'once-measured-again';
}

/** A piece of the outline drawn between stakes where they stand. */
export interface AsSetPiece {
  readonly graphic: string;
  readonly contour: number;
  readonly seq: number;
  /** With the radius or offset that fits the stakes as they stand. */
  readonly piece: OutlinePiece;
  readonly changed: boolean;
  /** Largest gap to the art, inches. */
  readonly gapIn: number;
  /** Longest step from an end stake to the line drawn, inches. */
  readonly stepIn: number;
  /** Within the tolerance and what a stake on target may be off. */
  readonly within: boolean;
}

export interface Audit {
  /** The first sentence to read. */
  readonly verdict: string;
  readonly suspects: readonly Suspect[];
  readonly stakes: readonly AsSetStake[];
  readonly outline: readonly AsSetPiece[];
  /** Readings made on the field. */
  readonly readings: number;
  readonly degreesOfFreedom: number;
  readonly chiSquare: number;
  /** Chance of a misfit this large when nothing slipped, after what was named was taken out. */
  readonly chance: number;
  /** Standardised residual that at most one job in twenty goes beyond without a slip. */
  readonly familyLimit: number;
  /** Most that the chance can be that such a job without a slip raises an alarm at 3.29. */
  readonly falseAlarmChance: number;
  /** How much longer than true each tape was found, parts of its length, with its sigma. */
  readonly tapes: readonly {
    readonly tape: string;
    readonly scale: number;
    readonly sigma: number;
  }[];
}
