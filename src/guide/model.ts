/**
 * Guide lines: the few passes that are driven along a string, so that the passes laid beside them keep
 * every band edge near its place. Feet in the field frame; errors in inches, one sigma.
 */
import type { Reading } from '../base/quantity';
import type { Feet } from '../base/units';
import type { SideName } from '../field/grass-sides';
import type { Point } from '../geometry/point';

/** How far passes drift, and how far a band edge may. Every figure may be typed over. */
export interface GuideSpec {
  /** `fewest`: as few strings as keep the tolerance; `none`: no strings, the edge tables alone. */
  readonly strings: 'fewest' | 'none';
  /** `shortest`: as the ways between are short; `beside`: each pass beside one already there. */
  readonly order: 'shortest' | 'beside';
  /** Error of the overlap with the pass before, by chance, anew at each pass. */
  readonly passSigmaIn: number;
  /** Error of the overlap that every pass makes the same way. */
  readonly passBiasIn: number;
  /** Error of a strung pass: end stakes, string and driving along it. */
  readonly stringSigmaIn: number;
  /** How far a band edge may lie from its place on nineteen days in twenty. */
  readonly toleranceIn: number;
}

/** All passes of one mowing on one infinite line. */
export interface Lane {
  /** Middle, across the family's frame. */
  readonly offsetFt: Feet;
  readonly bands: readonly number[];
  /** In the direction of the lay, home end of the frame first. */
  readonly pieces: readonly LanePiece[];
}

export interface LanePiece {
  readonly patch: string;
  readonly from: Point;
  readonly to: Point;
}

/** A line between two bands, straight across the field. */
export interface BandEdge {
  /** As printed: `7-8`, with the family's letter before it where there are several. */
  readonly name: string;
  readonly offsetFt: Feet;
  /** Passes laid one beside the other from the nearest strung pass to this edge; null without one. */
  readonly passes: number | null;
  /** Error on nineteen days in twenty; null without a strung pass. */
  readonly driftIn: number | null;
}

/** Straight bands of one mowing with one bearing and its opposite. */
export interface GuideFamily {
  /** `A`, `B` … in the order of mowing. */
  readonly letter: string;
  /** 0 to 180. */
  readonly bearingDeg: number;
  readonly lanes: readonly Lane[];
  readonly edges: readonly BandEdge[];
  /** Indices of the lanes that are strung, ascending. */
  readonly strung: readonly number[];
}

/** The grass edge that a tape is laid along. */
export type EdgeName = SideName;

/** An end of a guide string, on the edge of the grass. */
export interface GuideStake {
  /** G1, G2 … */
  readonly id: string;
  readonly edge: EdgeName;
  /** Along that edge from its zero, as printed. */
  readonly along: Reading;
  /** Where the printed reading puts it. */
  readonly at: Point;
}

/** A string beside a pass. It stands only while that pass is driven. */
export interface GuideString {
  /** S1, S2 … */
  readonly id: string;
  readonly family: string;
  /** Patches of the passes driven along it. */
  readonly patches: readonly string[];
  /** Middle of the strung passes, as a point on it and the bearing driven. */
  readonly middle: Point;
  readonly bearingDeg: number;
  /** Where the pass starts, and where it ends. */
  readonly from: GuideStake;
  readonly to: GuideStake;
  /** On which side of the driver the string is. */
  readonly side: 'left' | 'right';
  /** From the string to the middle of the pass: half the machine and 12 in, never rounded down. */
  readonly middleFt: Reading;
  readonly lengthFt: Feet;
}

/** One mark on an edge of the grass: of a band edge, or of a guide stake. */
export interface EdgeMark {
  readonly name: string;
  readonly kind: 'band' | 'stake';
  readonly along: Reading;
  /** Where the band edge, or the string, truly meets the edge. */
  readonly at: Point;
}

/** Running distances along one edge of the grass: one tape marks them all. */
export interface EdgeTable {
  readonly edge: EdgeName;
  /** In the order of the tape. */
  readonly marks: readonly EdgeMark[];
  /** The whole edge, as a check. */
  readonly total: Reading;
  /** From home plate to the zero, along the foul line. */
  readonly zeroFromHome: Reading;
  /** From the foul pole back to the zero; null where the zero is not at a pole's end. */
  readonly zeroFromPole: Reading | null;
  /** Pins that hold the tape to a curved edge stand no farther apart; null along a straight one. */
  readonly pinEveryFt: Feet | null;
}

export interface GuidePlan {
  readonly spec: GuideSpec;
  /** Passes beside a strung one, on either side, after which an edge is still within the tolerance. */
  readonly reach: number;
  readonly families: readonly GuideFamily[];
  readonly strings: readonly GuideString[];
  readonly tables: readonly EdgeTable[];
  /** Of all edges, on nineteen days in twenty; null without strings. */
  readonly worstDriftIn: number | null;
  /** What is left out, in words. */
  readonly notes: readonly string[];
}
