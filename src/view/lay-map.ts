/** Which way the grass leans at a place, once every patch is burned in. */
import Flatbush from 'flatbush';
import { invariant } from '../base/result';
import { unitFromBearing } from '../geometry/angle';
import { boxOfRings } from '../geometry/box';
import { pointScale, type Point } from '../geometry/point';
import type { Design, Lay, Patch } from '../design/model';
import { guideTangent } from './guide-tangent';
import { burnedInLay } from './lay';
import { indexRegion } from '../geometry/region-index';

type LayRule = (p: Point) => Point;

export interface LayMap {
  /** The burned-in lean at `p`, or null off the patches. */
  readonly at: (p: Point) => Point | null;
}

/** Prepares `layMap.at` for the whole design. */
export function mapLays(design: Design): LayMap {
  const places = design.patches.flatMap((patch) => {
    const box = boxOfRings(patch.region);
    return box ? [{ box, index: indexRegion(patch.region), rule: patchLay(design, patch) }] : [];
  });
  if (places.length === 0) return { at: () => null };
  const tree = new Flatbush(places.length);
  for (const { box } of places) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  return {
    at: (p) => {
      const found = tree.search(p.x, p.y, p.x, p.y).find((i) => places[i]!.index.contains(p));
      return found === undefined ? null : places[found]!.rule(p);
    },
  };
}

/**
 * The burned-in lean inside one patch as a function of place: a bearing gives the same lean
 * everywhere, a guide the tangent of the nearest point of the guide. Several lays follow in order.
 */
export function patchLay(design: Design, patch: Patch): LayRule {
  const ordered = [...patch.lays].sort((a, b) => a.order - b.order);
  const rules = ordered.map((lay) => layDirection(design, lay));
  if (patch.lays.every((lay) => 'bearingDeg' in lay)) {
    const constant = burnedInLay(rules.map((rule) => rule({ x: 0, y: 0 })));
    return () => constant;
  }
  return (p) => burnedInLay(rules.map((rule) => rule(p)));
}

/** One burned-in lean to stand for the whole patch: the lay at the start of its outline. */
export function layAtPatch(design: Design, patch: Patch): Point {
  return patchLay(design, patch)(patch.region[0]?.[0] ?? { x: 0, y: 0 });
}

function layDirection(design: Design, lay: Lay): LayRule {
  if ('bearingDeg' in lay) {
    const unit = unitFromBearing(lay.bearingDeg);
    return () => unit;
  }
  const guide = design.guides[lay.guides];
  invariant(guide, `guide ${lay.guides} is not in the design`);
  const sense = lay.sense === 'forward' ? 1 : -1;
  let tangent: ReturnType<typeof guideTangent> | null = null;
  return (p) => {
    tangent ??= guideTangent(guide);
    return pointScale(tangent(p) ?? { x: 0, y: 0 }, sense);
  };
}
