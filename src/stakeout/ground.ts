/** Where a stake may stand. */
import type { Field } from '../field/model';
import { pointDistance, type Point } from '../geometry/point';
import { polylineResample, type Ring } from '../geometry/polyline';
import { regionBox, regionContains, type Region } from '../geometry/region';
import type { Box } from '../geometry/box';

interface BoxedRegion {
  readonly region: Region;
  readonly box: Box;
}

export interface StakeGround {
  /** Inside the outfield grass and off every keep-out: outline stakes and pins. */
  readonly mayPin: (p: Point) => boolean;
  /** On any grass and off every keep-out, a foul line's edge included: control stakes. */
  readonly mayControl: (p: Point) => boolean;
  /** Places along the inner edge of the warning track: a stake there is out of the way. */
  readonly trackEdge: readonly Point[];
}

/** A control stake on a line between two grass areas stands on grass if these places round it are. */
const PROBE_FT = 0.1;
const PROBES: readonly Point[] = [
  { x: PROBE_FT, y: 0 },
  { x: -PROBE_FT, y: 0 },
  { x: 0, y: PROBE_FT },
  { x: 0, y: -PROBE_FT },
];

/** Prepares the tests of where stakes may stand on `field`. */
export function stakeGround(field: Field): StakeGround {
  const outfield = boxed([field.outfieldGrass]);
  const keepOuts = boxed(field.keepOuts.map((k) => k.region));
  const grass = boxed([
    field.outfieldGrass,
    ...field.surfaces.filter((s) => s.kind.endsWith('-grass')).map((s) => s.region),
  ]);
  const mayPin = byCells(
    [...field.outfieldGrass, ...field.keepOuts.flatMap((k) => k.region)],
    (p) => inside(outfield, p) && !inside(keepOuts, p),
  );
  const mayControl = (p: Point) =>
    PROBES.every((d) => inside(grass, { x: p.x + d.x, y: p.y + d.y })) && !inside(keepOuts, p);
  return { mayPin, mayControl, trackEdge: trackEdge(field) };
}

/** Every this far along the track's edge, and this far inside it, feet. */
const EDGE_STEP_FT = 15;
const EDGE_INSIDE_FT = 0.25;

function trackEdge(field: Field): Point[] {
  const inward = field.spec.trackWidthFt + EDGE_INSIDE_FT;
  const out: Point[] = [];
  let due = EDGE_STEP_FT / 2;
  field.fenceLine.slice(1).forEach((b, i) => {
    const a = field.fenceLine[i]!;
    const length = pointDistance(a, b);
    // The fence runs from the left pole to the right one: the grass lies on the right hand.
    const n = { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
    for (; due <= length; due += EDGE_STEP_FT) {
      const k = due / length;
      out.push({
        x: a.x + (b.x - a.x) * k + n.x * inward,
        y: a.y + (b.y - a.y) * k + n.y * inward,
      });
    }
    due -= length;
  });
  return out;
}

const CELL_FT = 2;
/** Cells are numbered on a square of this many a side, centred on the origin. */
const SPAN = 1 << 20;
const cellKey = (x: number, y: number): number => (x + SPAN / 2) * SPAN + y + SPAN / 2;

/**
 * The same answer for each place, found once for all places of a square cell that no ring's edge comes
 * near: this is asked hundreds of thousands of times.
 */
function byCells(rings: readonly Ring[], test: (p: Point) => boolean): (p: Point) => boolean {
  const cut = cutCells(rings);
  const known = new Map<number, boolean>();
  return (p) => {
    const key = cellKey(Math.floor(p.x / CELL_FT), Math.floor(p.y / CELL_FT));
    if (cut.has(key)) return test(p);
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = test(p);
    known.set(key, answer);
    return answer;
  };
}

/** The cells that an edge passes through, and those round them. */
function cutCells(rings: readonly Ring[]): Set<number> {
  const cut = new Set<number>();
  for (const ring of rings) {
    for (const p of polylineResample(ring, CELL_FT / 2, true)) {
      const [x, y] = [Math.floor(p.x / CELL_FT), Math.floor(p.y / CELL_FT)];
      for (let i = -1; i <= 1; i++) for (let j = -1; j <= 1; j++) cut.add(cellKey(x + i, y + j));
    }
  }
  return cut;
}

const boxed = (regions: readonly Region[]): BoxedRegion[] =>
  regions.flatMap((region) => {
    const box = regionBox(region);
    return box ? [{ region, box }] : [];
  });

const inside = (regions: readonly BoxedRegion[], p: Point): boolean =>
  regions.some(
    ({ region, box }) =>
      p.x >= box.minX &&
      p.x <= box.maxX &&
      p.y >= box.minY &&
      p.y <= box.maxY &&
      regionContains(region, p),
  );
