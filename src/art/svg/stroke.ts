/**
 * Lines to areas (SVG 1.1, 11.4): the outline of the line is made in the drawing's own user space,
 * where its width is even, and then carried over by the transform, which may squeeze it.
 */
import { affineCompose, affineDeterminant, affineScale, type Affine } from '../../geometry/affine';
import { affineApply } from '../../geometry/affine';
import { arcPieces } from '../../geometry/arc';
import {
  pointAlong,
  pointDistance,
  pointSubtract,
  vectorUnit,
  type Point,
} from '../../geometry/point';
import { lineBuffer, regionFrom, regionUnionAll, type Region } from '../../geometry/region';
import { SINGULAR } from '../../geometry/tolerance';
import { ART_CHORD } from '../art-frame';
import { outlineMap, type Outline } from '../outline';
import { MAX_DASHES } from './limits';
import { cutDashes, trackLength, trackOf, type Track, type TrackPoint } from './track';

/** How a line is drawn, in user units. */
export interface Pen {
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
  readonly join: 'miter' | 'round' | 'bevel';
  readonly miterLimit: number;
  /** On and off lengths, even in number; empty for a solid line. */
  readonly dashes: readonly number[];
  readonly dashOffset: number;
}

export interface Stroked {
  readonly region: Region;
  /** Some line had dashes too many to cut, and was drawn solid. */
  readonly dashesDropped: boolean;
}

/** The area that `pen` paints along `outline`, mapped to the art frame by `map`. */
export function strokeOutline(outline: Outline, pen: Pen, map: Affine): Stroked {
  const k = largestStretch(map);
  const size = Math.abs(affineDeterminant(map));
  if (!(pen.width > 0) || size < SINGULAR || size < SINGULAR * k * k) {
    return { region: [], dashesDropped: false };
  }
  const scaled = outlineMap(outline, affineScale(k));
  const tracks = scaled.filter((sub) => sub.closed || sub.curves.length > 0);
  let dashesDropped = false;
  const pieces = tracks.flatMap((sub) => {
    const track = trackOf(sub, ART_CHORD);
    const cut = dashTrack(track, pen, k);
    dashesDropped ||= cut === null;
    return (cut ?? [track]).flatMap((t) => strokeTrack(t, (pen.width * k) / 2, pen));
  });
  const rest = affineCompose(map, affineScale(1 / k));
  const rings = regionUnionAll(pieces).map((ring) => ring.map((p) => affineApply(rest, p)));
  return { region: regionFrom(rings), dashesDropped };
}

/** The largest factor by which a map stretches any direction (its greater singular value). */
export function largestStretch(m: Affine): number {
  const sum = m.a * m.a + m.b * m.b + m.c * m.c + m.d * m.d;
  const det = affineDeterminant(m);
  return Math.sqrt((sum + Math.sqrt(Math.max(0, sum * sum - 4 * det * det))) / 2);
}

/** The dashes of a track; null when there are too many. */
function dashTrack(track: Track, pen: Pen, k: number): Track[] | null {
  const dashes = pen.dashes.map((d) => d * k);
  const cycle = dashes.reduce((n, d) => n + d, 0);
  if (cycle === 0 || track.points.length < 2) return [track];
  const count = (trackLength(track) / cycle) * (dashes.length / 2);
  return count > MAX_DASHES ? null : cutDashes(track, dashes, pen.dashOffset * k);
}

/** Areas that together make up a stroked track: runs between corners, joins and caps. */
function strokeTrack(track: Track, half: number, pen: Pen): Region[] {
  const points = track.points;
  if (trackLength(track) === 0) return dot(points[0]!.at, half, pen.cap);
  const runs = splitAtCorners(points);
  const out = runs.map((run) => lineBuffer(run, half, 'butt', 'round', ART_CHORD));
  const inner = track.closed ? points.slice(0, -1) : points.slice(1, -1);
  for (const p of inner) out.push(...joinAt(p, half, pen));
  if (track.closed) out.push(...seam(points[0]!, half));
  else out.push(...capAt(runs[0]![1]!, runs[0]![0]!, half, pen), ...lastCap(runs, half, pen));
  return out;
}

function lastCap(runs: readonly (readonly Point[])[], half: number, pen: Pen): Region[] {
  const run = runs[runs.length - 1]!;
  return capAt(run[run.length - 2]!, run[run.length - 1]!, half, pen);
}

function splitAtCorners(points: readonly TrackPoint[]): Point[][] {
  const runs: Point[][] = [[points[0]!.at]];
  points.slice(1).forEach((p, i) => {
    runs[runs.length - 1]!.push(p.at);
    if (p.corner && i < points.length - 2) runs.push([p.at]);
  });
  return runs;
}

/** Where a smooth closed line meets itself, its two square ends are covered by a disc. */
const seam = (p: TrackPoint, half: number): Region[] => (p.corner ? [] : [disc(p.at, half)]);

function joinAt(p: TrackPoint, half: number, pen: Pen): Region[] {
  if (!p.corner) return [];
  if (pen.join === 'round') return [disc(p.at, half)];
  const { into, out } = p.corner;
  // Mitre length over width is 1 / cos(half the turn); past the limit the corner is cut (bevel).
  const halfTurnCos = Math.sqrt(Math.max(0, (1 + into.x * out.x + into.y * out.y) / 2));
  const mitred = pen.join === 'miter' && halfTurnCos * pen.miterLimit >= 1;
  const reach = half * JOIN_OVERLAP;
  const elbow = [pointAlong(p.at, into, -reach), p.at, pointAlong(p.at, out, reach)];
  const corners = mitred ? 'mitre' : 'bevel';
  return [lineBuffer(elbow, half, 'butt', corners, ART_CHORD, 2 * pen.miterLimit + 2)];
}

/** How far a join reaches back into the lines that it joins, so that no hairline is left between. */
const JOIN_OVERLAP = 0.01;

/** The cap at `end` of a line that comes from `before`. */
function capAt(before: Point, end: Point, half: number, pen: Pen): Region[] {
  if (pen.cap === 'butt') return [];
  if (pen.cap === 'round') return [disc(end, half)];
  const along = vectorUnit(pointSubtract(end, before));
  if (!along) return [];
  const back = Math.min(half * JOIN_OVERLAP, pointDistance(before, end));
  const line = [pointAlong(end, along, -back), pointAlong(end, along, half)];
  return [lineBuffer(line, half, 'butt', 'bevel', ART_CHORD)];
}

/** A line of no length: a dot or a square, or nothing without caps (SVG 1.1, 11.4). */
function dot(at: Point, half: number, cap: Pen['cap']): Region[] {
  if (cap === 'butt') return [];
  if (cap === 'round') return [disc(at, half)];
  const line = [pointAlong(at, { x: 1, y: 0 }, -half), pointAlong(at, { x: 1, y: 0 }, half)];
  return [lineBuffer(line, half, 'butt', 'bevel', ART_CHORD)];
}

function disc(at: Point, radius: number): Region {
  const pieces = Math.max(8, arcPieces(radius, 2 * Math.PI, ART_CHORD));
  return [
    Array.from({ length: pieces }, (_, i) => {
      const angle = (2 * Math.PI * i) / pieces;
      return pointAlong(at, { x: Math.cos(angle), y: Math.sin(angle) }, radius);
    }),
  ];
}
