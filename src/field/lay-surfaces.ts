/**
 * The ground cut into surfaces. Every boundary is written once, as true lines and arcs, and shared
 * by the surfaces on its two sides, so that their polygons fit without gap or overlap.
 */
import { invariant } from '../base/result';
import {
  arcBetween,
  lineSegment,
  pathFlatten,
  pathReverse,
  pathSignedArea,
  segmentEnd,
  segmentStart,
  type Path,
} from '../geometry/arc';
import type { Point } from '../geometry/point';
import { regionFrom, type Region } from '../geometry/region';
import { alongToCircle, foulPoint, type Side } from './foul-lines';
import type { Bases, FieldSpec, Surface, SurfaceKind } from './model';
import { moundCentre, placeBases, skinArcCentre } from './place-bases';
import { BASEBALL_90 } from './rulebook/baseball-90';

/** Fence and track edge, right pole to left pole. */
export interface FenceEdges {
  readonly fence: Path;
  readonly trackEdge: Path;
}

const HOME: Point = { x: 0, y: 0 };
const HALF_PATH = BASEBALL_90.basePathHalfFt.value;
const HOME_RADIUS = BASEBALL_90.homeCircleRadiusFt.value;
const CUT_RADIUS = BASEBALL_90.baseCutRadiusFt.value;

/** All surfaces of a checked field; polygons within `FLATTEN`, areas from the paths. */
export function laySurfaces(spec: FieldSpec, edges: FenceEdges): Surface[] {
  const grass = infieldGrassPath(placeBases());
  const skin = skinArcs(spec);
  const mound = circlePath(moundCentre(), BASEBALL_90.moundRadiusFt.value);
  const home = homeCirclePath(grass);
  const surfaces = [
    surface('outfield-grass', 'Outfield grass', [outfieldPath(edges.trackEdge, skin)]),
    surface('infield-grass', 'Infield grass', [grass, pathReverse(mound)]),
    surface('skin', 'Skin', [skinPath(grass, skin)]),
    surface('mound', 'Mound', [mound]),
    surface('home-circle', 'Home circle', [home]),
    surface('foul-grass', 'Foul grass', [foulPath(spec, edges.fence, skin)]),
  ];
  if (spec.trackWidthFt === 0) return surfaces;
  return [...surfaces, surface('warning-track', 'Warning track', [trackPath(edges)])];
}

/** Everything inside fence, side fences and backstop. */
export function groundPath(spec: FieldSpec, fence: Path): Path {
  const left = lineSegment(pathEnd(fence), taperCorner(spec, fence, 'left'));
  const right = lineSegment(taperCorner(spec, fence, 'right'), pathStart(fence));
  return [...fence, left, ...backstop(spec, left.to, right.from), right];
}

/** Fair ground out to the fence: foul line, fence, foul line. */
export const fairPath = (fence: Path): Path => [
  lineSegment(HOME, pathStart(fence)),
  ...fence,
  lineSegment(pathEnd(fence), HOME),
];

/** Closed paths as polygons, arcs within `FLATTEN`. */
export const pathRegion = (paths: readonly Path[]): Region =>
  regionFrom(paths.map((path) => pathFlatten(path, true)));

function surface(kind: SurfaceKind, name: string, boundary: readonly Path[]): Surface {
  const areaSqFt = boundary.reduce((sum, path) => sum + pathSignedArea(path), 0);
  return { id: kind, kind, name, boundary, region: pathRegion(boundary), areaSqFt };
}

const pathStart = (path: Path): Point => segmentStart(path[0]!);
const pathEnd = (path: Path): Point => segmentEnd(path[path.length - 1]!);

/** A full circle as two half turns: a closed path with two distinct ends. */
function circlePath(centre: Point, radius: number): Path {
  const right = { x: centre.x + radius, y: centre.y };
  const left = { x: centre.x - radius, y: centre.y };
  return [arcBetween(centre, right, left, 1), arcBetween(centre, left, right, 1)];
}

/** Where the foul strip's outer edge leaves the home circle, or the skin's arc. */
const stripHome = (side: Side): Point => leaveCircle(side, HOME, HOME_RADIUS, HALF_PATH);

function leaveCircle(side: Side, centre: Point, radius: number, outward: number): Point {
  const along = alongToCircle(side, centre, radius, outward);
  invariant(along !== null, 'a foul strip starts inside the circles that it leaves');
  return foulPoint(side, along, outward);
}

/**
 * The grass square, a base path inside the bases' square, with round cut-outs about the four
 * corners. Starts and ends at the home circle: right edge, first, second, third, left edge, and the
 * home circle's arc last.
 */
function infieldGrassPath(bases: Bases): Path {
  const corners = [bases.home, bases.first, bases.second, bases.third];
  const radii = [HOME_RADIUS, CUT_RADIUS, CUT_RADIUS, CUT_RADIUS];
  const edges = corners.map((from, i) => {
    const to = corners[(i + 1) % 4]!;
    return grassEdge(from, to, radii[i]!, radii[(i + 1) % 4]!);
  });
  return edges.flatMap((edge, i) => {
    const next = edges[(i + 1) % 4]!;
    return [edge, arcBetween(corners[(i + 1) % 4]!, edge.to, next.from, -1)];
  });
}

/** The grass line beside one base line, between the cut-outs of its two ends. */
function grassEdge(from: Point, to: Point, fromRadius: number, toRadius: number) {
  const side = BASEBALL_90.baseLineFt.value;
  const u = { x: (to.x - from.x) / side, y: (to.y - from.y) / side };
  const at = (along: number): Point => ({
    x: from.x + u.x * along - u.y * HALF_PATH,
    y: from.y + u.y * along + u.x * HALF_PATH,
  });
  const start = Math.sqrt(fromRadius ** 2 - HALF_PATH ** 2);
  const end = side - Math.sqrt(toRadius ** 2 - HALF_PATH ** 2);
  return lineSegment(at(start), at(end));
}

/** The skin's arc in three pieces: foul strip, fair ground, foul strip; right to left. */
function skinArcs(spec: FieldSpec) {
  const centre = skinArcCentre(spec);
  const at = (side: Side, outward: number) => leaveCircle(side, centre, spec.skinRadiusFt, outward);
  const [a, b, c, d] = [
    at('right', HALF_PATH),
    at('right', 0),
    at('left', 0),
    at('left', HALF_PATH),
  ];
  return {
    right: arcBetween(centre, a, b, 1),
    fair: arcBetween(centre, b, c, 1),
    left: arcBetween(centre, c, d, 1),
  };
}

type SkinArcs = ReturnType<typeof skinArcs>;

/** Out along the right strip, round the arc, home along the left strip, back round the grass. */
function skinPath(grass: Path, skin: SkinArcs): Path {
  const homeRight = pathStart(grass);
  const homeLeft = segmentStart(grass[grass.length - 1]!);
  return [
    lineSegment(stripHome('right'), segmentStart(skin.right)),
    skin.right,
    skin.fair,
    skin.left,
    lineSegment(segmentEnd(skin.left), stripHome('left')),
    arcBetween(HOME, stripHome('left'), homeLeft, -1),
    ...pathReverse(grass.slice(0, -1)),
    arcBetween(HOME, homeRight, stripHome('right'), -1),
  ];
}

/** The home circle, cut where skin, infield grass and foul grass meet it. */
function homeCirclePath(grass: Path): Path {
  const homeRight = pathStart(grass);
  const homeLeft = segmentStart(grass[grass.length - 1]!);
  const stops = [stripHome('right'), homeRight, homeLeft, stripHome('left')];
  return stops.map((from, i) => arcBetween(HOME, from, stops[(i + 1) % stops.length]!, 1));
}

function outfieldPath(trackEdge: Path, skin: SkinArcs): Path {
  return [
    lineSegment(segmentStart(skin.fair), pathStart(trackEdge)),
    ...trackEdge,
    lineSegment(pathEnd(trackEdge), segmentEnd(skin.fair)),
    ...pathReverse([skin.fair]),
  ];
}

function trackPath(edges: FenceEdges): Path {
  const { fence, trackEdge } = edges;
  return [
    lineSegment(pathStart(trackEdge), pathStart(fence)),
    ...fence,
    lineSegment(pathEnd(fence), pathEnd(trackEdge)),
    ...pathReverse(trackEdge),
  ];
}

/** From the left pole round the backstop to the right pole, and home along lines and strips. */
function foulPath(spec: FieldSpec, fence: Path, skin: SkinArcs): Path {
  const left = taperCorner(spec, fence, 'left');
  const right = taperCorner(spec, fence, 'right');
  return [
    lineSegment(pathEnd(fence), left),
    ...backstop(spec, left, right),
    lineSegment(right, pathStart(fence)),
    lineSegment(pathStart(fence), segmentEnd(skin.right)),
    ...pathReverse([skin.right]),
    lineSegment(segmentStart(skin.right), stripHome('right')),
    arcBetween(HOME, stripHome('right'), stripHome('left'), -1),
    lineSegment(stripHome('left'), segmentEnd(skin.left)),
    ...pathReverse([skin.left]),
    lineSegment(segmentStart(skin.left), pathEnd(fence)),
  ];
}

/** Side fence, backstop about home at the same distance, side fence. */
function backstop(spec: FieldSpec, left: Point, right: Point): Path {
  const behindLeft = foulPoint('left', 0, spec.foulWidthFt);
  const behindRight = foulPoint('right', 0, spec.foulWidthFt);
  return [
    lineSegment(left, behindLeft),
    arcBetween(HOME, behindLeft, behindRight, 1),
    lineSegment(behindRight, right),
  ];
}

/** Where the side fence stops running beside the foul line and closes in on the pole. */
function taperCorner(spec: FieldSpec, fence: Path, side: Side): Point {
  const pole = side === 'right' ? pathStart(fence) : pathEnd(fence);
  const along = Math.hypot(pole.x, pole.y) * BASEBALL_90.taperStart.value;
  return foulPoint(side, along, spec.foulWidthFt);
}
