/**
 * Clean-up laps round the grass: a ring inside the edge, cut into one patch per side. The skin's arc
 * and the track side run through the corners and are mown after the foul lines; what their square
 * ends cannot reach at a slanted corner belongs to the foul line's patch.
 */
import type { Field } from '../field/model';
import type { Feet } from '../base/units';
import { pointAlong, type Point } from '../geometry/point';
import { polylineNearest, type Polyline } from '../geometry/polyline';
import {
  lineBuffer,
  regionBox,
  regionIntersect,
  regionOffset,
  regionParts,
  regionSubtract,
  regionUnion,
  regionUnionAll,
  EMPTY_REGION,
  type Region,
} from '../geometry/region';
import { endDirection, extendLine, parallelLine, roundKinks } from '../geometry/parallel-line';
import { cutInside, trimEnds } from './trim-ends';
import { grassSides, type GrassSide, type SideName } from '../field/grass-sides';
import { GROUP, type Stroke } from './model';

export interface EdgeLaps {
  /** The grass inside the ring. */
  readonly inner: Region;
  readonly sides: readonly {
    readonly side: GrassSide;
    readonly id: string;
    readonly region: Region;
  }[];
  readonly strokes: readonly Stroke[];
}

export interface WideCut {
  readonly swathFt: Feet;
  readonly cutFt: Feet;
}

/** The edge lap cuts this far (1/4 in) over the edge, so that no thread is left; the limit is 2 in. */
const EDGE_OVER: Feet = 0.02;
/** A cut's corner may stand this far (about 5/8 in) over the edge of the grass. */
const EDGE_SLACK: Feet = 0.05;
/** Kinks of a straight-sided fence are driven as bends of this radius. */
const BEND: Feet = 10;
const THROUGH: readonly SideName[] = ['skin', 'track'];

/** Width of a ring of laps: they cover it and half an overlap more. */
export const ringWidth = (laps: number, wide: WideCut): Feet =>
  laps === 0 ? 0 : (laps - 1) * wide.swathFt + wide.cutFt - (wide.cutFt - wide.swathFt) / 2;

/** Distance of a lap's middle from the edge, edge lap 0. */
const lapInset = (lap: number, wide: WideCut): Feet =>
  wide.cutFt / 2 + lap * wide.swathFt - (lap === 0 ? EDGE_OVER : 0);

/** Ring, side patches and lap lines; without laps the whole grass is inside. */
export function layEdgeLaps(field: Field, laps: number, wide: WideCut): EdgeLaps {
  const grass = field.outfieldGrass;
  if (laps === 0) return { inner: grass, sides: [], strokes: [] };
  const width = ringWidth(laps, wide);
  const inner = regionOffset(grass, -width);
  const named = nameSides(grassSides(field));
  const lapLines = named.map(({ side }) => sideLaps(side, grass, laps, wide));
  const regions = shareRing(regionSubtract(grass, inner), named, lapLines, width, wide);
  const strokes = named.flatMap(({ id, side }, i) =>
    lapLines[i]!.map((line, lap) => ({
      patch: id,
      role: 'wide' as const,
      phase: 'border' as const,
      line,
      widthFt: wide.cutFt,
      group: lapGroup(named, side, i),
      lap: lap + 1,
    })),
  );
  return { inner, sides: named.map((n, i) => ({ ...n, region: regions[i]! })), strokes };
}

/** Foul lines first; of the others, the side that keeps a shared corner goes last. */
function lapGroup(named: readonly { side: GrassSide }[], side: GrassSide, index: number): number {
  if (!THROUGH.includes(side.name)) return GROUP.foulLines;
  return GROUP.through + named.slice(index + 1).filter((n) => n.side.name === side.name).length;
}

function nameSides(sides: readonly GrassSide[]): { side: GrassSide; id: string }[] {
  const seen = new Map<SideName, number>();
  return sides.map((side) => {
    const count = (seen.get(side.name) ?? 0) + 1;
    seen.set(side.name, count);
    return { side, id: count === 1 ? `edge-${side.name}` : `edge-${side.name}-${count}` };
  });
}

/** Lap lines of one side, edge lap first, each cut square where its first corner leaves the grass. */
function sideLaps(side: GrassSide, grass: Region, laps: number, wide: WideCut): Polyline[] {
  const test = cutInside(grass, wide.cutFt / 2 - EDGE_SLACK);
  const out: Polyline[] = [];
  for (let lap = 0; lap < laps; lap++) {
    const inset = lapInset(lap, wide);
    const line = roundKinks(parallelLine(side.line, inset), BEND);
    const reach = ringWidth(laps, wide) * 2;
    const trimmed = trimEnds(extendLine(line, reach), test, reach * 2);
    if (trimmed) out.push(trimmed);
  }
  return out;
}

/** The ring shared out: through sides first (they relay the others), the rest to the nearest side. */
function shareRing(
  ring: Region,
  named: readonly { side: GrassSide }[],
  lapLines: readonly (readonly Polyline[])[],
  width: Feet,
  wide: WideCut,
): Region[] {
  const regions: Region[] = named.map(() => EMPTY_REGION);
  let left = ring;
  named.forEach(({ side }, i) => {
    if (!THROUGH.includes(side.name)) return;
    const strip = lineBuffer(extendLine(side.line, width), width + STRIP_GUARD, 'butt');
    const beyond = regionUnionAll(endZones(lapLines[i]!, width, wide));
    regions[i] = regionSubtract(regionIntersect(left, strip), beyond);
    left = regionSubtract(left, regions[i]);
  });
  for (const part of regionParts(left)) {
    const i = nearestSide(part, named);
    regions[i] = regionUnion(regions[i]!, part);
  }
  return regions;
}

/** A strip stands this much proud of its ring, so that no thread is left along their common edge. */
const STRIP_GUARD: Feet = 0.02;

/** What lies beyond the square ends of a side's laps, lap by lap; the outer two reach far over. */
function endZones(laps: readonly Polyline[], width: Feet, wide: WideCut): Region[] {
  const seam = (lap: number) => lap * wide.swathFt + (wide.cutFt - wide.swathFt) / 2;
  return laps.flatMap((line, lap) => {
    const inset = lapInset(lap, wide);
    const low = (lap === 0 ? -width : seam(lap)) - inset;
    const high = (lap === laps.length - 1 ? 2 * width : seam(lap + 1)) - inset;
    return [endZone(line, 'start', low, high), endZone(line, 'end', low, high)];
  });
}

const ZONE_LENGTH: Feet = 40;

/** A rectangle straight on from a line's end, between two distances to the line's left. */
function endZone(line: Polyline, end: 'start' | 'end', low: Feet, high: Feet): Region {
  const tip = end === 'start' ? line[0]! : line[line.length - 1]!;
  const out = endDirection(line, end);
  const sign = end === 'start' ? -1 : 1;
  const left: Point = { x: -out.y * sign, y: out.x * sign };
  const corner = (along: number, side: number) =>
    pointAlong(pointAlong(tip, out, along), left, side);
  return [[corner(0, low), corner(ZONE_LENGTH, low), corner(ZONE_LENGTH, high), corner(0, high)]];
}

/** The side that a leftover part lies along: foul lines before the sides that run through. */
function nearestSide(part: Region, named: readonly { side: GrassSide }[]): number {
  const box = regionBox(part)!;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const distance = ({ side }: { side: GrassSide }) => polylineNearest(side.line, middle).distance;
  const free = named.filter(({ side }) => !THROUGH.includes(side.name));
  const pool = free.length > 0 ? free : named;
  const best = pool.reduce((a, b) => (distance(b) < distance(a) ? b : a));
  return named.indexOf(best);
}
