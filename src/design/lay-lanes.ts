/**
 * Straight swaths over a region. Each lane runs as far as its share of the region reaches at either
 * of its sides, so that slanted ends leave no wedge: the far corner of the cut gets to the end, and
 * the over-run, up to the lane's width times the cosine of the angle to the edge, falls on ground
 * that is relaid later.
 */
import type { Feet } from '../base/units';
import type { Polyline } from '../geometry/polyline';
import { regionBox, type Region } from '../geometry/region';
import { linesOutOfFrame, regionIntoFrame, type LayFrame } from '../pattern/lay-frame';
import { intersectIntervals, scanEdges, scanLane, type Interval } from './scan-lane';

/** A gap shorter than this is mown through: lifting and lowering takes as long. */
export const JOIN_GAP: Feet = 6;
/** A swath shorter than this is not worth a turn; what it would cut is a corner tip. */
export const SHORTEST: Feet = 2;
/** Keeps a lane from touching the edge that it shares with the next band. */
export const SIDE_GUARD: Feet = 0.002;

export interface LaneSpec {
  readonly frame: LayFrame;
  /** Middles of the lanes across the frame. */
  readonly middles: readonly number[];
  readonly swathFt: Feet;
  readonly cutFt: Feet;
}

/** Lines on the field in the direction of the frame's bearing, lane by lane, home end first. */
export function layLanes(region: Region, grass: Region, spec: LaneSpec): Polyline[] {
  const wanted = scanEdges(regionIntoFrame(spec.frame, region));
  const ground = scanEdges(regionIntoFrame(spec.frame, grass));
  const lines: Polyline[] = [];
  for (const x of spec.middles) {
    const half = spec.swathFt / 2 - SIDE_GUARD;
    const reach = joinGaps(scanLane(wanted, x - half, x + half).touched);
    const cut = spec.cutFt / 2 - SIDE_GUARD;
    const free = scanLane(ground, x - cut, x + cut).inside;
    for (const piece of intersectIntervals(reach, free)) {
      if (piece.to - piece.from < SHORTEST) continue;
      lines.push([
        { x, y: piece.from },
        { x, y: piece.to },
      ]);
    }
  }
  return linesOutOfFrame(spec.frame, lines);
}

function joinGaps(intervals: readonly Interval[]): Interval[] {
  const out: Interval[] = [];
  for (const next of intervals) {
    const last = out[out.length - 1];
    if (last && next.from - last.to < JOIN_GAP) out[out.length - 1] = { ...last, to: next.to };
    else out.push(next);
  }
  return out;
}

/** Lane middles filling fromX…toX exactly, k of them at swath spacing. */
export function bandMiddles(fromX: Feet, passes: number, swathFt: Feet): number[] {
  return Array.from({ length: passes }, (_, i) => fromX + (i + 0.5) * swathFt);
}

/**
 * Lane middles over the whole width of a region: the outer cuts reach `over` beyond its sides and
 * the rest stand evenly between, never farther apart than a swath.
 */
export function evenMiddles(
  frame: LayFrame,
  region: Region,
  swathFt: Feet,
  cutFt: Feet,
  over: Feet,
): number[] {
  const box = regionBox(regionIntoFrame(frame, region));
  if (!box) return [];
  const room = box.maxX - box.minX + 2 * over - cutFt;
  if (room <= 0) return [(box.minX + box.maxX) / 2];
  const gaps = Math.ceil(room / swathFt);
  const first = box.minX - over + cutFt / 2;
  return Array.from({ length: gaps + 1 }, (_, i) => first + (i * room) / gaps);
}
