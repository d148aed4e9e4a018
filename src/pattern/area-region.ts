/** The areas of a recipe as regions of the grass. */
import type { Feet } from '../base/units';
import type { Field } from '../field/model';
import { unitFromBearing } from '../geometry/angle';
import { fullCircle, pathFlatten } from '../geometry/arc';
import { boxGrow, type Box } from '../geometry/box';
import { parallelLine } from '../geometry/parallel-line';
import { pointAlong, type Point } from '../geometry/point';
import {
  EMPTY_REGION,
  rectangle,
  regionBox,
  regionFrom,
  regionIntersect,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../geometry/region';
import { sideLines } from './families/edge';
import { intoFrame, layFrame, outOfFrame, regionIntoFrame } from './lay-frame';
import type { Area } from './resolved';

/** Areas reach this far beyond the grass, so that only the grass's own edge cuts them. */
const BEYOND: Feet = 20;
const SECTOR_STEP_DEG = 1;

/** What `area` holds of `ground`; `inset` is the width of the clean-up laps. */
export function areaRegion(area: Area, ground: Region, field: Field, inset: Feet): Region {
  const box = regionBox(ground);
  if (!box || area.kind === 'all') return ground;
  if (area.kind === 'not') return regionSubtract(ground, areaRegion(area.of, ground, field, inset));
  if (area.kind === 'both') {
    return area.of.reduce((left, part) => areaRegion(part, left, field, inset), ground);
  }
  if (area.kind === 'any') {
    return regionUnionAll(area.of.map((part) => areaRegion(part, ground, field, inset)));
  }
  return regionIntersect(shapeOf(area, boxGrow(box, BEYOND), field, inset), ground);
}

type Shape = Exclude<Area, { readonly kind: 'all' | 'not' | 'both' | 'any' }>;

function shapeOf(area: Shape, box: Box, field: Field, inset: Feet): Region {
  switch (area.kind) {
    case 'half': {
      const side = area.side === 'left' ? { maxX: 0 } : { minX: 0 };
      return framed(area, box, side);
    }
    case 'strip':
      return framed(area, box, { minX: -area.widthFt / 2, maxX: area.widthFt / 2 });
    case 'ring':
      return ringOf(area, box);
    case 'sector':
      return sectorOf(area, box);
    case 'drawn':
      return regionFrom([area.points]);
    case 'blocks':
      return blocksOf(area, box);
    case 'edge':
      return sideLines(field, area.of).flatMap((line) => [
        [...parallelLine(line, -BEYOND), ...parallelLine(line, inset + area.widthFt).reverse()],
      ]);
  }
}

/** The box's reach in a frame about a place, with some of its limits set from there. */
function framed(
  { bearingDeg, through }: { readonly bearingDeg: number; readonly through: Point },
  box: Box,
  limits: Partial<Box>,
): Region {
  const frame = layFrame(bearingDeg);
  const at = intoFrame(frame, through);
  const whole = regionBox(regionIntoFrame(frame, rectangle(box)))!;
  const minX = limits.minX === undefined ? whole.minX : limits.minX + at.x;
  const maxX = limits.maxX === undefined ? whole.maxX : limits.maxX + at.x;
  if (minX >= maxX) return EMPTY_REGION;
  return rectangle({ ...whole, minX, maxX }).map((r) => r.map((p) => outOfFrame(frame, p)));
}

function ringOf(area: Extract<Area, { kind: 'ring' }>, box: Box): Region {
  const circle = (radius: Feet) => pathFlatten([fullCircle(area.centre, radius)], true);
  const outer = Number.isFinite(area.toFt) ? [circle(area.toFt)] : rectangle(box);
  return area.fromFt > 0 ? regionSubtract(outer, [circle(area.fromFt)]) : outer;
}

function sectorOf(area: Extract<Area, { kind: 'sector' }>, box: Box): Region {
  const { centre, fromDeg, toDeg } = area;
  const far =
    2 * Math.max(...rectangle(box)[0]!.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y)));
  const pieces = Math.max(1, Math.ceil((toDeg - fromDeg) / SECTOR_STEP_DEG));
  const rim = Array.from({ length: pieces + 1 }, (_, i) =>
    pointAlong(centre, unitFromBearing(fromDeg + ((toDeg - fromDeg) * i) / pieces), far),
  );
  return regionFrom([toDeg - fromDeg >= 360 ? rim : [centre, ...rim]], 'non-zero');
}

function blocksOf(area: Extract<Area, { kind: 'blocks' }>, box: Box): Region {
  const frame = layFrame(area.bearingDeg);
  const at = intoFrame(frame, area.through);
  const whole = regionBox(regionIntoFrame(frame, rectangle(box)))!;
  const columns = steps(whole.minX, whole.maxX, at.x, area.acrossFt);
  const rows = Number.isFinite(area.alongFt)
    ? steps(whole.minY, whole.maxY, at.y, area.alongFt)
    : [{ index: 0, from: whole.minY, to: whole.maxY }];
  const wanted = area.pick === 'even' ? 0 : 1;
  return columns.flatMap((c) =>
    rows
      .filter((r) => Math.abs(c.index + r.index) % 2 === wanted)
      .flatMap((r) =>
        rectangle({ minX: c.from, maxX: c.to, minY: r.from, maxY: r.to }).map((ring) =>
          ring.map((p) => outOfFrame(frame, p)),
        ),
      ),
  );
}

function steps(low: Feet, high: Feet, start: Feet, step: Feet) {
  const first = Math.floor((low - start) / step);
  const last = Math.ceil((high - start) / step);
  return Array.from({ length: last - first }, (_, i) => ({
    index: first + i,
    from: start + (first + i) * step,
    to: start + (first + i + 1) * step,
  }));
}
