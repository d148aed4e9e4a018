/** The straight bands of a design as families of parallel lanes. */
import type { Feet } from '../base/units';
import { intoFrame, layFrame, type LayFrame } from '../pattern/lay-frame';
import type { Stroke } from '../design/model';
import { bearingNormalise, vectorBearing } from '../geometry/angle';
import { pointSubtract } from '../geometry/point';
import { SAME_LANE, SAME_LAY_DEG } from '../geometry/tolerance';
import type { Lane, LanePiece } from './model';

/** Lanes of one mowing and one bearing, left to right across `frame`. */
export interface LaneFamily {
  readonly frame: LayFrame;
  readonly lanes: readonly Lane[];
}

export interface FoundLanes {
  readonly families: readonly LaneFamily[];
  /** Bands along curves or rays: no string serves them. */
  readonly curvedBands: number;
}

interface Straight {
  readonly stroke: Stroke;
  readonly axisDeg: number;
}

/** Strokes of bands in families, in the order of mowing; each lane holds all its pieces. */
export function findLanes(strokes: readonly Stroke[]): FoundLanes {
  const banded = strokes.filter((s) => s.band !== undefined && s.line.length > 1);
  const straight = banded
    .filter(isStraight)
    .map((stroke) => ({ stroke, axisDeg: axisOf(stroke) }))
    .sort((a, b) => a.stroke.group - b.stroke.group);
  const groups: Straight[][] = [];
  for (const one of straight) {
    const own = groups.find(([first]) => isAlike(first!, one));
    if (own) own.push(one);
    else groups.push([one]);
  }
  const strung = groups.filter(([first]) => !fansOut(groups, first!.stroke.group));
  const served = new Set(strung.flat().map(({ stroke }) => stroke));
  const others = banded.filter((s) => !served.has(s));
  return {
    families: strung.map(familyOf),
    curvedBands: new Set(others.map((s) => `${s.group} ${s.band}`)).size,
  };
}

/** A mowing with more bearings than this is a fan of rays: one string serves no more than one of them. */
const MOST_BEARINGS = 3;

const fansOut = (groups: readonly (readonly Straight[])[], mowing: number): boolean =>
  groups.filter(([first]) => first!.stroke.group === mowing).length > MOST_BEARINGS;

/** No point of the line is off the line through its ends. */
function isStraight({ line }: Stroke): boolean {
  const frame = layFrame(vectorBearing(pointSubtract(line[line.length - 1]!, line[0]!)));
  const across = intoFrame(frame, line[0]!).x;
  return line.every((p) => Math.abs(intoFrame(frame, p).x - across) < SAME_LANE);
}

/** Bearing of the line without its sense, 0 to 180. */
function axisOf({ line }: Stroke): number {
  const deg = bearingNormalise(vectorBearing(pointSubtract(line[line.length - 1]!, line[0]!)));
  const axis = deg % 180;
  return axis > 180 - SAME_LAY_DEG ? axis - 180 : axis;
}

const isAlike = (a: Straight, b: Straight): boolean =>
  a.stroke.group === b.stroke.group && Math.abs(a.axisDeg - b.axisDeg) < SAME_LAY_DEG;

function familyOf(group: readonly Straight[]): LaneFamily {
  const frame = layFrame(group[0]!.axisDeg);
  const placed = group
    .map(({ stroke }) => ({ stroke, at: intoFrame(frame, stroke.line[0]!) }))
    .sort((a, b) => a.at.x - b.at.x);
  const lanes: { offsetFt: Feet; strokes: Stroke[] }[] = [];
  for (const { stroke, at } of placed) {
    const last = lanes[lanes.length - 1];
    if (last && at.x - last.offsetFt < SAME_LANE) last.strokes.push(stroke);
    else lanes.push({ offsetFt: at.x, strokes: [stroke] });
  }
  return { frame, lanes: lanes.map(({ offsetFt, strokes }) => laneOf(frame, offsetFt, strokes)) };
}

function laneOf(frame: LayFrame, offsetFt: Feet, strokes: readonly Stroke[]): Lane {
  const pieces = strokes
    .map((s): LanePiece => ({ patch: s.patch, from: s.line[0]!, to: s.line[s.line.length - 1]! }))
    .sort((a, b) => intoFrame(frame, a.from).y - intoFrame(frame, b.from).y);
  const bands = [...new Set(strokes.map((s) => s.band!))].sort((a, b) => a - b);
  return { offsetFt, bands, pieces };
}
