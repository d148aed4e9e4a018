/** Art: what the user brings (`ArtSpec`) and the clean outlines made of it. */
import type { Feet } from '../base/units';
import type { Point } from '../geometry/point';
import type { Region } from '../geometry/region';

/** Where outlines come from. Files and fonts are handed in by the shell; the engine reads nothing. */
export type ArtSource =
  | { readonly kind: 'text'; readonly text: string; readonly font: string }
  /** `file` is looked up in the assets; `svg`, when present, is the text itself (as saved). */
  | { readonly kind: 'svg'; readonly file: string; readonly svg?: string };

export interface Placement {
  /** Where the centre of the art's box goes. */
  readonly centre: Point;
  /** Width of the art's box before rotation. */
  readonly widthFt: Feet;
  /** Counter-clockwise, degrees, seen from above. 0: readable from home plate. */
  readonly rotationDeg: number;
}

export interface ArtSpec {
  readonly source: ArtSource;
  readonly placement: Placement;
}

/** Fonts by catalogue id and files by name, as the shell found them. */
export interface Assets {
  readonly fonts: Readonly<Record<string, Uint8Array>>;
  readonly files: Readonly<Record<string, string>>;
}

/** Outlines in the art's own frame: unit-free, x right, y up. */
export interface Artwork {
  readonly region: Region;
}
