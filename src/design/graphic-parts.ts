/** Which way the graphic is laid: whole, or band by band; and where it would not show. */
import type { Problem } from '../base/result';
import { bearingDifference, bearingNormalise } from '../geometry/angle';
import { regionArea, regionIntersect, regionOffset, type Region } from '../geometry/region';
import type { BandsSpec } from '../pattern/model';
import type { LaidBand } from './lay-background';
import { reachOf, wholeGraphic, type GraphicPart } from './lay-graphic';
import type { DesignSpec } from './model';
import type { NarrowCut } from './outline-strokes';

interface GraphicInput {
  readonly pattern: BandsSpec;
  readonly design: DesignSpec;
}

/** Parts of one lay each; together they are the graphic. */
export function graphicParts(
  input: GraphicInput,
  graphic: Region,
  bands: readonly LaidBand[],
  cut: NarrowCut,
): GraphicPart[] {
  if (input.design.ground.kind !== 'counter-change') {
    return [wholeGraphic(graphic, graphicBearing(input), cut)];
  }
  const reach = reachOf(graphic, cut);
  const over = (cut.cutFt - cut.swathFt) / 2;
  return bands
    .map((band) => ({
      id: `graphic-${band.id}`,
      region: regionIntersect(graphic, band.strip),
      allowed: regionIntersect(reach, regionOffset(band.strip, over, 'mitre')),
      bearingDeg: bearingNormalise(band.bearingDeg + 180),
    }))
    .filter((part) => part.region.length > 0);
}

/** The graphic's one lay; `square` ground takes the way across the bands that goes with the wish. */
export function graphicBearing({ pattern, design }: GraphicInput): number {
  const wish = design.graphicLay === 'toward' ? 180 : 0;
  if (design.ground.kind !== 'square') return wish;
  const across = bearingNormalise(pattern.bearingDeg + 90);
  return bearingDifference(across, wish) <= 90 ? across : bearingNormalise(across + 180);
}

/** A part of a band counts as vanishing when its lay is this near (30°) to the graphic's. */
const ALIKE_DEG = 30;

/** The warning of plain ground, with the bands on which the graphic has the ground's own lay. */
export function warnVanishing(
  design: DesignSpec,
  graphic: Region,
  bands: readonly LaidBand[],
): Problem[] {
  const wish = design.graphicLay === 'toward' ? 180 : 0;
  const alike = bands
    .filter((b) => bearingDifference(b.bearingDeg, wish) < ALIKE_DEG)
    .map((b) => ({ number: b.number, area: regionArea(regionIntersect(graphic, b.strip)) }))
    .filter((b) => b.area > 0);
  if (alike.length === 0) return [];
  const lost = alike.reduce((n, b) => n + b.area, 0) / regionArea(graphic);
  return [
    {
      code: 'graphic-vanishes',
      where: `bands ${alike.map((b) => b.number).join(', ')}`,
      what: `${Math.round(lost * 100)} % of the graphic has the lay of the band that it lies on and will not show`,
      fix: 'choose quiet ground, counter-change or a lay square to the bands',
      severity: 'warning',
    },
  ];
}
