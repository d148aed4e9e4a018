/**
 * The pattern on the grass: its mowings in order, each cut into bands with their passes. A mowing takes
 * the place of what lies under it, or crosses it, when both lays count.
 */
import { problem, type Problem } from '../base/result';
import type { Feet } from '../base/units';
import type { Field } from '../field/model';
import { boxesMeet, boxOfRings, type Box } from '../geometry/box';
import {
  EMPTY_REGION,
  regionArea,
  regionIntersect,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../geometry/region';
import { indexRegion, type RegionIndex } from '../geometry/region-index';
import { areaRegion } from '../pattern/area-region';
import type { BandLay, Lanes } from '../pattern/guide-band';
import { layFamily } from '../pattern/lay-family';
import { layFrame } from '../pattern/lay-frame';
import type { Way } from '../pattern/model';
import type { Mowing, SwathWidths } from '../pattern/resolved';
import { curveLanes, type CurveLane } from './curve-lanes';
import { layLanes } from './lay-lanes';
import type { Stroke } from './model';
import { intersectNear, subtractNear } from './near-box';

/** A band of one mowing. */
export interface LaidBand {
  readonly id: string;
  /** From 1: the mowing, and the band in it from the left (or the middle) on. */
  readonly mowing: number;
  readonly number: number;
  /** The band's ground, what later mowings take left out; the graphic not cut out. */
  readonly region: Region;
  readonly lay: BandLay;
  readonly way: Way;
}

/** A piece of ground with the bands that lie on it, in the order mown. */
export interface PatternPatch {
  readonly id: string;
  readonly region: Region;
  readonly bands: readonly LaidBand[];
}

export interface LaidPattern {
  readonly bands: readonly LaidBand[];
  readonly patches: readonly PatternPatch[];
  readonly strokes: readonly Stroke[];
  readonly problems: readonly Problem[];
}

/** Pieces of band smaller than this (square feet) are slivers of cutting, not ground. */
const SLIVER_SQFT = 0.05;

/** Lays the mowings over `ground`, the grass inside the clean-up laps, `inset` feet wide. */
export function layPattern(
  field: Field,
  mowings: readonly Mowing[],
  ground: Region,
  inset: Feet,
  swath: SwathWidths,
): LaidPattern {
  const areas = mowings.map((m) => areaRegion(m.over, ground, field, inset));
  const grass = indexRegion(field.outfieldGrass);
  const laid = mowings.map((mowing, i) => {
    const later = areas.filter((_, j) => j > i && !mowings[j]!.crosses);
    const own = later.length > 0 ? regionSubtract(areas[i]!, regionUnionAll(later)) : areas[i]!;
    return layMowing(field, mowing, i, own, inset, swath, grass);
  });
  const bands = laid.flatMap((l) => l.bands);
  const patches = mowings.reduce<readonly PatternPatch[]>(
    (under, mowing, i) => stack(under, laid[i]!.bands, areas[i]!, mowing.crosses),
    [],
  );
  return {
    bands,
    patches,
    strokes: laid.flatMap((l) => l.strokes),
    problems: [...laid.flatMap((l) => l.problems), ...gapProblem(ground, areas)],
  };
}

function layMowing(
  field: Field,
  mowing: Mowing,
  index: number,
  area: Region,
  inset: Feet,
  swath: SwathWidths,
  grass: RegionIndex,
): { readonly bands: LaidBand[]; readonly strokes: Stroke[]; readonly problems: Problem[] } {
  const family = layFamily(mowing, area, swath, field, inset);
  const bands: LaidBand[] = [];
  const strokes: Stroke[] = [];
  for (const band of family.bands) {
    const region = regionIntersect(band.strip, area);
    if (regionArea(region) < SLIVER_SQFT) continue;
    const number = bands.length + 1;
    const id = bandId(index, number);
    bands.push({ id, mowing: index + 1, number, region, lay: band.lay, way: band.way });
    for (const { line, closed } of lanesOf(band.lanes, region, field, grass, swath)) {
      strokes.push({
        patch: id,
        role: 'wide',
        phase: 'background',
        line,
        widthFt: swath.cutFt,
        group: index,
        mowing: index + 1,
        band: number,
        ...(closed ? { closed: true } : {}),
      });
    }
  }
  return {
    bands,
    strokes,
    problems: [...emptyProblem(mowing, bands), ...tightProblem(mowing, family.tight)],
  };
}

/** `band-07` of the first mowing, `band-2-07` of the second. */
const bandId = (mowing: number, number: number): string =>
  `band-${mowing === 0 ? '' : `${mowing + 1}-`}${String(number).padStart(2, '0')}`;

function lanesOf(
  lanes: Lanes,
  region: Region,
  field: Field,
  grass: RegionIndex,
  { swathFt, cutFt }: SwathWidths,
): CurveLane[] {
  if (lanes.kind === 'straight') {
    const spec = { frame: layFrame(lanes.bearingDeg), middles: lanes.middles, swathFt, cutFt };
    return layLanes(region, field.outfieldGrass, spec).map((line) => ({ line, closed: false }));
  }
  return lanes.lines.flatMap((line) =>
    curveLanes(line, lanes.closed, region, grass, { swathFt, cutFt }),
  );
}

/** The patches once a mowing is laid over those `under` it. */
function stack(
  under: readonly PatternPatch[],
  bands: readonly LaidBand[],
  area: Region,
  crosses: boolean,
): PatternPatch[] {
  const boxed = bands.map((band) => ({ band, box: boxOfRings(band.region) }));
  const left = under
    .map((patch) => ({ ...patch, region: subtractNear(patch.region, area) }))
    .filter((patch) => regionArea(patch.region) >= SLIVER_SQFT);
  const plain = boxed.map(({ band }) => ({ id: band.id, region: band.region, bands: [band] }));
  if (!crosses) return [...left, ...plain];
  const crossed = under.flatMap((patch) => crossPatch(patch, boxed));
  return [...left, ...crossed, ...bareParts(plain, under)];
}

function crossPatch(
  patch: PatternPatch,
  boxed: readonly { readonly band: LaidBand; readonly box: Box | null }[],
): PatternPatch[] {
  const own = boxOfRings(patch.region);
  return boxed.flatMap(({ band, box }) => {
    if (!own || !box || !boxesMeet(own, box)) return [];
    const region = intersectNear(band.region, patch.region);
    if (regionArea(region) < SLIVER_SQFT) return [];
    return [{ id: `${patch.id}x${band.id.slice(5)}`, region, bands: [...patch.bands, band] }];
  });
}

/** What a crossing mowing lays on ground that nothing was laid on before. */
function bareParts(plain: readonly PatternPatch[], under: readonly PatternPatch[]): PatternPatch[] {
  const covered = under.length > 0 ? regionUnionAll(under.map((p) => p.region)) : EMPTY_REGION;
  return plain
    .map((patch) => ({ ...patch, region: subtractNear(patch.region, covered) }))
    .filter((patch) => regionArea(patch.region) >= SLIVER_SQFT);
}

function emptyProblem(mowing: Mowing, bands: readonly LaidBand[]): Problem[] {
  if (bands.length > 0) return [];
  return [
    problem(
      'mowing-empty',
      mowing.where,
      'nothing of this mowing falls on the grass',
      'move it, widen its area, or take it out',
      'warning',
    ),
  ];
}

function tightProblem(mowing: Mowing, tight: number): Problem[] {
  if (tight === 0) return [];
  return [
    problem(
      'bend-tight',
      `${mowing.where}.guides`,
      `${tight} of its passes bend tighter than the mower turns and are left out`,
      'keep the middle for straight bands, or take a mower that turns tighter',
      'warning',
    ),
  ];
}

/** Ground in no mowing: more than this (square feet) is told. */
const GAP_SQFT = 4;

function gapProblem(ground: Region, areas: readonly Region[]): Problem[] {
  const open = areas.length > 0 ? regionSubtract(ground, regionUnionAll(areas)) : ground;
  const area = regionArea(open);
  if (area < GAP_SQFT) return [];
  return [
    problem(
      'pattern-gap',
      'pattern.mowings',
      `${Math.round(area)} sq ft of the grass are in none of the mowings`,
      'give a mowing without "over", which takes what the others leave, and put it first',
      'warning',
    ),
  ];
}
