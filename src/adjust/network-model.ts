/**
 * A planar network of points and readings, as data. One length unit throughout (the stake-out uses
 * feet); coordinates may be large, the adjustment reduces them to a local origin itself.
 */
import type { Point } from '../geometry/point';
import type { PointCovariance } from './ellipse';

export interface NetworkPoint {
  readonly id: string;
  /** Held there, or a start value, or (with `covariance`) where the point is known to be. */
  readonly at: Point;
  /** `true`: both coordinates are held; `x` or `y`: that one alone, as a datum may need. */
  readonly fixed: boolean | 'x' | 'y';
  /** How well `at` is known beforehand; absent: not at all. */
  readonly covariance?: PointCovariance;
}

interface Taped {
  /** Sigma of the reading. */
  readonly sigma: number;
  /** Id of the tape whose scale this reading shares; absent: of true scale. */
  readonly tape?: string;
}

/** A distance between two points. */
export interface DistanceReading extends Taped {
  readonly kind?: 'distance';
  readonly from: string;
  readonly to: string;
  readonly distance: number;
}

/**
 * A point beside the straight line `from` to `to`: its distance along the line from `from` (`along`) or
 * from the middle of the two (`middle`), or square to the line, left of it positive (`across`).
 */
export interface LineReading extends Taped {
  readonly kind: 'along' | 'across' | 'middle';
  readonly point: string;
  readonly from: string;
  readonly to: string;
  readonly distance: number;
}

export type NetworkReading = DistanceReading | LineReading;

/** Whether a reading is of a point beside a line. */
export const isLineReading = (r: NetworkReading): r is LineReading => 'point' in r;

/** A tape whose readings are all too short by one factor: true length = reading × (1 + scale). */
export interface TapeScale {
  readonly id: string;
  /** How well the scale is known beforehand, 1 sigma; absent: not at all. */
  readonly sigma?: number;
}

export interface AdjustOptions {
  readonly tapes?: readonly TapeScale[];
  /**
   * `held` (the default): held points, or points known beforehand, say where the network lies.
   * `inner`: a free network; it stays as near to its start values as its shape allows (least
   * trace of the covariance).
   */
  readonly datum?: 'held' | 'inner';
  /** `given`: the start values are good and no other branch is tried. */
  readonly start?: 'search' | 'given';
}

/** What the adjustment says of one reading. */
export interface Judged {
  /** Adjusted less observed. */
  readonly residual: number;
  /** 0: nothing else controls this reading; 1: the others alone give it. */
  readonly redundancy: number;
  /** Residual over its own sigma; 0 for a reading that nothing controls. */
  readonly standardised: number;
  /** How much too long this reading would be, were all others free of slips; 0 if uncontrolled. */
  readonly slip: number;
  /** The smallest slip found with power 80 % by a test at 0.1 %; Infinity if uncontrolled. */
  readonly smallestSlip: number;
}

export type AdjustedReading = NetworkReading & Judged;

export interface AdjustedPoint {
  readonly id: string;
  readonly at: Point;
  /** From the readings' own sigmas (before scaling by `sigma0`). */
  readonly covariance: PointCovariance;
}

/** One equation of the linearised network: how it answers to the unknowns. */
export interface LinearRow {
  /** Adjusted less observed. */
  readonly residual: number;
  readonly sigma: number;
  /** Places among the unknowns and the derivatives there. */
  readonly places: readonly { readonly at: number; readonly by: number }[];
}

export interface Adjustment {
  /** Every point that is not wholly held, in the order given. */
  readonly points: readonly AdjustedPoint[];
  readonly readings: readonly AdjustedReading[];
  readonly scales: readonly {
    readonly id: string;
    readonly scale: number;
    readonly sigma: number;
  }[];
  readonly degreesOfFreedom: number;
  /** Sum of (residual / sigma)², what is known beforehand included. */
  readonly chiSquare: number;
  /** sqrt(chiSquare / dof): near 1 when the readings are as good as they claim; 1 when dof is 0. */
  readonly sigma0: number;
  /** Chance of a chi-square this large or larger when nothing slipped. */
  readonly chance: number;
  readonly iterations: number;
  /** The readings' equations in order, then those of points and scales known beforehand. */
  readonly rows: readonly LinearRow[];
  /** The points whose prior the rows after the readings are, two rows each, then scales, one each. */
  readonly priors: readonly string[];
  /** Place of each point's x and y among the unknowns; −1 for a held coordinate. */
  readonly places: Readonly<Record<string, readonly [number, number]>>;
  /** Covariance of the unknowns, `unknowns` × `unknowns`, row by row. */
  readonly cofactor: Float64Array;
  readonly unknowns: number;
}
