/** Machines, passes and the route they drive. */
import type { Sourced } from '../base/sourced';
import type { Feet, Seconds } from '../base/units';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';

/** Geometry is of the whole machine about the middle of its cutting width. */
export interface Machine {
  readonly id: string;
  readonly name: string;
  readonly role: 'wide' | 'narrow';
  /** What cuts; `none` only rolls or brushes. */
  readonly cutter: 'reel' | 'rotary' | 'none';
  readonly cutWidthIn: number;
  readonly overlapIn: number;
  readonly bodyWidthIn: number;
  /** Body ahead of and behind the cutting line. */
  readonly frontOverhangIn: number;
  readonly rearOverhangIn: number;
  readonly cuttingMph: number;
  readonly turningMph: number;
  readonly runningMph: number;
  readonly turnRadiusFt: Feet;
  /** Time lost at each turn to lift, steer and lower. */
  readonly turnSeconds: Seconds;
  readonly mayReverse: boolean;
  /** Leans the grass while cutting or rolling. */
  readonly lays: boolean;
  /** Leans the grass in turns and on the way too (a drum that stays down). */
  readonly laysInTransit: boolean;
  readonly powered: boolean;
  /** People it takes. */
  readonly people: number;
  /** Where each figure comes from, by key, or `assumption`. */
  readonly sources: Readonly<Record<string, string>>;
}

export interface MowingSpec {
  readonly wide: string;
  readonly narrow: string;
  /** More machines that share the work of their role, by catalogue id, two of one kind allowed. */
  readonly further?: readonly string[];
  /** Own figures over the catalogue's, by machine id. */
  readonly overrides: Readonly<
    Record<string, Partial<Omit<Machine, 'id' | 'role' | 'cutter' | 'sources'>>>
  >;
  /** Where machines come on to the grass. */
  readonly gate: Point;
  /** What a foot over finished grass against its lay is worth, seconds; `OVER_LAY_SECONDS_PER_FT`. */
  readonly overLaySecondsPerFt?: number;
}

export type Phase = 'erase' | 'background' | 'graphic' | 'edge' | 'border' | 'carry';

/** One swath of one machine, driven in one direction. */
export interface Pass {
  /** Number as printed, counting per machine from 1 in driving order. */
  readonly number: number;
  readonly machine: string;
  readonly phase: Phase;
  readonly patch: string;
  /** Centre line in the direction driven. */
  readonly line: Polyline;
  readonly lengthFt: Feet;
  readonly widthFt: Feet;
}

export interface Leg {
  readonly seq: number;
  readonly machine: string;
  readonly visit: number;
  readonly phase: Phase;
  readonly kind: 'mow' | 'turn' | 'run' | 'hold';
  /** Pass number, or null. */
  readonly pass: number | null;
  readonly patch: string | null;
  readonly widthFt: Feet;
  readonly points: Polyline;
  readonly startS: Seconds;
  readonly seconds: Seconds;
  readonly reels: 'down' | 'up';
  readonly lays: boolean;
  /** Present when the machine backs up along `points`, facing against them. */
  readonly gear?: 'reverse';
}

/** Part of the graphic that no tool's pass covers, with a place in words. */
export interface Uncovered {
  readonly at: Point;
  readonly areaSqFt: number;
  readonly place: string;
}

/** Shares of 1. */
export interface EfficiencyRange {
  readonly low: number;
  readonly high: number;
}

/** Field efficiency of one machine on the grass, with what its time there goes on; shares of 1. */
export interface FieldEfficiency {
  readonly machine: string;
  readonly reached: number;
  readonly mowing: number;
  readonly turning: number;
  readonly empty: number;
  /** Null where no handbook gives one. */
  readonly handbook: Sourced<EfficiencyRange> | null;
}

export interface PassPlan {
  readonly machines: readonly Machine[];
  readonly passes: readonly Pass[];
  readonly legs: readonly Leg[];
  readonly mowFt: Feet;
  readonly turnFt: Feet;
  readonly runFt: Feet;
  /** Driven over patches that were finished, against their lay (`finished-lays.ts`), reels up or down. */
  readonly overLayFt: Feet;
  /** Share of the graphic's area under planned passes, 0 to 1; 1 without a graphic. */
  readonly graphicCovered: number;
  readonly uncovered: readonly Uncovered[];
  /** Share of the graphic's area by which passes lay beyond the tolerance outside it. */
  readonly laidOutside: number;
  readonly totals: readonly {
    readonly machine: string;
    readonly phase: Phase;
    readonly passes: number;
    readonly mowFt: Feet;
    readonly seconds: Seconds;
  }[];
  readonly efficiency: readonly FieldEfficiency[];
  /** Share of the graphic's area that a drum in turns or on the way leaves in a wrong lay, 0 to 1. */
  readonly disturbed: number;
}
