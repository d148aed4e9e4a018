/** The design: the grass divided into patches, each with one lay rule. Patches partition the grass. */
import type { Feet } from '../base/units';
import type { Region } from '../geometry/region';
import type { Path } from '../geometry/arc';
import type { Polyline } from '../geometry/polyline';
import type { Way } from '../pattern/model';

/** Which way the graphic's blades lean, as home plate sees it. */
export type LaySense = 'toward' | 'away';

/** What lies behind the graphic, so that its whole outline shows. */
export type GroundSpec =
  | {
      /** One lay behind the graphic, opposite to it. */
      readonly kind: 'quiet';
      readonly shape: 'offset' | 'box' | 'oval';
      readonly marginFt: Feet;
    }
  /** Every band reversed inside the graphic. */
  | { readonly kind: 'counter-change' }
  /** The graphic laid square to the bands. */
  | { readonly kind: 'square' }
  /** Plain bands, the graphic in one fixed lay: shown with a warning, it vanishes on half of them. */
  | { readonly kind: 'plain' };

export interface DesignSpec {
  readonly ground: GroundSpec;
  /** Lay of the graphic (quiet and plain ground). */
  readonly graphicLay: LaySense;
  /** Clean-up laps round the outfield's edge, in wide-mower passes (0 to 3). */
  readonly edgeLaps: number;
}

/** A lay: one bearing, or along the guides of a border (`forward` is the guide's own direction). */
export type Lay =
  | { readonly order: number; readonly bearingDeg: number }
  | {
      readonly order: number;
      /** Id of the guide line; the guide itself is in `Design.guides`. */
      readonly guides: string;
      readonly sense: 'forward' | 'backward';
      /** Of a pattern's band: with its family of lines or against it. */
      readonly way?: Way;
    };

export type PatchKind = 'background' | 'graphic' | 'quiet' | 'border';

export interface Patch {
  readonly id: string;
  readonly kind: PatchKind;
  /** Drawn order: 0 bands, 1 quiet ground, 2 borders, 3 graphic, 4 graphic edge. */
  readonly layer: number;
  readonly tool: 'wide' | 'narrow';
  readonly lays: readonly Lay[];
  /** Ids of the pattern's bands that lie on it, in the order mown; other patches have none. */
  readonly bands?: readonly string[];
  readonly region: Region;
  readonly areaSqFt: number;
}

/**
 * The middle of one swath that a patch was cut out for, in the direction of its lay, before any
 * machine's body is looked at. Patches are what is left of these once the later ones are down.
 */
export interface Stroke {
  /** The patch that it was laid for, or the band where bands cross one another. */
  readonly patch: string;
  readonly role: 'wide' | 'narrow';
  readonly phase: 'background' | 'graphic' | 'edge' | 'border';
  readonly line: Polyline;
  /** Width cut. */
  readonly widthFt: Feet;
  /** Later groups of a tool relay earlier ones; see `GROUP`. */
  readonly group: number;
  /** Number of the pattern's mowing, from 1, and of the band in it, from the left; bands only. */
  readonly mowing?: number;
  readonly band?: number;
  readonly lap?: number;
  readonly closed?: boolean;
}

/**
 * Driving groups of the wide mower, ascending: the pattern's mowings are 0, 1 …; then these. Laps along
 * track and skin run through the corners and come last, one group each. Narrow: 0 fill, 1 and up outline.
 */
export const GROUP = { quiet: 100, quietLap: 101, foulLines: 102, through: 103 } as const;

export interface Design {
  readonly patches: readonly Patch[];
  readonly guides: Readonly<Record<string, Path>>;
  /** The graphic in the field frame (empty without one), as placed. */
  readonly graphic: Region;
  /** The quiet ground's region, when there is one. */
  readonly quiet: Region;
  /** What is to be driven, in no particular order but that of `group`. */
  readonly strokes: readonly Stroke[];
}
