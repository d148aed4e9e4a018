/** The tone in which a pass of the pattern is drawn as it is driven: the plan's, mowing by mowing. */
import type { Design, Lay } from '../../design/model';
import { bearingDifference, vectorBearing } from '../../geometry/angle';
import { pointSubtract } from '../../geometry/point';
import type { Leg } from '../../mowing/model';
import { PASS_WEIGHT } from '../../view/lay';
import { laySide } from '../../view/patch-shade';

export interface Tone {
  /** −1 dark to 1 light. */
  readonly shade: number;
  /** How much of what lies under it is covered, 0 to 1. */
  readonly over: number;
}

/** A leg within this of a lay's bearing is that lay's mowing, degrees. */
const SAME_LAY_DEG = 20;

/** For every leg that mows the pattern, its tone; null for the others. */
export function patternTones(design: Design): (leg: Leg) => Tone | null {
  const patches = new Map(design.patches.map((p) => [p.id, p]));
  return (leg) => {
    const patch = leg.kind === 'mow' && leg.patch !== null ? patches.get(leg.patch) : undefined;
    if (patch?.kind !== 'background') return null;
    const lays = [...patch.lays].sort((a, b) => a.order - b.order);
    const index = lays.findIndex((lay) => isLaidBy(lay, leg));
    if (index < 0) return null;
    return { shade: laySide(lays[index]!), over: index === 0 ? 1 : PASS_WEIGHT.value };
  };
}

function isLaidBy(lay: Lay, leg: Leg): boolean {
  if (!('bearingDeg' in lay)) return true;
  const driven = vectorBearing(pointSubtract(leg.points.at(-1)!, leg.points[0]!));
  return bearingDifference(driven, lay.bearingDeg) <= SAME_LAY_DEG;
}
