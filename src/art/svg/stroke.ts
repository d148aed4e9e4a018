/**
 * Lines to areas (SVG 1.1, 11.4): the outline of the line is made in the drawing's own user space,
 * where its width is even, and then carried over by the transform, which may squeeze it.
 */
import {
  affineApply,
  affineCompose,
  affineDeterminant,
  affineScale,
  type Affine,
} from '../../geometry/affine';
import { unitFromAngle } from '../../geometry/angle';
import { arcPieces } from '../../geometry/arc';
import {
  pointAdd,
  pointAlong,
  pointDistance,
  pointScale,
  pointSubtract,
  vectorCross,
  vectorDot,
  vectorLeft,
  vectorUnit,
  type Point,
} from '../../geometry/point';
import type { Ring } from '../../geometry/polyline';
import { lineBuffer, regionFrom, type Region } from '../../geometry/region';
import { SINGULAR } from '../../geometry/tolerance';
import { ART_CHORD } from '../art-frame';
import { outlineMap, type Outline } from '../outline';
import { MAX_DASHES } from './limits';
import { cutDashes, trackLength, trackOf, type Corner, type Track, type TrackPoint } from './track';

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
  const rings = tracks.flatMap((sub) => {
    const track = trackOf(sub, ART_CHORD);
    const cut = dashTrack(track, pen, k);
    dashesDropped ||= cut === null;
    return (cut ?? [track]).flatMap((t) => strokeTrack(t, (pen.width * k) / 2, pen));
  });
  const rest = affineCompose(map, affineScale(1 / k));
  const area = regionFrom(rings, 'non-zero');
  const mapped = area.map((ring) => ring.map((p) => affineApply(rest, p)));
  return { region: regionFrom(mapped), dashesDropped };
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

/** Rings that together cover a stroked track, each counter-clockwise: runs, joins and caps. */
function strokeTrack(track: Track, half: number, pen: Pen): Region {
  const points = track.points;
  if (trackLength(track) === 0) return dot(points[0]!.at, half, pen.cap);
  const runs = splitAtCorners(points);
  const inner = track.closed ? points.slice(0, -1) : points.slice(1, -1);
  const rings = [
    ...runs.flatMap((run) => runArea(run, half)),
    ...inner.flatMap((p) => joinAt(p, half, pen)),
  ];
  const [first, last] = [runs[0]!, runs[runs.length - 1]!];
  const ends = track.closed
    ? seam(points[0]!, half)
    : [
        ...capAt(first[1]!, first[0]!, half, pen.cap),
        ...capAt(last[last.length - 2]!, last[last.length - 1]!, half, pen.cap),
      ];
  return [...rings, ...ends];
}

function splitAtCorners(points: readonly TrackPoint[]): Point[][] {
  const runs: Point[][] = [[points[0]!.at]];
  points.slice(1).forEach((p, i) => {
    runs[runs.length - 1]!.push(p.at);
    if (p.corner && i < points.length - 2) runs.push([p.at]);
  });
  return runs;
}

/** A run has no corners: its bends are joined round, its ends are square. */
function runArea(run: readonly Point[], half: number): Region {
  const [from, to] = run as [Point, Point];
  if (run.length > 2) return lineBuffer(run, half, 'butt', 'round', ART_CHORD);
  const along = vectorUnit(pointSubtract(to, from));
  return along ? [bar(from, to, along, half)] : [];
}

/** The rectangle round a straight line. */
function bar(from: Point, to: Point, along: Point, half: number): Ring {
  const left = vectorLeft(along);
  return [
    pointAlong(from, left, -half),
    pointAlong(to, left, -half),
    pointAlong(to, left, half),
    pointAlong(from, left, half),
  ];
}

/** Where a smooth closed line meets itself, its two square ends are covered by a disc. */
const seam = (p: TrackPoint, half: number): Region => (p.corner ? [] : [disc(p.at, half)]);

function joinAt(p: TrackPoint, half: number, pen: Pen): Region {
  if (!p.corner) return [];
  if (pen.join === 'round') return [disc(p.at, half)];
  const { into, out } = p.corner;
  // Mitre length over width is 1 / cos(half the turn); past the limit the corner is cut (bevel).
  const halfTurnCos = Math.sqrt(Math.max(0, (1 + vectorDot(into, out)) / 2));
  const mitred = pen.join === 'miter' && halfTurnCos * pen.miterLimit >= 1;
  return [elbow(p.at, p.corner, half, mitred ? half / halfTurnCos : null)];
}

/**
 * The wedge outside a corner, reaching a little back into both lines so that no hairline is left
 * between; `reach` is how far its tip stands from the corner, null for a cut one.
 */
function elbow(at: Point, { into, out }: Corner, half: number, reach: number | null): Ring {
  const leftTurn = vectorCross(into, out) > 0;
  const outward = (along: Point): Point => pointScale(vectorLeft(along), leftTurn ? -half : half);
  const back = pointAlong(at, into, -half * JOIN_OVERLAP);
  const ahead = pointAlong(at, out, half * JOIN_OVERLAP);
  const towards = vectorUnit(pointSubtract(into, out));
  const tip = reach !== null && towards ? [pointAlong(at, towards, reach)] : [];
  const ring = [
    back,
    pointAdd(back, outward(into)),
    pointAdd(at, outward(into)),
    ...tip,
    pointAdd(at, outward(out)),
    pointAdd(ahead, outward(out)),
    ahead,
    at,
  ];
  return leftTurn ? ring : ring.reverse();
}

/** How far a join reaches back into the lines that it joins, as a share of half the width. */
const JOIN_OVERLAP = 0.01;

/** The cap at `end` of a line that comes from `before`. */
function capAt(before: Point, end: Point, half: number, cap: Pen['cap']): Region {
  if (cap === 'butt') return [];
  if (cap === 'round') return [disc(end, half)];
  const along = vectorUnit(pointSubtract(end, before));
  if (!along) return [];
  const back = Math.min(half * JOIN_OVERLAP, pointDistance(before, end));
  return [bar(pointAlong(end, along, -back), pointAlong(end, along, half), along, half)];
}

/** A line of no length: a dot or a square, or nothing without caps (SVG 1.1, 11.4). */
function dot(at: Point, half: number, cap: Pen['cap']): Region {
  if (cap === 'butt') return [];
  if (cap === 'round') return [disc(at, half)];
  const along = { x: 1, y: 0 };
  return [bar(pointAlong(at, along, -half), pointAlong(at, along, half), along, half)];
}

function disc(at: Point, radius: number): Ring {
  const pieces = Math.max(8, arcPieces(radius, 2 * Math.PI, ART_CHORD));
  return Array.from({ length: pieces }, (_, i) =>
    pointAlong(at, unitFromAngle((2 * Math.PI * i) / pieces), radius),
  );
}
