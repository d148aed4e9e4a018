/** A field and words on it for the design's tests. */
import { readFileSync } from 'node:fs';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { loadArtwork } from '../../src/art/load-artwork';
import { placeArtwork } from '../../src/art/place-artwork';
import type { Result } from '../../src/base/result';
import { composeDesign, type ComposeInput } from '../../src/design/compose-design';
import type { Design, DesignSpec } from '../../src/design/model';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { FieldSpec } from '../../src/field/model';
import type { Region } from '../../src/geometry/region';
import { findMachines } from '../../src/mowing/machines';
import type { PatternSpec, Recipe } from '../../src/pattern/model';
import { STRAIGHT } from '../../src/project/straight-recipe';

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.code}: ${p.what}`).join('; '));
  return result.value;
}

export const fieldWith = (over: Partial<FieldSpec> = {}) =>
  must(buildField({ ...defaultFieldSpec(), ...over }, 'feet-inches'));

export function placeWord(
  text: string,
  fontId: string,
  widthFt: number,
  centre = { x: 0, y: 270 },
  rotationDeg = 0,
): Region {
  const font = FONT_CATALOGUE.find((f) => f.id === fontId)!;
  const bytes = new Uint8Array(readFileSync(`node_modules/${font.package}/${font.file}`));
  const artwork = must(
    loadArtwork({ kind: 'text', text, font: fontId }, { fonts: { [fontId]: bytes }, files: {} }),
  );
  return must(placeArtwork(artwork, { centre, widthFt, rotationDeg }));
}

/** A drum with a window: straight and curved outline, a hole, corners; about 40 ft wide. */
export function drumAndWindow(centre = { x: 0, y: 260 }): Region {
  const at = (r: number, n: number, turn: 1 | -1) =>
    Array.from({ length: n }, (_, i) => ({
      x: centre.x + r * Math.cos((turn * 2 * Math.PI * i) / n),
      y: centre.y + 0.8 * r * Math.sin((turn * 2 * Math.PI * i) / n),
    }));
  return [at(20, 96, 1), at(8, 48, -1)];
}

export const machines = (wide = 'triplex-reel', narrow = 'rotary-roller-21') =>
  must(findMachines({ wide, narrow, overrides: {}, gate: { x: 200, y: 210 } }));

const QUIET: DesignSpec = {
  ground: { kind: 'quiet', shape: 'offset', marginFt: 8 },
  graphicLay: 'toward',
  edgeLaps: 2,
};

export function composeInput(
  over: {
    readonly graphic?: Region;
    readonly recipe?: Recipe;
    readonly values?: PatternSpec['values'];
    readonly design?: Partial<DesignSpec>;
    readonly field?: Partial<FieldSpec>;
    readonly wide?: string;
    readonly toleranceIn?: number;
  } = {},
): ComposeInput {
  const { wide, narrow } = machines(over.wide);
  return {
    field: fieldWith(over.field),
    pattern: { recipe: over.recipe ?? STRAIGHT, values: { bearing: 0, ...over.values } },
    design: { ...QUIET, ...over.design },
    graphic: over.graphic ?? [],
    wideSwathFt: (wide.cutWidthIn - wide.overlapIn) / 12,
    wideCutFt: wide.cutWidthIn / 12,
    wideTurnFt: wide.turnRadiusFt,
    narrowSwathFt: (narrow.cutWidthIn - narrow.overlapIn) / 12,
    narrowCutFt: narrow.cutWidthIn / 12,
    toleranceIn: over.toleranceIn ?? 3,
  };
}

export const compose = (over: Parameters<typeof composeInput>[0] = {}): Design =>
  must(composeDesign(composeInput(over)));
