/** What each stage's drawing shows when it is fitted to the window. */
import { boxGrow, boxOfPoints, type Box } from '../../geometry/box';
import { regionBox } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import type { Stage } from '../state/view.svelte';
import type { Scene } from './scene';
import { fitBox, type Margins, type Size, type Viewport } from './viewport';

const OPEN: Margins = { top: 46, right: 30, bottom: 26, left: 30 };
const STAKES: Margins = { top: 40, right: 40, bottom: 96, left: 40 };

/** The fan from plate to fence, without the foul ground behind. */
function fanBox(plan: Plan): Box {
  const { field } = plan;
  const points = [...field.fenceLine, { x: 0, y: -14 }];
  return boxOfPoints(points) ?? { minX: -240, minY: -14, maxX: 240, maxY: 400 };
}

export function stakesBox(plan: Plan): Box | null {
  const stakes = plan.stakes;
  if (!stakes) return null;
  const box = boxOfPoints(stakes.stakes.map((s) => s.at));
  const art = regionBox(plan.design.graphic);
  if (!box || !art) return box;
  return boxGrow(
    {
      minX: Math.min(box.minX, art.minX),
      minY: Math.min(box.minY, art.minY),
      maxX: Math.max(box.maxX, art.maxX),
      maxY: Math.max(box.maxY, art.maxY),
    },
    4,
  );
}

export function fitted(stage: Stage, plan: Plan, scene: Scene, size: Size): Viewport | null {
  if (size.width === 0 || size.height === 0) return null;
  const stakes = stage === 'stakes' ? stakesBox(plan) : null;
  if (stakes) return fitBox(stakes, size, STAKES);
  if (stage === 'ground') return fitBox(boxGrow(scene.box, 6), size, OPEN);
  return fitBox(fanBox(plan), size, OPEN);
}
