/**
 * Quiet ground: the one-lay area behind a graphic, with a clean-up lap of its own just inside its
 * edge. The margin is the one-lay ground between the graphic and that lap.
 */
import type { Feet } from '../base/units';
import { boxCentre, boxGrow, boxHeight, boxWidth, type Box } from '../geometry/box';
import { pointDistance, type Point } from '../geometry/point';
import { ringSignedArea, type Polyline } from '../geometry/polyline';
import {
  rectangle,
  regionArea,
  regionBox,
  regionFrom,
  regionIntersect,
  regionOffset,
  regionSimplify,
  regionSubtract,
  type Region,
} from '../geometry/region';
import { bandMiddles, evenMiddles, layLanes } from './lay-lanes';
import { layFrame, outOfFrame, regionIntoFrame } from '../pattern/lay-frame';
import { GROUP, type GroundSpec, type Stroke } from './model';
import { ringWidth, type WideCut } from './edge-laps';

export interface QuietGround {
  /** All of it, its lap included. */
  readonly region: Region;
  /** The one-lay part inside the lap. */
  readonly still: Region;
  readonly laps: readonly {
    readonly id: string;
    readonly region: Region;
    readonly guide: Polyline;
  }[];
  readonly strokes: readonly Stroke[];
}

/** Laps round quiet ground bend no tighter than this, so that any of the wide mowers can follow. */
export const LAP_RADIUS: Feet = 10;
/** Hollows of the edge are filled to bends of this radius; pieces closer than twice it grow together. */
const CLOSE: Feet = 20;
const SMOOTH: Feet = 0.05;

type QuietSpec = Extract<GroundSpec, { readonly kind: 'quiet' }>;

/** Quiet ground of the wanted shape round the graphic, inside `room`, laid at `bearingDeg`. */
export function layQuietGround(
  graphic: Region,
  room: Region,
  grass: Region,
  spec: QuietSpec,
  bearingDeg: number,
  wide: WideCut,
): QuietGround {
  return spec.shape === 'box'
    ? layBox(graphic, room, grass, spec, bearingDeg, wide)
    : layWithLap(graphic, room, grass, spec, bearingDeg, wide);
}

/** A box along the lay: its passes end square, so it needs no lap. */
function layBox(
  graphic: Region,
  room: Region,
  grass: Region,
  spec: QuietSpec,
  bearingDeg: number,
  wide: WideCut,
): QuietGround {
  const frame = layFrame(bearingDeg);
  const box = boxGrow(regionBox(regionIntoFrame(frame, graphic))!, spec.marginFt);
  const passes = Math.ceil(boxWidth(box) / wide.swathFt);
  const half = (passes * wide.swathFt) / 2;
  const middle = boxCentre(box).x;
  const wanted = rectangle({ ...box, minX: middle - half, maxX: middle + half });
  const region = regionIntersect([wanted[0]!.map((p) => outOfFrame(frame, p))], room);
  const middles = bandMiddles(middle - half, passes, wide.swathFt);
  const lines = layLanes(region, grass, { frame, middles, ...wide });
  return { region, still: region, laps: [], strokes: lines.map(stillStroke(wide)) };
}

const stillStroke =
  (wide: WideCut) =>
  (line: Polyline): Stroke => ({
    patch: 'quiet',
    role: 'wide',
    phase: 'background',
    line,
    widthFt: wide.cutFt,
    group: GROUP.quiet,
  });

function layWithLap(
  graphic: Region,
  room: Region,
  grass: Region,
  spec: QuietSpec,
  bearingDeg: number,
  wide: WideCut,
): QuietGround {
  const lapWidth = ringWidth(1, wide);
  const reach = spec.marginFt + lapWidth;
  const shape = spec.shape === 'oval' ? ovalRound(graphic, reach) : growRound(graphic, reach);
  const region = smoothInside(shape, room, lapWidth / 2);
  const still = regionOffset(region, -lapWidth);
  const frame = layFrame(bearingDeg);
  const middles = evenMiddles(frame, still, wide.swathFt, wide.cutFt, 0);
  const lines = layLanes(still, grass, { frame, middles, ...wide });
  const laps = layLaps(region, still, lapWidth);
  const lapStrokes = laps.map(({ id, guide }) => ({
    patch: id,
    role: 'wide' as const,
    phase: 'background' as const,
    line: guide,
    widthFt: wide.cutFt,
    group: GROUP.quietLap,
    lap: 1,
    closed: true,
  }));
  return { region, still, laps, strokes: [...lines.map(stillStroke(wide)), ...lapStrokes] };
}

/** The graphic grown by `reach`, near pieces grown together, holes filled. */
function growRound(graphic: Region, reach: Feet): Region {
  const coarse = regionSimplify(graphic, SMOOTH);
  const grown = fillHoles(regionOffset(coarse, reach + CLOSE, 'round', SMOOTH));
  return regionOffset(regionSimplify(grown, SMOOTH), -CLOSE);
}

const fillHoles = (region: Region): Region =>
  regionFrom(
    region.filter((ring) => ringSignedArea(ring) > 0),
    'non-zero',
  );

/** Cut to the room there is, then rounded until the lap's middle, `inset` inside, can be driven. */
function smoothInside(shape: Region, room: Region, inset: Feet): Region {
  const inside = regionIntersect(shape, room);
  const radius = LAP_RADIUS + inset;
  const core = regionOffset(inside, -radius);
  const opened = regionOffset(regionSimplify(core, SMOOTH / 5), radius);
  return regionIntersect(opened, room);
}

/** The oval round the graphic's box that has the box's proportions, grown by `reach`. */
function ovalRound(graphic: Region, reach: Feet): Region {
  const box = regionBox(graphic)!;
  const scale = ovalScale(graphic, box);
  const a = (boxWidth(box) / 2) * scale + reach;
  const b = (boxHeight(box) / 2) * scale + reach;
  const c = boxCentre(box);
  return [
    Array.from({ length: OVAL_POINTS }, (_, i) => {
      const t = (2 * Math.PI * i) / OVAL_POINTS;
      return { x: c.x + a * Math.cos(t), y: c.y + b * Math.sin(t) };
    }),
  ];
}

const OVAL_POINTS = 240;

/** How much larger than the box's inscribed oval it must be to hold every point of the graphic. */
function ovalScale(graphic: Region, box: Box): number {
  const c = boxCentre(box);
  const a = boxWidth(box) / 2;
  const b = boxHeight(box) / 2;
  return Math.max(
    1,
    ...graphic.flat().map((p: Point) => Math.hypot((p.x - c.x) / a, (p.y - c.y) / b)),
  );
}

/** One lap patch per ring of the ground's edge, with the closed line that its lap drives. */
function layLaps(region: Region, still: Region, lapWidth: Feet): QuietGround['laps'] {
  const ring = regionSubtract(region, still);
  const middles = regionOffset(region, -lapWidth / 2);
  return middles
    .filter((r) => r.length > 2)
    .map((r, i) => {
      const own = middles.length === 1 ? ring : regionIntersect(ring, nearRing(r, lapWidth));
      const guide = [...r, r[0]!];
      return { id: `quiet-lap-${i + 1}`, region: own, guide };
    })
    .filter((lap) => regionArea(lap.region) > 0 && pointDistance(lap.guide[0]!, lap.guide[1]!) > 0);
}

/** Everything within a lap's width of a closed line. */
function nearRing(ring: Polyline, reach: Feet): Region {
  const solid = regionFrom([ring], 'non-zero');
  return regionSubtract(regionOffset(solid, reach), regionOffset(solid, -reach));
}
