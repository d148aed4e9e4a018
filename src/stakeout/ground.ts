/** Where a stake may stand. */
import type { Field } from '../field/model';
import type { Point } from '../geometry/point';
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
  const mayPin = (p: Point) => inside(outfield, p) && !inside(keepOuts, p);
  const mayControl = (p: Point) =>
    PROBES.every((d) => inside(grass, { x: p.x + d.x, y: p.y + d.y })) && !inside(keepOuts, p);
  return { mayPin, mayControl };
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
