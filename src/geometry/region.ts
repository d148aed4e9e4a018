/**
 * Regions: polygons with holes as a list of rings, filled even-odd. Every function here returns
 * clean regions: outer rings counter-clockwise, holes clockwise, no crossing, no slivers.
 * Booleans and offsets are Clipper2's (clipper2-ts); same unit in and out.
 */
import {
  ClipperD,
  ClipType,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  type PathsD,
} from 'clipper2-ts';
import { boxOfRings, type Box } from './box';
import type { Point } from './point';
import {
  polylineNearest,
  ringClean,
  ringContains,
  ringPerimeter,
  ringSignedArea,
  ringSimplify,
  type Polyline,
  type Ring,
} from './polyline';
import { BOOLEAN_DECIMALS, OFFSET_ARC, SLIVER_AREA } from './tolerance';

export type Region = readonly Ring[];

export const EMPTY_REGION: Region = [];

type Fill = 'even-odd' | 'non-zero';

function run(type: ClipType, subject: Region, clip: Region, fill: Fill): Region {
  const engine = new ClipperD(BOOLEAN_DECIMALS);
  engine.addSubjectPaths(toPaths(subject));
  if (clip.length > 0) engine.addClipPaths(toPaths(clip));
  const out: PathsD = [];
  engine.execute(type, fill === 'even-odd' ? FillRule.EvenOdd : FillRule.NonZero, out);
  return fromPaths(out);
}

const toPaths = (region: Region): PathsD =>
  region.map((ring) => ring.map((p) => ({ x: p.x, y: p.y })));

const fromPaths = (paths: PathsD): Region =>
  paths
    .map((path) => ringClean(path.map((p) => ({ x: p.x, y: p.y }))))
    .filter((ring) => ring.length > 2 && Math.abs(ringSignedArea(ring)) > SLIVER_AREA);

/** A clean region from any rings under a fill rule (crossings resolved, orientation set). */
export const regionFrom = (rings: Region, fill: Fill = 'even-odd'): Region =>
  run(ClipType.Union, rings, [], fill);

export const regionUnion = (a: Region, b: Region): Region =>
  run(ClipType.Union, regionFrom(a), regionFrom(b), 'non-zero');

/** The union of many regions in one sweep. */
export const regionUnionAll = (regions: readonly Region[]): Region =>
  run(
    ClipType.Union,
    regions.flatMap((r) => regionFrom(r)),
    [],
    'non-zero',
  );

export const regionIntersect = (a: Region, b: Region): Region =>
  a.length === 0 || b.length === 0 ? EMPTY_REGION : run(ClipType.Intersection, a, b, 'even-odd');

export const regionSubtract = (a: Region, b: Region): Region =>
  b.length === 0 ? regionFrom(a) : run(ClipType.Difference, a, b, 'even-odd');

export const regionXor = (a: Region, b: Region): Region => run(ClipType.Xor, a, b, 'even-odd');

export const regionArea = (region: Region): number =>
  Math.abs(region.reduce((n, ring) => n + ringSignedArea(ring), 0));

export const regionPerimeter = (region: Region): number =>
  region.reduce((n, ring) => n + ringPerimeter(ring), 0);

export const regionBox = (region: Region): Box | null => boxOfRings(region);

/** Even-odd over all rings. */
export function regionContains(region: Region, p: Point): boolean {
  let inside = false;
  for (const ring of region) if (ringContains(ring, p)) inside = !inside;
  return inside;
}

/** Distance from p to the region's edge (whichever side p is on). */
export function regionEdgeDistance(region: Region, p: Point): number {
  let best = Infinity;
  for (const ring of region) best = Math.min(best, polylineNearest(ring, p, true).distance);
  return best;
}

/**
 * The region grown (positive) or shrunk (negative) by `distance`, corners `round` or `mitre`. Large
 * insets are simplified first (Clipper's time grows with tiny edges), within a hundredth of the step.
 */
export function regionOffset(
  region: Region,
  distance: number,
  corners: 'round' | 'mitre' = 'round',
  arcTolerance = OFFSET_ARC,
): Region {
  if (region.length === 0) return EMPTY_REGION;
  const clean = regionFrom(region);
  if (distance === 0) return clean;
  const join = corners === 'round' ? JoinType.Round : JoinType.Miter;
  const paths = inflatePathsD(
    toPaths(clean),
    distance,
    join,
    EndType.Polygon,
    corners === 'round' ? 2 : 4,
    BOOLEAN_DECIMALS,
    arcTolerance,
  );
  return regionFrom(fromPaths(paths), 'non-zero');
}

/** A line of width `2·half` as a region. */
export function lineBuffer(
  line: Polyline,
  half: number,
  ends: 'butt' | 'round' | 'square',
  corners: 'round' | 'mitre' | 'bevel' = 'round',
  arcTolerance = OFFSET_ARC,
  mitreLimit = 4,
): Region {
  const end = ends === 'butt' ? EndType.Butt : ends === 'round' ? EndType.Round : EndType.Square;
  const join =
    corners === 'round' ? JoinType.Round : corners === 'mitre' ? JoinType.Miter : JoinType.Bevel;
  const paths = inflatePathsD(
    [line.map((p) => ({ x: p.x, y: p.y }))],
    half,
    join,
    end,
    mitreLimit,
    BOOLEAN_DECIMALS,
    arcTolerance,
  );
  return regionFrom(fromPaths(paths), 'non-zero');
}

/** The pieces of open lines inside a region, each in the direction of its line. */
export function clipLines(lines: readonly Polyline[], region: Region): Point[][] {
  if (region.length === 0) return [];
  const engine = new ClipperD(BOOLEAN_DECIMALS);
  engine.addOpenSubjectPaths(lines.map((line) => line.map((p) => ({ x: p.x, y: p.y }))));
  engine.addClipPaths(toPaths(region));
  const closed: PathsD = [];
  const open: PathsD = [];
  engine.execute(ClipType.Intersection, FillRule.EvenOdd, closed, open);
  return open.map((path) => path.map((p) => ({ x: p.x, y: p.y })));
}

export const regionSimplify = (region: Region, tolerance: number): Region =>
  regionFrom(region.map((ring) => ringSimplify(ring, tolerance)));

/** Separate parts: each outer ring with its holes. */
export function regionParts(region: Region): Region[] {
  const clean = regionFrom(region);
  const outers = clean.filter((ring) => ringSignedArea(ring) > 0);
  const holes = clean.filter((ring) => ringSignedArea(ring) <= 0);
  const parts = outers.map((ring) => [ring]);
  for (const hole of holes) {
    const at = hole[0]!;
    let owner = -1;
    let smallest = Infinity;
    outers.forEach((outer, i) => {
      const area = ringSignedArea(outer);
      if (area < smallest && ringContains(outer, at)) {
        smallest = area;
        owner = i;
      }
    });
    if (owner >= 0) parts[owner]!.push(hole);
  }
  return parts;
}

export const rectangle = (box: Box): Region => [
  [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ],
];
