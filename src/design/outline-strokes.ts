/**
 * Swaths along the outline of a shape, just inside it. Each stretch is driven in the sense that goes
 * with the shape's lay, so that it shows with the rest; stretches nearly square to the lay are left
 * to the square ends of the fill.
 */
import type { Feet } from '../base/units';
import { boxGrow } from '../geometry/box';
import { pointAlong, pointDistance, type Point } from '../geometry/point';
import { polylineLength, polylineSimplify, type Polyline, type Ring } from '../geometry/polyline';
import { regionOffset, type Region } from '../geometry/region';
import { endDirection } from '../geometry/parallel-line';
import { cutInside } from './trim-ends';
import { clipToBox } from './near-box';
import { markCut, openUnder, type CoverGrid } from './cover-grid';

export interface NarrowCut {
  readonly swathFt: Feet;
  readonly cutFt: Feet;
  readonly toleranceFt: Feet;
}

/** Nearer to square than this (22°) to the lay, a stretch is cut by fill ends instead. */
const SQUARE = Math.cos((68 * Math.PI) / 180);
/** A sharper bend (40°) ends a stretch: a square-ended cut cannot follow it. */
const SHARP = (40 * Math.PI) / 180;
/** A stretch that cuts less than this (square feet) is not worth its turn. */
const WORTH = 0.5;
const SHORTEST: Feet = 1.5;
const SMOOTH: Feet = 0.02;
const EXTEND_STEP: Feet = 0.1;

/**
 * Lines inside `target` in its lay frame (y is the lay), longest first, each worth its turn; what they
 * cut is marked in the grid. `allowed` is where a cut may reach.
 */
export function outlineStrokes(
  target: Region,
  allowed: Region,
  grid: CoverGrid,
  cut: NarrowCut,
): Polyline[] {
  const outward = Math.min(cut.toleranceFt, (cut.cutFt - cut.swathFt) / 2);
  const flush = stretchesAt(target, cut.cutFt / 2 - outward);
  const thin = stretchesAt(target, cut.cutFt / 2 - cut.toleranceFt * THIN_SHARE);
  const byLength = (list: Polyline[]) =>
    list
      .map((line) => growEnds(line, allowed, cut.cutFt / 2))
      .sort((a, b) => polylineLength(b) - polylineLength(a));
  return [...byLength(flush), ...byLength(thin)].filter((line) => takeIfWorth(line, grid, cut));
}

/** How much of the tolerance a stroke thinner than the tool may use on each side. */
const THIN_SHARE = 0.95;
const END_GUARD: Feet = 0.01;

function takeIfWorth(line: Polyline, grid: CoverGrid, cut: NarrowCut): boolean {
  if (polylineLength(line) < SHORTEST) return false;
  if (openUnder(grid, line, cut.cutFt / 2) < WORTH) return false;
  markCut(grid, line, cut.cutFt / 2);
  return true;
}

function stretchesAt(target: Region, inset: Feet): Polyline[] {
  return regionOffset(target, -inset).flatMap((ring) => ringStretches(ring));
}

/** The ring's stretches that go with the lay (+1) or against it (−1, turned round). */
function ringStretches(ring: Ring): Polyline[] {
  const loop = polylineSimplify([...ring, ring[0]!], SMOOTH);
  const pieces = loop.slice(1).map((b, i) => piece(loop[i]!, b));
  if (pieces.length < 2) return [];
  const start = pieces.findIndex((p, i) =>
    breaks(pieces[(i + pieces.length - 1) % pieces.length]!, p),
  );
  const out: Point[][] = [];
  const first = Math.max(0, start);
  let before: Piece | null = null;
  for (let k = 0; k < pieces.length; k++) {
    const next = pieces[(first + k) % pieces.length]!;
    if (next.sense !== 0) {
      if (!before || breaks(before, next)) out.push([next.a]);
      out[out.length - 1]!.push(next.b);
    }
    before = next;
  }
  return out.map((line) => (line[line.length - 1]!.y < line[0]!.y ? line.reverse() : line));
}

interface Piece {
  readonly a: Point;
  readonly b: Point;
  readonly angle: number;
  readonly sense: -1 | 0 | 1;
}

function piece(a: Point, b: Point): Piece {
  const along = (b.y - a.y) / (pointDistance(a, b) || 1);
  const sense = Math.abs(along) < SQUARE ? 0 : along > 0 ? 1 : -1;
  return { a, b, angle: Math.atan2(b.y - a.y, b.x - a.x), sense };
}

function breaks(a: Piece, b: Piece): boolean {
  const turn = Math.abs(Math.atan2(Math.sin(b.angle - a.angle), Math.cos(b.angle - a.angle)));
  return a.sense !== b.sense || turn > SHARP;
}

/** Straight on at both ends while the square cut stays where it may reach. */
function growEnds(line: Polyline, allowed: Region, half: Feet): Polyline {
  const grow = (tip: Point, direction: Point): Point[] => {
    const most = half + EXTEND_STEP;
    const around = clipToBox(
      allowed,
      boxGrow({ minX: tip.x, minY: tip.y, maxX: tip.x, maxY: tip.y }, 4 * half),
    );
    const test = cutInside(around, half - END_GUARD);
    let reach = 0;
    while (reach < most && test(pointAlong(tip, direction, reach + EXTEND_STEP), direction)) {
      reach += EXTEND_STEP;
    }
    return reach > 0 ? [pointAlong(tip, direction, reach)] : [];
  };
  return [
    ...grow(line[0]!, endDirection(line, 'start')),
    ...line,
    ...grow(line[line.length - 1]!, endDirection(line, 'end')),
  ];
}
