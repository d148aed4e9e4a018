/**
 * The graphic as a narrow tool mows it: fill along the lay first, then the outline, which relays the
 * fill's ends and leaves a clean edge. Patches are what the last swath over a place lays; a part that
 * no swath reaches stays with the fill.
 */
import type { Feet } from '../base/units';
import { bearingDifference } from '../geometry/angle';
import { polylineBox, type Polyline } from '../geometry/polyline';
import {
  lineBuffer,
  regionArea,
  regionBox,
  regionIntersect,
  regionOffset,
  regionSimplify,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../geometry/region';
import { vectorBearing } from '../geometry/angle';
import { pointSubtract } from '../geometry/point';
import { boxesMeet } from '../geometry/box';
import { intersectNear } from './near-box';
import { openGrid } from './cover-grid';
import { fillStrokes, LANE_STEPS } from './fill-strokes';
import { layFrame, linesOutOfFrame, regionIntoFrame } from '../pattern/lay-frame';
import type { Stroke } from './model';
import { outlineStrokes, type NarrowCut } from './outline-strokes';

/** A part of the graphic with one lay. */
export interface GraphicPart {
  readonly id: string;
  readonly region: Region;
  /** Where cuts may reach: the part grown by the tolerance, not into a neighbouring band. */
  readonly allowed: Region;
  readonly bearingDeg: number;
}

export interface GraphicPatch {
  readonly id: string;
  readonly region: Region;
  /** The fill's lay, or the line that an outline patch follows. */
  readonly bearingDeg: number;
  readonly guide: Polyline | null;
}

export interface LaidGraphic {
  readonly patches: readonly GraphicPatch[];
  readonly strokes: readonly Stroke[];
}

const CELL_ALONG: Feet = 0.2;
const SMOOTH: Feet = 0.02;

/** Patches and swaths of one part. */
export function layGraphicPart(part: GraphicPart, cut: NarrowCut): LaidGraphic {
  const frame = layFrame(part.bearingDeg);
  const target = regionIntoFrame(frame, regionSimplify(part.region, SMOOTH));
  const allowed = regionIntoFrame(frame, regionSimplify(part.allowed, SMOOTH / 2));
  const grid = openGrid(target, cut.swathFt / LANE_STEPS, CELL_ALONG);
  const outline = linesOutOfFrame(frame, outlineStrokes(target, allowed, grid, cut));
  const fill = linesOutOfFrame(frame, fillStrokes(allowed, grid, cut));
  const sweeps = outline.map((line) => lineBuffer(line, cut.cutFt / 2, 'butt'));
  const groups = groupOverlaps(outline, sweeps);
  const shares = shareOutline(part.region, sweeps, groups);
  const id = (i: number) => `${part.id}-outline-${String(i + 1).padStart(2, '0')}`;
  const kept = outline.map((line, i) => ({ line, i, region: shares.regions[i]! }));
  const patches = kept
    .filter((k) => k.region.length > 0)
    .map((k) => ({ id: id(k.i), region: k.region, bearingDeg: part.bearingDeg, guide: k.line }));
  const stroke = (patch: string, line: Polyline, group: number): Stroke => ({
    patch,
    role: 'narrow',
    phase: group === 0 ? 'graphic' : 'edge',
    line,
    widthFt: cut.cutFt,
    group,
  });
  return {
    patches: [
      { id: part.id, region: shares.rest, bearingDeg: part.bearingDeg, guide: null },
      ...patches,
    ],
    strokes: [
      ...fill.map((line) => stroke(part.id, line, 0)),
      ...kept
        .filter((k) => k.region.length > 0)
        .map((k) => stroke(id(k.i), k.line, 1 + groups[k.i]!)),
    ],
  };
}

/** Swaths that lie over each other by more than this (square feet) must be mown in a fixed order. */
const OVERLAP = 0.4;

/** Groups (0, 1 …) so that swaths lying well over each other at an angle are in different ones. */
function groupOverlaps(lines: readonly Polyline[], sweeps: readonly Region[]): number[] {
  const groups: number[] = [];
  lines.forEach((line, i) => {
    const taken = new Set<number>();
    for (let j = 0; j < i; j++) {
      if (boxesApart(line, lines[j]!)) continue;
      if (bearingDifference(chordBearing(line), chordBearing(lines[j]!)) < ALIKE_DEG) continue;
      if (regionArea(regionIntersect(sweeps[i]!, sweeps[j]!)) > OVERLAP) taken.add(groups[j]!);
    }
    let group = 0;
    while (taken.has(group)) group++;
    groups.push(group);
  });
  return groups;
}

const ALIKE_DEG = 3;

const chordBearing = (line: Polyline): number =>
  vectorBearing(pointSubtract(line[line.length - 1]!, line[0]!));

function boxesApart(a: Polyline, b: Polyline): boolean {
  const p = polylineBox(a)!;
  const q = polylineBox(b)!;
  const gap = 2;
  return (
    p.maxX + gap < q.minX || q.maxX + gap < p.minX || p.maxY + gap < q.minY || q.maxY + gap < p.minY
  );
}

/** Each outline swath's own ground: what it lays inside the part and no later one relays. */
function shareOutline(
  region: Region,
  sweeps: readonly Region[],
  groups: readonly number[],
): { readonly regions: readonly Region[]; readonly rest: Region } {
  const boxes = sweeps.map((sweep) => regionBox(sweep));
  const later = (i: number, j: number) => groups[j]! - groups[i]! || j - i;
  const regions = sweeps.map((sweep, i) => {
    const over = sweeps.filter(
      (_, j) => later(i, j) > 0 && boxes[i] && boxes[j] && boxesMeet(boxes[i], boxes[j]),
    );
    const own = over.length > 0 ? regionSubtract(sweep, regionUnionAll(over)) : sweep;
    return intersectNear(own, region);
  });
  return { regions, rest: regionSubtract(region, regionUnionAll(sweeps)) };
}

/** The whole graphic as one part. */
export function wholeGraphic(graphic: Region, bearingDeg: number, cut: NarrowCut): GraphicPart {
  return { id: 'graphic', region: graphic, allowed: reachOf(graphic, cut), bearingDeg };
}

/** A hair inside the tolerance, so that rounding cannot take a cut beyond it. */
const REACH_GUARD: Feet = 0.01;

/** Everything within the tolerance of the graphic. */
export const reachOf = (graphic: Region, cut: NarrowCut): Region =>
  cut.toleranceFt > REACH_GUARD
    ? regionOffset(regionSimplify(graphic, SMOOTH), cut.toleranceFt - REACH_GUARD)
    : graphic;
