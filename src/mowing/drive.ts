/**
 * Driven paths: straights and arcs of the middle of the cutting line, forward or backing. Feet and
 * radians; headings counter-clockwise from +x. A backing stretch keeps the machine's heading.
 */
import { angleNormalise } from '../geometry/angle';
import type { Point } from '../geometry/point';
import { SAME_ANGLE, SAME_POINT } from '../geometry/tolerance';

/** Where the middle of the cutting line is, and which way the machine faces. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** Constant steering: `curvature` 1/ft, left positive; `gear` −1 backs up. */
export interface Stretch {
  readonly curvature: number;
  readonly lengthFt: number;
  readonly gear: 1 | -1;
}

export interface Drive {
  readonly start: Pose;
  readonly stretches: readonly Stretch[];
}

/** A straight of `lengthFt`. */
export const straight = (lengthFt: number, gear: 1 | -1 = 1): Stretch => ({
  curvature: 0,
  lengthFt,
  gear,
});

/** The pose `s` feet along a stretch that begins at `from`. */
export function poseAlong(from: Pose, stretch: Stretch, s: number): Pose {
  const moved = stretch.gear * s;
  const k = stretch.curvature;
  const h = from.heading;
  if (k === 0) {
    return { x: from.x + moved * Math.cos(h), y: from.y + moved * Math.sin(h), heading: h };
  }
  const turned = h + k * moved;
  return {
    x: from.x + (Math.sin(turned) - Math.sin(h)) / k,
    y: from.y - (Math.cos(turned) - Math.cos(h)) / k,
    heading: turned,
  };
}

/** The pose moved `by` feet straight along its heading (negative: back). */
export const poseShift = (pose: Pose, by: number): Pose => ({
  x: pose.x + by * Math.cos(pose.heading),
  y: pose.y + by * Math.sin(pose.heading),
  heading: pose.heading,
});

/** Where the drive ends, and which way the machine then faces. */
export const driveEnd = (drive: Drive): Pose =>
  drive.stretches.reduce((pose, s) => poseAlong(pose, s, s.lengthFt), drive.start);

/** How often the machine changes between forward and backing, a forward gear before and after. */
export function gearChanges(stretches: readonly Stretch[]): number {
  let changes = 0;
  let gear = 1;
  for (const s of stretches) {
    if (s.gear !== gear) changes++;
    gear = s.gear;
  }
  return gear === 1 ? changes : changes + 1;
}

/** Chords of a sampled arc: no longer than this, feet, and no more turn than `CHORD_TURN`. */
const CHORD_FT = 0.5;
const CHORD_TURN = Math.PI / 12;

/** Points after the stretch's start, its end included; a straight gives its end only. */
export function stretchPoints(from: Pose, stretch: Stretch): Point[] {
  const turn = Math.abs(stretch.curvature) * stretch.lengthFt;
  const pieces =
    stretch.curvature === 0
      ? 1
      : Math.max(1, Math.ceil(stretch.lengthFt / CHORD_FT), Math.ceil(turn / CHORD_TURN));
  const out: Point[] = [];
  for (let i = 1; i <= pieces; i++) {
    const p = poseAlong(from, stretch, (stretch.lengthFt * i) / pieces);
    out.push({ x: p.x, y: p.y });
  }
  return out;
}

/** Points of a whole drive, both ends included. */
export function drivePoints({ start, stretches }: Drive): Point[] {
  const points: Point[] = [{ x: start.x, y: start.y }];
  let from = start;
  for (const s of stretches) {
    points.push(...stretchPoints(from, s));
    from = poseAlong(from, s, s.lengthFt);
  }
  return points;
}

/** The turn from heading `a` to heading `b` going `sense` (+1 left), in [0, 2π), rounding snapped. */
export function turnBetween(a: number, b: number, sense: 1 | -1): number {
  const turn = angleNormalise(sense * (b - a));
  return 2 * Math.PI - turn < SAME_ANGLE ? 0 : turn;
}

/** The stretches worth driving: those longer than a point. */
export const keepLong = (stretches: readonly Stretch[]): Stretch[] =>
  stretches.filter((s) => s.lengthFt > SAME_POINT);
