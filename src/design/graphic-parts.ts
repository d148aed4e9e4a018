/** Which way the graphic is laid: whole, or band by band; and where it would not show. */
import { problem, type Problem } from '../base/result';
import { bearingDifference, bearingNormalise } from '../geometry/angle';
import { boxCentre } from '../geometry/box';
import type { Point } from '../geometry/point';
import {
  regionArea,
  regionBox,
  regionContains,
  regionIntersect,
  regionOffset,
  regionUnionAll,
  type Region,
} from '../geometry/region';
import { layBearingAt, layTurn } from './lay-bearing';
import { reachOf, wholeGraphic, type GraphicPart } from './lay-graphic';
import type { LaidBand, LaidPattern } from './lay-pattern';
import type { DesignSpec } from './model';
import type { NarrowCut } from './outline-strokes';

/** Ground of one last lay under the graphic. */
interface TopBand {
  readonly band: LaidBand;
  readonly region: Region;
}

/** The pattern's ground by the band mown last on it. */
function topBands(pattern: LaidPattern): TopBand[] {
  const tops = new Map<string, { band: LaidBand; regions: Region[] }>();
  for (const patch of pattern.patches) {
    const band = patch.bands[patch.bands.length - 1]!;
    const entry = tops.get(band.id) ?? { band, regions: [] };
    entry.regions.push(patch.region);
    tops.set(band.id, entry);
  }
  return [...tops.values()].map(({ band, regions }) => ({
    band,
    region: regions.length === 1 ? regions[0]! : regionUnionAll(regions),
  }));
}

/** Parts of one lay each; together they are the graphic. */
export function graphicParts(
  design: DesignSpec,
  graphic: Region,
  pattern: LaidPattern,
  cut: NarrowCut,
): GraphicPart[] {
  if (design.ground.kind !== 'counter-change') {
    return [wholeGraphic(graphic, graphicBearing(design, graphic, pattern), cut)];
  }
  const reach = reachOf(graphic, cut);
  const over = (cut.cutFt - cut.swathFt) / 2;
  return topBands(pattern)
    .map(({ band, region }) => ({ band, strip: region, region: regionIntersect(graphic, region) }))
    .filter((part) => part.region.length > 0)
    .map(({ band, strip, region }) => ({
      id: `graphic-${band.id}`,
      region,
      allowed: regionIntersect(reach, regionOffset(strip, over, 'mitre')),
      bearingDeg: bearingNormalise(layBearingAt(band.lay, middleOf(region)) + 180),
    }));
}

const middleOf = (region: Region): Point => boxCentre(regionBox(region)!);

/** The graphic's one lay; `square` ground takes the way across the bands that goes with the wish. */
export function graphicBearing(design: DesignSpec, graphic: Region, pattern: LaidPattern): number {
  const wish = design.graphicLay === 'toward' ? 180 : 0;
  if (design.ground.kind !== 'square') return wish;
  const across = bearingNormalise(bandBearing(graphic, pattern) + 90);
  return bearingDifference(across, wish) <= 90 ? across : bearingNormalise(across + 180);
}

/** The last lay at the graphic's middle, or that of its nearest band by number. */
function bandBearing(graphic: Region, pattern: LaidPattern): number {
  const at = middleOf(graphic);
  const tops = topBands(pattern);
  const here = tops.find((t) => regionContains(t.region, at)) ?? tops[0];
  return here ? layBearingAt(here.band.lay, at) : 0;
}

/** A lay may turn by so much within a part of the graphic before one bearing no longer stands for it. */
const MOST_TURN_DEG = 20;

/** Error `graphic-on-curves`: bands bend too much under the graphic for it to be laid against them. */
export function checkCounterChange(
  design: DesignSpec,
  graphic: Region,
  pattern: LaidPattern,
): Problem[] {
  if (design.ground.kind !== 'counter-change') return [];
  const bent = topBands(pattern).some(({ band, region }) => {
    const part = regionIntersect(graphic, region);
    return part.length > 0 && layTurn(band.lay, part) > MOST_TURN_DEG;
  });
  if (!bent) return [];
  return [
    problem(
      'graphic-on-curves',
      'design.ground',
      'the bands bend so much under the graphic that it cannot be laid against them in straight passes',
      'choose quiet ground behind it, or a pattern of straight bands',
    ),
  ];
}

/** A part of a band counts as vanishing when its lay is this near (30°) to the graphic's. */
const ALIKE_DEG = 30;

/** The warning of plain ground, with the bands on which the graphic has the ground's own lay. */
export function warnVanishing(
  design: DesignSpec,
  graphic: Region,
  pattern: LaidPattern,
): Problem[] {
  const wish = design.graphicLay === 'toward' ? 180 : 0;
  const alike = topBands(pattern)
    .map(({ band, region }) => ({ band, part: regionIntersect(graphic, region) }))
    .filter(({ part }) => part.length > 0)
    .filter(
      ({ band, part }) =>
        bearingDifference(layBearingAt(band.lay, middleOf(part)), wish) < ALIKE_DEG,
    )
    .map(({ band, part }) => ({ id: band.id, area: regionArea(part) }));
  if (alike.length === 0) return [];
  const lost = alike.reduce((n, b) => n + b.area, 0) / regionArea(graphic);
  return [
    {
      code: 'graphic-vanishes',
      where: `bands ${alike.map((b) => b.id.slice('band-'.length)).join(', ')}`,
      what: `${Math.round(lost * 100)} % of the graphic has the lay of the band that it lies on and will not show`,
      fix: 'choose quiet ground, counter-change or a lay square to the bands',
      severity: 'warning',
    },
  ];
}
