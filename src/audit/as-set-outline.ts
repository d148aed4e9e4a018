/** The outline drawn between stakes where they stand: new radii, and the gap to the art. */
import { roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { feetToInches, inches } from '../base/units';
import { angleNormalise } from '../geometry/angle';
import { pointDistance, type Point } from '../geometry/point';
import { polylineResample } from '../geometry/polyline';
import type { Region } from '../geometry/region';
import { bendArc } from '../stakeout/bend';
import {
  edgeIndex,
  nearestEdge,
  nearestEdgeDistance,
  type EdgeIndex,
} from '../stakeout/edge-index';
import { LONGEST_STEP_FT, ROUNDING_ALLOWANCE_IN } from '../stakeout/limits';
import type { Contour, OutlinePiece, StakePlan } from '../stakeout/model';
import { readingStepFt } from '../stakeout/ties';
import type { AsSetPiece } from './model';

type PlaceOf = (id: string) => Point;
type Swing = Extract<OutlinePiece, { kind: 'swing' }>;

const SAMPLE_FT = 0.25;
const CELL_FT = 1.5;
const FARTHEST_FT = 20;

interface DrawnPiece {
  readonly piece: OutlinePiece;
  readonly line: readonly Point[];
  readonly stepFt: number;
}

/** Every piece of the outline as it can be drawn between the stakes as they stand. */
export function asSetOutline(plan: StakePlan, graphic: Region, placeOf: PlaceOf): AsSetPiece[] {
  const art = edgeIndex(
    graphic.flatMap((ring) =>
      ring.map((a, i) => ({ a, b: ring[(i + 1) % ring.length]!, tag: null })),
    ),
    CELL_FT,
  );
  return plan.contours.flatMap((contour) => asSetContour(contour, graphic, art, plan, placeOf));
}

function asSetContour(
  contour: Contour,
  graphic: Region,
  art: EdgeIndex<null>,
  plan: StakePlan,
  placeOf: PlaceOf,
): AsSetPiece[] {
  const drawn = contour.pieces.map((p) => drawPiece(p, art, plan.spec.system, placeOf));
  const missed = missedArt(drawn, graphic[contour.contour - 1] ?? []);
  const limitIn = plan.spec.toleranceIn + ROUNDING_ALLOWANCE_IN + plan.spec.target95In;
  return drawn.map(({ piece, line, stepFt }, i) => {
    const gapIn = feetToInches(Math.max(missed[i]!, farthest(line, art)));
    return {
      graphic: contour.graphic,
      contour: contour.contour,
      seq: i + 1,
      piece,
      changed: sizeOf(piece) !== sizeOf(contour.pieces[i]!),
      gapIn,
      stepIn: feetToInches(stepFt),
      within: gapIn <= limitIn && stepFt <= LONGEST_STEP_FT + inches(plan.spec.target95In),
    };
  });
}

function sizeOf(p: OutlinePiece): number | null {
  if (p.kind === 'string') return null;
  return p.kind === 'bend' ? p.offset.ft : p.radius.ft;
}

function drawPiece(
  piece: OutlinePiece,
  art: EdgeIndex<null>,
  system: LengthSystem,
  placeOf: PlaceOf,
): DrawnPiece {
  switch (piece.kind) {
    case 'string':
      return { piece, line: straight(placeOf(piece.from), placeOf(piece.to)), stepFt: 0 };
    case 'circle':
      return drawCircle(piece, art, system, placeOf(piece.pin));
    case 'swing':
      return drawSwing(piece, art, system, placeOf);
    case 'bend':
      return drawBend(piece, art, system, placeOf(piece.from), placeOf(piece.to));
  }
}

function straight(a: Point, b: Point): Point[] {
  const steps = Math.max(1, Math.ceil(pointDistance(a, b) / SAMPLE_FT));
  return Array.from({ length: steps + 1 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / steps,
    y: a.y + ((b.y - a.y) * i) / steps,
  }));
}

function arc(centre: Point, radius: number, start: number, sweep: number): Point[] {
  const steps = Math.max(2, Math.ceil((Math.abs(sweep) * radius) / SAMPLE_FT));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = start + (sweep * i) / steps;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/** The largest distance of a line from the art; once it is `enough`, no more is looked at. */
function farthest(line: readonly Point[], art: EdgeIndex<null>, enough = Infinity): number {
  let most = 0;
  for (const p of line) {
    most = Math.max(most, nearestEdgeDistance(art, p, FARTHEST_FT));
    if (most >= enough) break;
  }
  return most;
}

/** The printed radius about the pin that keeps nearest to the art, within a step of both ends. */
function drawSwing(
  piece: Swing,
  art: EdgeIndex<null>,
  system: LengthSystem,
  placeOf: PlaceOf,
): DrawnPiece {
  const [from, to, pin] = [placeOf(piece.from), placeOf(piece.to), placeOf(piece.pin)];
  const ends = [pointDistance(pin, from), pointDistance(pin, to)];
  const start = Math.atan2(from.y - pin.y, from.x - pin.x);
  const end = Math.atan2(to.y - pin.y, to.x - pin.x);
  const sense = piece.sweep === 'ccw' ? 1 : -1;
  const sweep = sense * angleNormalise(sense * (end - start));
  const stepAt = (r: Reading) => Math.max(...ends.map((d) => Math.abs(d - r.ft)));
  const radius = bestRadius(ends, system, (r, enough) =>
    farthest(arc(pin, r.ft, start, sweep), art, enough),
  );
  const line = [from, ...arc(pin, radius.ft, start, sweep), to];
  return { piece: { ...piece, radius }, line, stepFt: stepAt(radius) };
}

function drawCircle(
  piece: Extract<OutlinePiece, { kind: 'circle' }>,
  art: EdgeIndex<null>,
  system: LengthSystem,
  pin: Point,
): DrawnPiece {
  const line = (r: Reading) => arc(pin, r.ft, 0, 2 * Math.PI);
  const radius = bestRadius([piece.radius.ft], system, (r, enough) =>
    farthest(line(r), art, enough),
  );
  return { piece: { ...piece, radius }, line: line(radius), stepFt: 0 };
}

/** An offset may change by this much to keep to the art. */
const BEND_PLAY_FT = inches(3);

/** The printed offset that keeps nearest to the art, at most half the chord. */
function drawBend(
  piece: Extract<OutlinePiece, { kind: 'bend' }>,
  art: EdgeIndex<null>,
  system: LengthSystem,
  from: Point,
  to: Point,
): DrawnPiece {
  const half = pointDistance(from, to) / 2;
  const line = (offset: Reading) => {
    const { centre, radius, startAngle, sweep } = bendArc(from, to, offset.ft, piece.side);
    return arc(centre, radius, startAngle, sweep);
  };
  const step = readingStepFt(system);
  let offset = piece.offset;
  let least = Infinity;
  for (let by = -BEND_PLAY_FT; by <= BEND_PLAY_FT; by += step) {
    const tried = roundReading(piece.offset.ft + by, system);
    if (!(tried.ft > 0) || tried.ft > half) continue;
    const gap = farthest(line(tried), art, least);
    if (gap >= least) continue;
    offset = tried;
    least = gap;
  }
  return { piece: { ...piece, offset }, line: line(offset), stepFt: 0 };
}

/** Among the readings within a step of every end (of their middle when they lie too far apart). */
function bestRadius(
  ends: readonly number[],
  system: LengthSystem,
  gapAt: (r: Reading, enough: number) => number,
): Reading {
  const low = Math.max(...ends) - LONGEST_STEP_FT;
  const high = Math.min(...ends) + LONGEST_STEP_FT;
  const middle = (low + high) / 2;
  let best = roundReading(middle, system);
  let least = gapAt(best, Infinity);
  const step = readingStepFt(system);
  for (let ft = low; ft <= high; ft += step) {
    const radius = roundReading(ft, system);
    if (radius.ft < low || radius.ft > high) continue;
    const gap = gapAt(radius, least);
    if (gap >= least) continue;
    best = radius;
    least = gap;
  }
  return best;
}

/** For each piece, how far the part of the art nearest to it lies from the drawn line. */
function missedArt(drawn: readonly DrawnPiece[], ring: readonly Point[]): number[] {
  const edges = drawn.flatMap((d, tag) =>
    d.line.slice(1).map((b, i) => ({ a: d.line[i]!, b, tag })),
  );
  const missed = drawn.map(() => 0);
  const index = edgeIndex(edges, CELL_FT);
  for (const p of polylineResample(ring, SAMPLE_FT, true)) {
    const nearest = nearestEdge(index, p, FARTHEST_FT);
    const piece = nearest?.edge.tag ?? nearestPiece(drawn, p);
    missed[piece] = Math.max(missed[piece]!, nearest?.distance ?? FARTHEST_FT);
  }
  return missed;
}

/** For art that lies far from all that is drawn. */
function nearestPiece(drawn: readonly DrawnPiece[], p: Point): number {
  const gaps = drawn.map(({ line }) => Math.min(...line.map((q) => pointDistance(p, q))));
  return gaps.indexOf(Math.min(...gaps));
}
