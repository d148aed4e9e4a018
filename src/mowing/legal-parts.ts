/** The parts of a pass line along which the body stays on drivable ground. */
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import { polylineLength, type Polyline } from '../geometry/polyline';
import { SAME_POINT } from '../geometry/tolerance';
import type { Pose } from './drive';
import { bodyFits, bodyReach, clearanceAt, type Body, type DriveGround } from './drive-ground';

/** Spacing of the tests along a pass, feet: a trimmed end is true to this. */
const STEP = 0.25;
/** A part shorter than this, feet, is not worth lowering the reels for. */
const SHORTEST_PART = 2;

/** Pose at the start or the end of a line, facing the way it is driven. */
export function linePose(line: Polyline, end: 'start' | 'end'): Pose {
  const last = line.length - 1;
  const [a, b] = end === 'start' ? [line[0]!, line[1]!] : [line[last - 1]!, line[last]!];
  const at = end === 'start' ? a : b;
  return { x: at.x, y: at.y, heading: Math.atan2(b.y - a.y, b.x - a.x) };
}

interface Part {
  readonly points: Point[];
  /** The last point lies inside a straight piece and may give way to the next one on it. */
  loose: boolean;
}

/** The line itself when the body fits all along; otherwise the parts where it does (maybe none). */
export function legalParts(ground: DriveGround, body: Body, line: Polyline): Polyline[] {
  const clean = line.filter((p, i) => i === 0 || pointDistance(line[i - 1]!, p) > SAME_POINT);
  const parts: Part[] = [];
  let open: Part | null = null;
  for (let i = 1; i < clean.length; i++) {
    for (const step of stepsOf(clean[i - 1]!, clean[i]!)) {
      if (!standsFree(ground, body, step.pose)) open = null;
      else if (open) extendPart(open, step);
      else parts.push((open = { points: [step.pose], loose: false }));
    }
  }
  return parts
    .map((part) => part.points.map((p) => ({ x: p.x, y: p.y })))
    .filter((points) => points.length > 1 && isWorth(points, clean));
}

const isWorth = (points: Polyline, whole: Polyline): boolean =>
  polylineLength(points) >= Math.min(SHORTEST_PART, polylineLength(whole) / 2);

interface Step {
  readonly pose: Pose;
  readonly corner: boolean;
}

function stepsOf(a: Point, b: Point): Step[] {
  const heading = Math.atan2(b.y - a.y, b.x - a.x);
  const count = Math.max(1, Math.ceil(pointDistance(a, b) / STEP));
  return Array.from({ length: count + 1 }, (_, k) => {
    const p = k === count ? b : pointLerp(a, b, k / count);
    return { pose: { x: p.x, y: p.y, heading }, corner: k === 0 || k === count };
  });
}

function standsFree(ground: DriveGround, body: Body, pose: Pose): boolean {
  return clearanceAt(ground, pose) >= bodyReach(body) || bodyFits(ground, body, pose);
}

function extendPart(part: Part, step: Step): void {
  const last = part.points[part.points.length - 1]!;
  if (pointDistance(last, step.pose) <= SAME_POINT) return;
  if (part.loose) part.points.pop();
  part.points.push(step.pose);
  part.loose = !step.corner;
}
