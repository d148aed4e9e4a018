/** The drawn outline from printed stakes: radii refitted to where the stakes really go. */
import { roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { angleNormalise } from '../geometry/angle';
import { pointDistance, type Point } from '../geometry/point';
import { bendArc, bendGap } from './bend';
import type { DraftContour, DraftPiece } from './draft-outline';
import {
  LEAST_BEND_OFFSET_FT,
  LONGEST_STEP_FT,
  LONGEST_SWEEP,
  LONGEST_SWING_FT,
  SHORTEST_SWING_FT,
} from './limits';
import type { OutlinePiece } from './model';
import { readingStepFt } from './ties';
import type { Trace } from './trace';

/** A stake that pieces are drawn from: as printed, or as planned. */
export interface JoinedStake {
  readonly id: string;
  readonly at: Point;
}

/** A piece as drawn, with the draft piece it came from. */
export interface JoinedPiece {
  readonly piece: OutlinePiece;
  readonly draft: DraftPiece;
  readonly from: Point;
  readonly to: Point;
  readonly pin: Point | null;
}

/** The contour's drawn pieces, or the draft piece that printed stakes cannot draw. */
export type JoinedContour =
  | { readonly ok: true; readonly pieces: readonly JoinedPiece[] }
  | { readonly ok: false; readonly failed: DraftPiece };

/** Joins printed stakes as the draft says, with radii as printed; fails on the first piece it cannot. */
export function joinContour(
  contour: DraftContour,
  printed: readonly (JoinedStake | undefined)[],
  system: LengthSystem,
): JoinedContour {
  const pieces: JoinedPiece[] = [];
  for (const draft of contour.pieces) {
    const joined = joinPiece(contour.trace, draft, printed, system);
    if (!joined) return { ok: false, failed: draft };
    pieces.push(joined);
  }
  return { ok: true, pieces };
}

function joinPiece(
  trace: Trace,
  draft: DraftPiece,
  printed: readonly (JoinedStake | undefined)[],
  system: LengthSystem,
): JoinedPiece | null {
  if (draft.kind === 'circle') return joinCircle(trace, draft, printed[draft.pin], system);
  const from = printed[draft.from];
  const to = printed[draft.to];
  if (!from || !to) return null;
  const ends = { draft, from: from.at, to: to.at };
  if (draft.kind === 'string') {
    return { ...ends, piece: { kind: 'string', from: from.id, to: to.id }, pin: null };
  }
  if (draft.kind === 'bend') {
    const offset = bendOffset(trace, draft, from.at, to.at, system);
    if (!offset) return null;
    const side = draft.offset > 0 ? 'R' : 'L';
    return { ...ends, piece: { kind: 'bend', from: from.id, to: to.id, offset, side }, pin: null };
  }
  const pin = printed[draft.pin];
  const radius = pin && swingRadius(trace, draft, from.at, to.at, pin.at, system);
  if (!pin || !radius) return null;
  const sweep = draft.sense > 0 ? 'ccw' : 'cw';
  return {
    ...ends,
    piece: { kind: 'swing', from: from.id, to: to.id, pin: pin.id, radius, sweep },
    pin: pin.at,
  };
}

/** Readings on either side of the planned offset that are tried. */
const OFFSET_TRIES = 6;

/** The printed offset that follows the art best between the printed stakes; null when none is fair. */
function bendOffset(
  trace: Trace,
  draft: DraftPiece & { readonly kind: 'bend' },
  from: Point,
  to: Point,
  system: LengthSystem,
): Reading | null {
  const h = pointDistance(from, to) / 2;
  const step = readingStepFt(system);
  const size = Math.abs(draft.offset);
  let best: Reading | null = null;
  let least = Infinity;
  for (let k = -OFFSET_TRIES; k <= OFFSET_TRIES; k++) {
    const reading = roundReading(size + k * step, system);
    if (reading.ft < LEAST_BEND_OFFSET_FT || reading.ft > h) continue;
    const gap = bendGap(trace, draft.link, from, to, Math.sign(draft.offset) * reading.ft);
    if (gap >= least) continue;
    least = gap;
    best = reading;
  }
  return best;
}

function joinCircle(
  trace: Trace,
  draft: DraftPiece & { readonly kind: 'circle' },
  pin: JoinedStake | undefined,
  system: LengthSystem,
): JoinedPiece | null {
  if (!pin) return null;
  const reach = spread(trace, 0, trace.count, pin.at);
  const radius = roundReading((reach.near + reach.far) / 2, system);
  if (radius.ft < SHORTEST_SWING_FT || radius.ft > LONGEST_SWING_FT) return null;
  const piece: OutlinePiece = { kind: 'circle', pin: pin.id, radius };
  return { piece, draft, from: pin.at, to: pin.at, pin: pin.at };
}

/** Nearest and farthest distance from `pin` to the trace's points from..to, ends left out. */
function spread(trace: Trace, from: number, to: number, pin: Point) {
  let near = Infinity;
  let far = 0;
  for (let i = from + 1; i < to; i++) {
    const k = i % trace.count;
    const d = Math.hypot(trace.x[k]! - pin.x, trace.y[k]! - pin.y);
    near = Math.min(near, d);
    far = Math.max(far, d);
  }
  return { near, far };
}

/**
 * The printed radius midway between the art's extremes as seen from the printed pin, kept within a
 * step of both printed ends; null when no radius is.
 */
function swingRadius(
  trace: Trace,
  draft: DraftPiece & { readonly kind: 'swing' },
  from: Point,
  to: Point,
  pin: Point,
  system: LengthSystem,
): Reading | null {
  const d1 = pointDistance(pin, from);
  const d2 = pointDistance(pin, to);
  const low = Math.max(d1, d2) - LONGEST_STEP_FT;
  const high = Math.min(d1, d2) + LONGEST_STEP_FT;
  if (low > high || sweepAngle(draft.sense, from, to, pin) > LONGEST_SWEEP) return null;
  const { near, far } = spread(trace, draft.link.from, draft.link.to, pin);
  const wanted = far > 0 ? (near + far) / 2 : (d1 + d2) / 2;
  return readingBetween(Math.min(high, Math.max(low, wanted)), low, high, system);
}

const sweepAngle = (sense: 1 | -1, from: Point, to: Point, pin: Point): number =>
  angleNormalise(
    sense * (Math.atan2(to.y - pin.y, to.x - pin.x) - Math.atan2(from.y - pin.y, from.x - pin.x)),
  );

/** The printed reading nearest to `wanted` that lies in the interval and is a fair radius. */
function readingBetween(
  wanted: number,
  low: number,
  high: number,
  system: LengthSystem,
): Reading | null {
  const step = readingStepFt(system);
  const fair = (r: Reading) =>
    r.ft >= low && r.ft <= high && r.ft >= SHORTEST_SWING_FT && r.ft <= LONGEST_SWING_FT;
  const near = [0, step, -step].map((by) => roundReading(wanted + by, system)).filter(fair);
  near.sort((a, b) => Math.abs(a.ft - wanted) - Math.abs(b.ft - wanted));
  return near[0] ?? null;
}

/** Points of one drawn piece, its last end left out. */
export function drawnPiece(joined: JoinedPiece, chordErrorFt: number): Point[] {
  const { piece, pin } = joined;
  if (piece.kind === 'bend') {
    const { centre, radius, startAngle, sweep } = bendArc(
      joined.from,
      joined.to,
      piece.offset.ft,
      piece.side,
    );
    return [
      joined.from,
      ...arcPoints(centre, radius, startAngle, sweep, chordErrorFt).slice(1, -1),
    ];
  }
  if (piece.kind === 'string' || !pin) return [joined.from];
  if (piece.kind === 'circle') {
    return arcPoints(pin, piece.radius.ft, 0, 2 * Math.PI, chordErrorFt).slice(0, -1);
  }
  const start = Math.atan2(joined.from.y - pin.y, joined.from.x - pin.x);
  const sense = piece.sweep === 'ccw' ? 1 : -1;
  const sweep = sweepAngle(sense, joined.from, joined.to, pin);
  return [joined.from, ...arcPoints(pin, piece.radius.ft, start, sense * sweep, chordErrorFt)];
}

function arcPoints(
  centre: Point,
  radius: number,
  start: number,
  sweep: number,
  chordErrorFt: number,
): Point[] {
  const step = 2 * Math.acos(Math.max(0, 1 - chordErrorFt / radius));
  const pieces = Math.max(2, Math.ceil(Math.abs(sweep) / step));
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const angle = start + (sweep * i) / pieces;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}
