/** The design: bands, quiet ground, clean-up laps and the graphic, cut into patches of one lay each. */
import { fail, succeed, type Problem, type Result } from '../base/result';
import { inches, type Feet } from '../base/units';
import type { Field } from '../field/model';
import { lineSegment, type Path } from '../geometry/arc';
import type { Polyline } from '../geometry/polyline';
import { EMPTY_REGION, regionArea, regionFrom, type Region } from '../geometry/region';
import type { PatternSpec } from '../pattern/model';
import { checkFigures, checkPlace } from './check-design';
import { layBackground } from './lay-background';
import { graphicParts, warnVanishing } from './graphic-parts';
import { layEdgeLaps } from './edge-laps';
import { layGraphicPart, type GraphicPatch } from './lay-graphic';
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
  readonly narrowSwathFt: Feet;
  readonly narrowCutFt: Feet;
  readonly toleranceIn: number;
}

const NO_QUIET: QuietGround = { region: EMPTY_REGION, still: EMPTY_REGION, laps: [], strokes: [] };

/**
 * Patches that partition the outfield grass exactly, with the swaths they were made for. Problems:
 * `bearing-unreadable`, `band-passes`, `band-offset`, `edge-laps`, `quiet-margin`, `swath-width`,
 * `tolerance`, `art-off-grass`, `art-on-edge-laps`; warnings `graphic-vanishes`, `no-edge-laps`.
 */
export function composeDesign(input: ComposeInput): Result<Design> {
  const { field, pattern, design } = input;
  const figures = checkFigures(pattern, design, input);
  if (figures.length > 0) return fail(...figures);
  const wide = { swathFt: input.wideSwathFt, cutFt: input.wideCutFt };
  const graphic = regionFrom(input.graphic);
  const laps = layEdgeLaps(field, design.edgeLaps, wide);
  const misplaced = graphic.length > 0 ? checkPlace(field, graphic, laps.inner) : [];
  if (misplaced.length > 0) return fail(...misplaced);
  const quiet = quietGround(input, graphic, laps.inner);
  const ground = subtractNear(laps.inner, quiet.region);
  const bands = layBackground(field, pattern, ground, wide);
  const cut = {
    swathFt: input.narrowSwathFt,
    cutFt: input.narrowCutFt,
    toleranceFt: inches(input.toleranceIn),
  };
  const parts = graphic.length > 0 ? graphicParts(input, graphic, bands, cut) : [];
  const laid = parts.map((part) => layGraphicPart(part, cut));
  const guides: Record<string, Path> = {};
  const under = (region: Region) => subtractNear(region, graphic);
  const patches = [
    ...bands.map((b) => bearingPatch(b.id, 'background', 0, under(b.region), b.bearingDeg)),
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
  const strokes = [
    ...bands.flatMap((b) => b.strokes),
    ...quiet.strokes,
    ...laps.strokes,
    ...laid.flatMap((l) => l.strokes),
  ].filter(strokeOf(patches));
  return succeed(
    { patches, guides, graphic, quiet: quiet.region, strokes },
    warnings(input, graphic, bands),
  );
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

const pathOf = (line: Polyline): Path => line.slice(1).map((p, i) => lineSegment(line[i]!, p));

/** Strokes whose patch is still there once the later ones are cut out. */
function strokeOf(patches: readonly Patch[]): (stroke: Stroke) => boolean {
  const ids = new Set(patches.map((p) => p.id));
  return (stroke) => ids.has(stroke.patch);
}

function warnings(
  input: ComposeInput,
  graphic: Region,
  bands: ReturnType<typeof layBackground>,
): Problem[] {
  const out: Problem[] = [];
  if (input.design.edgeLaps === 0) out.push(noLaps());
  if (input.design.ground.kind === 'plain' && graphic.length > 0) {
    out.push(...warnVanishing(input.design, graphic, bands));
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
