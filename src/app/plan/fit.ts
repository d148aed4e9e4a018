/** What each stage's drawing shows when it is fitted to the window. */
import { boxGrow, boxHeight, boxOfPoints, boxWidth, type Box } from '../../geometry/box';
import { regionBox } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import type { Stage } from '../state/stages';
import { heldAt, namedPoints } from './draw-stakes';
import { setOf } from './pass-sets';
import type { Scene } from './scene';
import { fitBox, type Margins, type Size, type Viewport } from './viewport';

const OPEN: Margins = { top: 46, right: 30, bottom: 26, left: 30 };
/** Room for the poles' figures beside the fence. */
const GROUND: Margins = { ...OPEN, left: 84, right: 84 };
const STAKES: Margins = { top: 120, right: 44, bottom: 110, left: 44 };

/** The fan from plate to fence, without the foul ground behind. */
function fanBox(plan: Plan): Box {
  const { field } = plan;
  const points = [...field.fenceLine, { x: 0, y: -14 }];
  return boxOfPoints(points) ?? { minX: -240, minY: -14, maxX: 240, maxY: 400 };
}

/** The graphic with room for its numbers; the controls may lie outside. */
function graphicBox(plan: Plan): Box | null {
  const art = regionBox(plan.design.graphic);
  return plan.stakes && art ? boxGrow(art, 6) : null;
}

/** The stake in hand with both its controls, or every stake and control without one. */
export function tapesViewport(plan: Plan, stake: string | null, size: Size): Viewport | null {
  if (!plan.stakes) return null;
  const points = namedPoints(plan.stakes);
  const hand = plan.stakes.stakes.find((s) => s.id === stake);
  const wanted = hand
    ? [hand.at, ...heldAt(hand).flatMap((id) => points.get(id) ?? [])]
    : plan.stakes.stakes.map((s) => s.at);
  const box = boxOfPoints(wanted);
  return box && fitBox(boxGrow(box, 8), size, STAKES);
}

/** The set of passes, when it lies close together: quiet ground, graphic, edge. */
function passesBox(plan: Plan, passSet: string | null): Box | null {
  const set = setOf(plan, passSet);
  const box = set && boxOfPoints(set.passes.flatMap((p) => p.line));
  if (!box || boxWidth(box) > 260 || boxHeight(box) > 200) return null;
  return boxGrow(box, 14);
}

export function fitted(
  stage: Stage,
  plan: Plan,
  scene: Scene,
  size: Size,
  /** The set that is drawn; `drive` for the whole visit. */
  passes: { readonly set: string | null } | 'drive',
): Viewport | null {
  if (size.width === 0 || size.height === 0) return null;
  const stakes = stage === 'stakes' ? graphicBox(plan) : null;
  if (stakes) return fitBox(stakes, size, STAKES);
  const set = stage === 'passes' && passes !== 'drive' ? passesBox(plan, passes.set) : null;
  if (set) return fitBox(set, size, STAKES);
  if (stage === 'ground') return fitBox(boxGrow(scene.box, 6), size, GROUND);
  return fitBox(fanBox(plan), size, OPEN);
}
