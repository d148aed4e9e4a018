/**
 * Points set square to a short line between two points already set: at a distance along it, or from
 * its middle. Positions in feet, errors in inches; every error of the two ends is carried on.
 */
import type { Point } from '../geometry/point';
import { tapeSigmaIn, TAPE_CAUSES, type PrecisePoint, type TapePrecision } from './precise-point';

/** How a short offset is measured: one tape for all of it, and one sigma of its squareness, radians. */
export interface OffsetTools {
  readonly tape: TapePrecision;
  readonly squareSigma: number;
}

interface Frame {
  readonly a: PrecisePoint;
  readonly b: PrecisePoint;
  readonly length: number;
  /** From a to b, and its left. */
  readonly e: Point;
  readonly n: Point;
}

function frameOf(a: PrecisePoint, b: PrecisePoint): Frame | null {
  const dx = b.at.x - a.at.x;
  const dy = b.at.y - a.at.y;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return null;
  const e = { x: dx / length, y: dy / length };
  return { a, b, length, e, n: { x: -e.y, y: e.x } };
}

/**
 * `along` feet from a toward b, then `offset` feet square to that line, left positive. With the line
 * turned by t = n·(dB − dA)/length it moves by dA + t·(along·n − offset·e), and by one reading along,
 * one across, and offset times the squareness along. Null when a and b are one point.
 */
export function pointByOffset(
  a: PrecisePoint,
  b: PrecisePoint,
  along: number,
  offset: number,
  tools: OffsetTools,
): PrecisePoint | null {
  const frame = frameOf(a, b);
  if (!frame) return null;
  return squareOff(frame, {
    along,
    offset,
    tools,
    share: 0,
    scaled: along,
    alongSigmaIn: tapeSigmaIn(tools.tape, Math.abs(along)),
  });
}

/**
 * From the middle of the line between a and b, `offset` feet square to it, left positive. The chord is
 * read and half of it pulled back, so that the tape's scale cancels along it. Null when a and b are
 * one point.
 */
export function pointByChord(
  a: PrecisePoint,
  b: PrecisePoint,
  offset: number,
  tools: OffsetTools,
): PrecisePoint | null {
  const frame = frameOf(a, b);
  if (!frame) return null;
  const { length } = frame;
  return squareOff(frame, {
    along: length / 2,
    offset,
    tools,
    share: 1 / 2,
    scaled: 0,
    alongSigmaIn: halvingSigmaIn(tools.tape, length),
  });
}

/** One sigma, inches, of the middle of a chord: half the error of its reading, and that of the half. */
export const halvingSigmaIn = (tape: TapePrecision, length: number): number =>
  Math.hypot(tapeSigmaIn(tape, length) / 2, tapeSigmaIn(tape, length / 2));

interface Offset {
  readonly along: number;
  readonly offset: number;
  readonly tools: OffsetTools;
  /** How much of b's error along the line the foot takes; the rest is a's. */
  readonly share: number;
  /** Feet along the line that stretch with the tape. */
  readonly scaled: number;
  readonly alongSigmaIn: number;
}

function squareOff(frame: Frame, by: Offset): PrecisePoint {
  const { a, b, e, n } = frame;
  const { along, offset, tools } = by;
  const gx: number[] = [];
  const gy: number[] = [];
  const causes = Math.max(a.gx.length, b.gx.length, TAPE_CAUSES);
  for (let i = 0; i < causes; i++) {
    const moved = carried(frame, by, i);
    gx.push(moved.x);
    gy.push(moved.y);
  }
  const skew = 12 * offset * tools.squareSigma;
  const across = tapeSigmaIn(tools.tape, Math.abs(offset));
  return {
    at: {
      x: a.at.x + e.x * along + n.x * offset,
      y: a.at.y + e.y * along + n.y * offset,
    },
    gx,
    gy,
    own: [scale(e, by.alongSigmaIn), scale(n, across), scale(e, skew)],
  };
}

/** How the point answers to shared cause `i`. */
function carried({ a, b, e, n, length }: Frame, by: Offset, i: number): Point {
  const [ax, ay] = [a.gx[i] ?? 0, a.gy[i] ?? 0];
  const [bx, by_] = [b.gx[i] ?? 0, b.gy[i] ?? 0];
  const turn = (n.x * (bx - ax) + n.y * (by_ - ay)) / length;
  const { tape } = by.tools;
  const stretch = i === (tape.scaleCause ?? 0) ? 12 * (tape.scaleSigma ?? 0) : 0;
  const alongA = e.x * ax + e.y * ay;
  const alongB = e.x * bx + e.y * by_;
  const u = alongA + by.share * (alongB - alongA) - turn * by.offset + stretch * by.scaled;
  const v = n.x * ax + n.y * ay + turn * by.along + stretch * by.offset;
  return { x: e.x * u + n.x * v, y: e.y * u + n.y * v };
}

const scale = (p: Point, k: number): Point => ({ x: p.x * k, y: p.y * k });
