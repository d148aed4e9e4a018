/**
 * The recipe language: a pattern as data. A recipe is a list of mowings over one another, each a
 * family of guide lines cut into bands. Feet, and degrees clockwise from home toward second base.
 * docs/recipes.md tells it from the reader's side.
 */
import type { Feet } from '../base/units';

export const RECIPE_FORMAT = 'swathscribe-recipe';
export const RECIPE_VERSION = 1;

/**
 * A number, or how it is worked out: `"$name"` is the value of a parameter (`$swath`: one pass of the
 * wide mower, feet); `choose` takes the number that stands beside the value of a choice.
 */
export type NumberRule =
  | number
  | string
  | { readonly sum: readonly NumberRule[] }
  | { readonly product: readonly NumberRule[] }
  | { readonly choose: string; readonly among: Readonly<Record<string, NumberRule>> };

/** Places that every field has. */
export const NAMED_PLACES = [
  'home',
  'first-base',
  'second-base',
  'third-base',
  'mound',
  'outfield-middle',
  'left-pole',
  'right-pole',
] as const;
export type NamedPlace = (typeof NAMED_PLACES)[number];

/** A named place, a parameter's (`"$name"`), or coordinates. */
export type PlaceRule = string | { readonly x: NumberRule; readonly y: NumberRule };

/** Band width: passes of the wide mower, feet, or a parameter's. */
export type WidthRule = string | { readonly passes: NumberRule } | { readonly feet: NumberRule };

export const EDGE_SIDES = ['track', 'skin', 'left-line', 'right-line'] as const;
export type EdgeSide = (typeof EDGE_SIDES)[number];

/** `out` goes with the guide line, `back` against it. */
export type Way = 'out' | 'back';

/** `on`: whether an edge or the middle of the first band lies on the line that it starts from. */
export type Start = 'edge' | 'middle';

/** A family of guide lines. */
export type GuidesRule =
  | {
      readonly kind: 'parallel';
      readonly bearingDeg: NumberRule;
      readonly through: PlaceRule;
      readonly shiftFt?: NumberRule;
      readonly on?: Start;
    }
  | {
      readonly kind: 'aimed';
      readonly from: PlaceRule;
      readonly at: PlaceRule;
      readonly shiftFt?: NumberRule;
      readonly on?: Start;
    }
  | { readonly kind: 'rings'; readonly centre: PlaceRule; readonly shiftFt?: NumberRule }
  | {
      readonly kind: 'rays';
      readonly centre: PlaceRule;
      readonly fromDeg?: NumberRule;
      readonly toDeg?: NumberRule;
    }
  | {
      readonly kind: 'waves';
      readonly bearingDeg: NumberRule;
      readonly through: PlaceRule;
      readonly lengthFt: NumberRule;
      readonly heightFt: NumberRule;
      readonly shiftFt?: NumberRule;
    }
  | { readonly kind: 'spiral'; readonly centre: PlaceRule; readonly turn: 'cw' | 'ccw' }
  | { readonly kind: 'edge'; readonly of: EdgeSide; readonly shiftFt?: NumberRule }
  | {
      readonly kind: 'line';
      readonly points: readonly { readonly x: NumberRule; readonly y: NumberRule }[];
      readonly shiftFt?: NumberRule;
    };

/** Where a mowing goes; without one, everywhere on the grass. */
export type AreaRule =
  | { readonly kind: 'surface'; readonly is: string }
  | {
      readonly kind: 'half';
      readonly side: 'left' | 'right';
      readonly bearingDeg: NumberRule;
      readonly through: PlaceRule;
    }
  | {
      readonly kind: 'strip';
      readonly bearingDeg: NumberRule;
      readonly through: PlaceRule;
      readonly widthFt: NumberRule;
    }
  | {
      readonly kind: 'ring';
      readonly centre: PlaceRule;
      readonly fromFt?: NumberRule;
      readonly toFt?: NumberRule;
    }
  | {
      readonly kind: 'sector';
      readonly centre: PlaceRule;
      readonly fromDeg: NumberRule;
      readonly toDeg: NumberRule;
    }
  | {
      readonly kind: 'drawn';
      readonly points: readonly { readonly x: NumberRule; readonly y: NumberRule }[];
    }
  | {
      readonly kind: 'blocks';
      readonly bearingDeg: NumberRule;
      readonly through: PlaceRule;
      readonly acrossFt: NumberRule;
      readonly alongFt?: NumberRule;
      readonly pick: 'even' | 'odd';
    }
  | { readonly kind: 'edge'; readonly of: EdgeSide; readonly widthFt: NumberRule }
  | { readonly kind: 'both'; readonly of: readonly AreaRule[] }
  | { readonly kind: 'any'; readonly of: readonly AreaRule[] }
  | { readonly kind: 'not'; readonly of: AreaRule };

export interface MowingRule {
  readonly guides: GuidesRule;
  /** Band widths, repeated from the first band on. */
  readonly widths: readonly WidthRule[];
  /** Ways of the bands, repeated. */
  readonly lays: readonly Way[];
  readonly over?: AreaRule;
  /** Mown over what lies there already, whose lay then shows through; else it takes its place. */
  readonly crosses?: boolean;
}

interface ParameterBase {
  /** Letters, digits and hyphens; `$id` in rules. */
  readonly id: string;
  readonly name: string;
  readonly help?: string;
}

interface Ranged extends ParameterBase {
  readonly value: number;
  readonly least: number;
  readonly most: number;
}

/** What a user may set. `value` is what it starts with. */
export type Parameter =
  | (ParameterBase & { readonly kind: 'bearing'; readonly value: number })
  | (Ranged & { readonly kind: 'count' })
  | (Ranged & { readonly kind: 'length' })
  | (Ranged & { readonly kind: 'factor' })
  | (ParameterBase & { readonly kind: 'width'; readonly value: WidthValue })
  | (ParameterBase & { readonly kind: 'place'; readonly value: PlaceValue })
  | (ParameterBase & {
      readonly kind: 'choice';
      readonly value: string;
      readonly options: readonly { readonly value: string; readonly name: string }[];
    });

export type WidthValue = { readonly passes: number } | { readonly feet: Feet };
export type PlaceValue = NamedPlace | { readonly x: Feet; readonly y: Feet };
/** A string is a choice's value or the name of a place. */
export type ParameterValue = number | string | WidthValue | Exclude<PlaceValue, NamedPlace>;

export interface Recipe {
  readonly format: typeof RECIPE_FORMAT;
  readonly version: typeof RECIPE_VERSION;
  readonly id: string;
  readonly name: string;
  /** One or two sentences: what it looks like and what it asks of the crew. */
  readonly about: string;
  readonly parameters: readonly Parameter[];
  readonly mowings: readonly MowingRule[];
}

/** A recipe and what is set of it; parameters not named keep their value. */
export interface PatternSpec {
  readonly recipe: Recipe;
  readonly values: Readonly<Record<string, ParameterValue>>;
}
