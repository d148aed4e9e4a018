/** The design: bands, quiet ground, clean-up laps and the graphic, cut into patches of one lay each. */
import { fail, succeed, type Problem, type Result } from '../base/result';
import { inches, type Feet } from '../base/units';
import { USUAL_TURF } from '../field/default-field';
import type { Field } from '../field/model';
import type { Path } from '../geometry/arc';
import { EMPTY_REGION, regionArea, regionFrom, type Region } from '../geometry/region';
import { pathOf } from '../pattern/families/between-lines';
import type { PatternSpec } from '../pattern/model';
import { resolveRecipe } from '../pattern/resolve-recipe';
import { checkFigures, checkPlace } from './check-design';
import { turfProblems } from './check-turf';
import { checkCounterChange, graphicParts, warnVanishing } from './graphic-parts';
import { layEdgeLaps, ringWidth } from './edge-laps';
import { layGraphicPart, type GraphicPatch } from './lay-graphic';
import { layPattern, type LaidBand, type LaidPattern, type PatternPatch } from './lay-pattern';
import type { Design, DesignSpec, Lay, Patch, PatchKind, Stroke } from './model';
import { subtractNear } from './near-box';
import { layQuietGround, type QuietGround } from './quiet-ground';

export interface ComposeInput {
  readonly field: Field;
  readonly pattern: PatternSpec;
  readonly design: DesignSpec;
  /** Outlines as placed, field frame; empty without a graphic. */
  readonly graphic: Region;
  readonly wideSwathFt: Feet;
  readonly wideCutFt: Feet;
  /** Smallest radius that the wide mower drives. */
  readonly wideTurnFt: Feet;
  readonly narrowSwathFt: Feet;
  readonly narrowCutFt: Feet;
  readonly toleranceIn: number;
}

const NO_QUIET: QuietGround = { region: EMPTY_REGION, still: EMPTY_REGION, laps: [], strokes: [] };

/**
 * Patches that partition the outfield grass exactly, with the swaths they were made for. Problems: those
 * of `resolveRecipe`; `edge-laps`, `quiet-margin`, `swath-width`, `tolerance`, `art-off-grass`,
 * `art-on-edge-laps`, `graphic-on-curves`; warnings `graphic-vanishes`, `no-edge-laps`, `mowing-empty`,
 * `bend-tight`, `pattern-gap`, `pattern-faint`, `lines-wavy`.
 */
export function composeDesign(input: ComposeInput): Result<Design> {
  const { field, design } = input;
  const figures = checkFigures(design, input);
  if (figures.length > 0) return fail(...figures);
  const wide = { swathFt: input.wideSwathFt, cutFt: input.wideCutFt };
  const swath = { ...wide, turnRadiusFt: input.wideTurnFt };
  const mowings = resolveRecipe(input.pattern, field, swath);
  if (!mowings.ok) return mowings;
  const graphic = regionFrom(input.graphic);
  const laps = layEdgeLaps(field, design.edgeLaps, wide);
  const misplaced = graphic.length > 0 ? checkPlace(field, graphic, laps.inner) : [];
  if (misplaced.length > 0) return fail(...misplaced);
  const quiet = quietGround(input, graphic, laps.inner);
  const ground = subtractNear(laps.inner, quiet.region);
  const inset = ringWidth(design.edgeLaps, wide);
  const pattern = layPattern(field, mowings.value, ground, inset, swath);
  const curved = graphic.length > 0 ? checkCounterChange(design, graphic, pattern) : [];
  if (curved.length > 0) return fail(...curved);
  const laid = layGraphic(input, graphic, pattern);
  const guides: Record<string, Path> = {};
  const under = (region: Region) => subtractNear(region, graphic);
  const patches = [
    ...pattern.patches.map((p) => patternPatch(p, under(p.region), guides)),
    bearingPatch('quiet', 'quiet', 1, under(quiet.still), quietBearing(design)),
    ...quiet.laps.map((lap) => {
      guides[lap.id] = pathOf(lap.guide);
      return guidePatch(lap.id, 'wide', under(lap.region));
    }),
    ...laps.sides.map(({ id, side, region }) => {
      guides[id] = side.path;
      return guidePatch(id, 'wide', under(region));
    }),
    ...laid.flatMap((l) => l.patches.map((p) => graphicPatch(p, guides))),
  ].filter((patch) => patch.region.length > 0);
  const others = [...quiet.strokes, ...laps.strokes, ...laid.flatMap((l) => l.strokes)];
  const strokes = [...pattern.strokes, ...others.filter(strokeOf(patches))];
  return succeed({ patches, guides, graphic, quiet: quiet.region, strokes }, [
    ...mowings.problems,
    ...pattern.problems,
    ...turfProblems(field.spec.turf ?? USUAL_TURF, pattern.bands, design.edgeLaps),
    ...warnings(input, graphic, pattern),
  ]);
}

function layGraphic(input: ComposeInput, graphic: Region, pattern: LaidPattern) {
  if (graphic.length === 0) return [];
  const cut = {
    swathFt: input.narrowSwathFt,
    cutFt: input.narrowCutFt,
    toleranceFt: inches(input.toleranceIn),
  };
  return graphicParts(input.design, graphic, pattern, cut).map((part) => layGraphicPart(part, cut));
}

const quietBearing = (design: DesignSpec): number => (design.graphicLay === 'toward' ? 0 : 180);

function quietGround(input: ComposeInput, graphic: Region, inner: Region): QuietGround {
  const spec = input.design.ground;
  if (spec.kind !== 'quiet' || graphic.length === 0) return NO_QUIET;
  const wide = { swathFt: input.wideSwathFt, cutFt: input.wideCutFt };
  const bearing = quietBearing(input.design);
  return layQuietGround(graphic, inner, input.field.outfieldGrass, spec, bearing, wide);
}

function bearingPatch(
  id: string,
  kind: PatchKind,
  layer: number,
  region: Region,
  bearingDeg: number,
): Patch {
  const lays: Lay[] = [{ order: 1, bearingDeg }];
  const tool = kind === 'graphic' ? 'narrow' : 'wide';
  return { id, kind, layer, tool, lays, region, areaSqFt: regionArea(region) };
}

/** A patch of the pattern; the lines that its bands follow are added to `guides`. */
function patternPatch(p: PatternPatch, region: Region, guides: Record<string, Path>): Patch {
  const lays = p.bands.map((band, i): Lay => bandLay(band, i + 1, guides));
  const areaSqFt = regionArea(region);
  const bands = p.bands.map((band) => band.id);
  return { id: p.id, kind: 'background', layer: 0, tool: 'wide', lays, bands, region, areaSqFt };
}

function bandLay({ id, lay, way }: LaidBand, order: number, guides: Record<string, Path>): Lay {
  if ('bearingDeg' in lay) return { order, bearingDeg: lay.bearingDeg };
  guides[id] = lay.guide;
  return { order, guides: id, sense: 'forward', way };
}

function guidePatch(id: string, tool: 'wide' | 'narrow', region: Region): Patch {
  const lays: Lay[] = [{ order: 1, guides: id, sense: 'forward' }];
  const layer = tool === 'wide' ? 2 : 4;
  return { id, kind: 'border', layer, tool, lays, region, areaSqFt: regionArea(region) };
}

function graphicPatch(p: GraphicPatch, guides: Record<string, Path>): Patch {
  if (!p.guide) return bearingPatch(p.id, 'graphic', 3, p.region, p.bearingDeg);
  guides[p.id] = pathOf(p.guide);
  return guidePatch(p.id, 'narrow', p.region);
}

/** Strokes whose patch is still there once the later ones are cut out. */
function strokeOf(patches: readonly Patch[]): (stroke: Stroke) => boolean {
  const ids = new Set(patches.map((p) => p.id));
  return (stroke) => ids.has(stroke.patch);
}

function warnings(input: ComposeInput, graphic: Region, pattern: LaidPattern): Problem[] {
  const out: Problem[] = [];
  if (input.design.edgeLaps === 0) out.push(noLaps());
  if (input.design.ground.kind === 'plain' && graphic.length > 0) {
    out.push(...warnVanishing(input.design, graphic, pattern));
  }
  return out;
}

function noLaps(): Problem {
  return {
    code: 'no-edge-laps',
    where: 'design.edgeLaps',
    what: 'without a clean-up lap the bands end in uncut wedges wherever they meet the edge at a slant',
    fix: 'take one or two clean-up laps',
    severity: 'warning',
  };
}
