/** The string beside a lane: on which side, how far off, and where its ends stand on the grass edge. */
import { READING_STEP, roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { inches, INCHES_PER_FOOT, metresToFeet, type Feet } from '../base/units';
import { intoFrame, outOfFrame, type LayFrame } from '../pattern/lay-frame';
import { findSurface } from '../field/find-surface';
import type { Field } from '../field/model';
import { bearingNormalise } from '../geometry/angle';
import { pointLerp } from '../geometry/point';
import { regionContains } from '../geometry/region';
import { SAME_POINT } from '../geometry/tolerance';
import type { Machine } from '../mowing/model';
import { crossEdges, type EdgeCrossing, type GrassEdge } from './grass-edges';
import type { Lane, LanePiece } from './model';

export interface StringGround {
  readonly field: Field;
  readonly edges: readonly GrassEdge[];
  readonly keep: Reading;
}

/** A string before it has its numbers, in the sense of the pass. */
export interface LaidString {
  readonly pieces: readonly LanePiece[];
  readonly bearingDeg: number;
  readonly side: 'left' | 'right';
  readonly from: EdgeCrossing;
  readonly to: EdgeCrossing;
}

/** Clear of the machine's side: the safety rule of the order of work. */
export const STRING_CLEAR_FT: Feet = inches(12);
/** A lane is strung only when its strings run beside this share of it; assumption. */
const LEAST_BESIDE = 0.6;

/** Widest part of the machine, cut or body. */
export const machineHalfFt = (machine: Machine): Feet =>
  inches(Math.max(machine.cutWidthIn, machine.bodyWidthIn) / 2);

/**
 * From the string to the middle of its pass: half the machine and 12 in, with room for the rounding of
 * the end stakes, and never rounded down.
 */
export function keepOff(machine: Machine, system: LengthSystem): Reading {
  const step =
    system === 'metric'
      ? metresToFeet(READING_STEP.metres)
      : 1 / (INCHES_PER_FOOT * READING_STEP.inchesDenominator);
  const least = machineHalfFt(machine) + STRING_CLEAR_FT + step / 2;
  return roundReading(Math.ceil(least / step - SAME_POINT) * step, system);
}

/**
 * The strings of a lane, one for each stretch of grass that its passes cross: on the side where they
 * run beside more of it, at the driver's right where both are alike. None where a string would not run
 * beside the pass, or where an end would stand on a keep-out.
 */
export function layStrings(ground: StringGround, frame: LayFrame, lane: Lane): LaidString[] {
  const ways = (['right', 'left'] as const).map((side) => sideStrings(ground, frame, lane, side));
  const [right, left] = ways as [Laid, Laid];
  const best = left.besideFt > right.besideFt + ALIKE_FT ? left : right;
  return best.besideFt < LEAST_BESIDE * laneFt(lane) ? [] : best.strings;
}

/** Differences of reach beside a pass that decide nothing; assumption. */
const ALIKE_FT: Feet = 1;

interface Laid {
  readonly strings: LaidString[];
  readonly besideFt: Feet;
}

const laneFt = (lane: Lane): Feet =>
  lane.pieces.reduce((sum, p) => sum + Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y), 0);

function sideStrings(
  ground: StringGround,
  frame: LayFrame,
  lane: Lane,
  side: 'left' | 'right',
): Laid {
  const first = lane.pieces[0]!;
  const away = isWith(frame, first) === (side === 'right') ? 1 : -1;
  const x = lane.offsetFt + away * ground.keep.ft;
  const strings: LaidString[] = [];
  let besideFt = 0;
  for (const [low, high] of stretches(ground, frame, x)) {
    const reach = lane.pieces.map((piece) => ({ piece, ft: beside(frame, piece, low, high) }));
    const own = reach.filter(({ ft }) => ft > 0);
    if (own.length === 0 || [low, high].some((end) => onKeepOut(ground.field, end))) continue;
    besideFt += own.reduce((sum, { ft }) => sum + ft, 0);
    const pieces = own.map(({ piece }) => piece);
    const isForward = isWith(frame, pieces[0]!);
    strings.push({
      pieces,
      bearingDeg: bearingNormalise(frame.bearingDeg + (isForward ? 0 : 180)),
      side,
      from: isForward ? low : high,
      to: isForward ? high : low,
    });
  }
  return { strings, besideFt };
}

const isWith = (frame: LayFrame, piece: LanePiece): boolean =>
  intoFrame(frame, piece.to).y > intoFrame(frame, piece.from).y;

/** The stretches of grass on a line across the field, each from edge to edge, near end first. */
function stretches(
  ground: StringGround,
  frame: LayFrame,
  x: Feet,
): (readonly [EdgeCrossing, EdgeCrossing])[] {
  const grass = findSurface(ground.field.surfaces, 'outfield-grass').region;
  const on = outOfFrame(frame, { x, y: 0 });
  const met = crossEdges(ground.edges, on, frame.bearingDeg)
    .map((crossing) => ({ crossing, y: intoFrame(frame, crossing.at).y }))
    .sort((a, b) => a.y - b.y);
  return met.slice(1).flatMap((high, i) => {
    const low = met[i]!;
    const isGrass = regionContains(grass, pointLerp(low.crossing.at, high.crossing.at, 0.5));
    return isGrass ? [[low.crossing, high.crossing] as const] : [];
  });
}

/** Length of the piece beside the stretch; 0 when its middle is beyond it. */
function beside(frame: LayFrame, piece: LanePiece, low: EdgeCrossing, high: EdgeCrossing): Feet {
  const [from, to] = [low.at, high.at].map((p) => intoFrame(frame, p).y) as [number, number];
  const ends = [piece.from, piece.to].map((p) => intoFrame(frame, p).y);
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const middle = (least + most) / 2;
  return middle < from || middle > to ? 0 : Math.min(most, to) - Math.max(least, from);
}

const onKeepOut = (field: Field, { at }: EdgeCrossing): boolean =>
  field.keepOuts.some(({ region }) => regionContains(region, at));
