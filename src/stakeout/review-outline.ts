/** Holds the drawn outline against the art: largest gap both ways, crossings, area. */
import { inches } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import { polylineResample } from '../geometry/polyline';
import type { ContourTask } from './draft-outline';
import { crossingEdges, edgeIndex, nearestEdgeDistance, type TaggedEdge } from './edge-index';
import { drawnPiece, type JoinedPiece } from './join-outline';
import type { Stretch } from './part-contours';

/** A contour with its drawn pieces. */
export interface DrawnContour {
  readonly task: ContourTask;
  readonly pieces: readonly JoinedPiece[];
}

/** A stretch of a contour, trace indices, that has to keep closer. */
export interface Offence extends Stretch {
  /** Null for a gap to the art. */
  readonly crosses: Stretch | null;
}

export interface OutlineReview {
  readonly largestGapFt: number;
  readonly offences: readonly Offence[];
}

const SAMPLE_FT = 0.1;
/** Arcs become chords within this of the true arc, 1/50 in, far below the gap that is measured. */
const CHORD_ERROR_FT = inches(0.02);
const CELL_FT = 1.5;
const FARTHEST_FT = 20;

interface EdgeTag extends Stretch {
  /** The stakes at the piece's ends, where neighbours may overlap by a step. */
  readonly ends: readonly Point[];
}

/** Neighbouring pieces may cross this near their common stake: a swing's step does that. */
const JOINT_FT = 0.7;

/** The largest gap to the art, both ways, and every stretch that is over `limitFt` or crosses another. */
export function reviewOutline(contours: readonly DrawnContour[], limitFt: number): OutlineReview {
  const reviews = contours.map((c) => reviewContour(c, limitFt));
  const edges = contours.flatMap(drawnEdges);
  return {
    largestGapFt: Math.max(0, ...reviews.map((r) => r.largestGapFt)),
    offences: [...reviews.flatMap((r) => r.offences), ...crossingOffences(edges)],
  };
}

/** The trace indices a piece stands for. */
function stretchOf(task: ContourTask, joined: JoinedPiece): Stretch {
  const { draft } = joined;
  const straight = draft.kind === 'string';
  if (draft.kind === 'circle') return { task, from: 0, to: task.trace.count, straight };
  return { task, from: draft.link.from, to: draft.link.to, straight };
}

function drawnEdges(contour: DrawnContour): TaggedEdge<EdgeTag>[] {
  const points = contour.pieces.flatMap((joined) => {
    const tag: EdgeTag = {
      ...stretchOf(contour.task, joined),
      ends: [joined.from, joined.to],
    };
    return drawnPiece(joined, CHORD_ERROR_FT).map((at) => ({ at, tag }));
  });
  return points.map((p, i) => ({
    a: p.at,
    b: points[(i + 1) % points.length]!.at,
    tag: p.tag,
  }));
}

function reviewContour(contour: DrawnContour, limitFt: number): OutlineReview {
  const { task } = contour;
  const edges = drawnEdges(contour);
  const drawn = edgeIndex(edges, CELL_FT);
  const art = edgeIndex(artEdges(task.trace.ring), CELL_FT);
  const offences: Offence[] = [];
  let largest = 0;
  for (const sample of polylineResample(task.trace.ring, SAMPLE_FT, true)) {
    const gap = nearestEdgeDistance(drawn, sample, FARTHEST_FT);
    largest = Math.max(largest, gap);
    if (gap > limitFt) offences.push({ ...stretchAt(contour, sample), crosses: null });
  }
  for (const edge of edges) {
    const worst = worstAlong(edge, art);
    largest = Math.max(largest, worst);
    if (worst > limitFt) offences.push({ ...stretchOnly(edge.tag), crosses: null });
  }
  return { largestGapFt: largest, offences };
}

const artEdges = (ring: readonly Point[]): TaggedEdge<null>[] =>
  ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, tag: null }));

function worstAlong<T>(edge: TaggedEdge<T>, art: ReturnType<typeof edgeIndex<null>>): number {
  const steps = Math.max(1, Math.ceil(pointDistance(edge.a, edge.b) / SAMPLE_FT));
  let worst = 0;
  for (let k = 0; k < steps; k++) {
    const t = k / steps;
    const p = { x: edge.a.x + t * (edge.b.x - edge.a.x), y: edge.a.y + t * (edge.b.y - edge.a.y) };
    worst = Math.max(worst, nearestEdgeDistance(art, p, FARTHEST_FT));
  }
  return worst;
}

/** The piece whose stretch of the trace holds the trace point nearest to `p`. */
function stretchAt(contour: DrawnContour, p: Point): Stretch {
  const { task } = contour;
  const { trace } = task;
  let nearest = 0;
  let least = Infinity;
  for (let i = 0; i < trace.count; i++) {
    const d = Math.hypot(trace.x[i]! - p.x, trace.y[i]! - p.y);
    if (d < least) {
      least = d;
      nearest = i;
    }
  }
  for (const joined of contour.pieces) {
    const s = stretchOf(contour.task, joined);
    if (nearest >= s.from && nearest <= s.to) return s;
    if (nearest + trace.count <= s.to) return s;
  }
  return { task, from: nearest, to: nearest, straight: false };
}

/** The stretch without what else the edge's tag says. */
const stretchOnly = ({ task, from, to, straight }: EdgeTag): Stretch => ({
  task,
  from,
  to,
  straight,
});

function crossingOffences(edges: readonly TaggedEdge<EdgeTag>[]): Offence[] {
  return crossingEdges(edgeIndex(edges, CELL_FT))
    .filter(({ a, b, at }) => !atJoint(a, b, at))
    .flatMap(({ a, b }) => [
      { ...stretchOnly(a), crosses: stretchOnly(b) },
      { ...stretchOnly(b), crosses: stretchOnly(a) },
    ]);
}

const atJoint = (a: EdgeTag, b: EdgeTag, at: Point): boolean =>
  a.ends.some((end) => b.ends.includes(end) && pointDistance(end, at) < JOINT_FT);
