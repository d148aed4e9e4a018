/** Swaths: what is to be driven, before anyone has decided in which order. */
import type { Feet } from '../base/units';
import type { Polyline } from '../geometry/polyline';
import type { Loss } from './lost-ground';
import type { Phase, Uncovered } from './model';

/**
 * One swath of one machine: reels down from the first point of `line` to the last. At both end poses
 * and all along, the cut is over grass (at most `EDGE_OVERRUN` beyond) and the body off the skin and
 * keep-outs; how the machine gets to the first point is the route's business.
 */
export interface Swath {
  /** Unique, stable: `<patch>/<n>`. */
  readonly id: string;
  /** Id of the design's patch, or band, that the swath is laid for; it may over-run into patches mown later. */
  readonly patch: string;
  readonly role: 'wide' | 'narrow';
  readonly phase: Phase;
  /** Centre line in the direction driven. */
  readonly line: Polyline;
  /** Width cut. */
  readonly widthFt: Feet;
  /**
   * Driving groups of a role, ascending: every swath of a group is down before the next group starts,
   * because the next one relays its over-run. See the design's `GROUP`.
   */
  readonly group: number;
  /** Number of the pattern's mowing, from 1; bands only. */
  readonly mowing?: number;
  /** Band number in it, counting from the left looking along its bearing; bands only. */
  readonly band?: number;
  /** Lap number, 1 at the edge; laps only. */
  readonly lap?: number;
  /** The line closes on itself (first point repeated at the end). */
  readonly closed?: boolean;
}

export interface SwathLayout {
  readonly swaths: readonly Swath[];
  /** Swaths shortened or given up because the machine's body has no room there. */
  readonly blocked: readonly Loss[];
  readonly uncovered: readonly Uncovered[];
  /** Share of the graphic's area under narrow swaths, 0 to 1; 1 without a graphic. */
  readonly graphicCovered: number;
  /** Area laid beyond the tolerance outside the graphic, as a share of the graphic's area. */
  readonly laidOutside: number;
}
