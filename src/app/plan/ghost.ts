/** The graphic as now placed, moved from where the last plan had it, until a newer plan is made. */
import {
  affineApply,
  affineCompose,
  affineRotate,
  affineScale,
  affineTranslate,
  type Affine,
} from '../../geometry/affine';
import type { Placement } from '../../art/model';
import { degrees } from '../../base/units';
import { boxOfRings } from '../../geometry/box';
import type { Region } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import type { Project } from '../../project/model';

/** From a unit-width box about the origin to the placed box. */
function placementMap(p: Placement): Affine {
  const turned = affineCompose(affineRotate(degrees(p.rotationDeg)), affineScale(p.widthFt));
  return affineCompose(affineTranslate(p.centre.x, p.centre.y), turned);
}

function placementUnmap(p: Placement): Affine {
  const back = affineTranslate(-p.centre.x, -p.centre.y);
  const straight = affineCompose(affineScale(1 / p.widthFt), affineRotate(degrees(-p.rotationDeg)));
  return affineCompose(straight, back);
}

/** The map from the plan's graphic to the project's placement; null when they agree. */
export function ghostMap(plan: Plan, project: Project): Affine | null {
  const was = plan.project.art?.placement;
  const now = project.art?.placement;
  if (!was || !now) return null;
  const same =
    was.centre.x === now.centre.x &&
    was.centre.y === now.centre.y &&
    was.widthFt === now.widthFt &&
    was.rotationDeg === now.rotationDeg;
  return same ? null : affineCompose(placementMap(now), placementUnmap(was));
}

export function moveRegion(region: Region, map: Affine | null): Region {
  return map === null ? region : region.map((ring) => ring.map((p) => affineApply(map, p)));
}

export interface Frame {
  readonly placement: Placement;
  readonly heightFt: number;
}

/** The art's box as now placed: its placement and its height before rotation. */
export function graphicFrame(plan: Plan, project: Project): Frame | null {
  const was = plan.project.art?.placement;
  const now = project.art?.placement;
  if (!was || !now || plan.design.graphic.length === 0) return null;
  const box = boxOfRings(moveRegion(plan.design.graphic, placementUnmap(was)));
  if (!box) return null;
  return { placement: now, heightFt: (box.maxY - box.minY) * now.widthFt };
}

/** Field points of the frame: corner and side handles, by sign of x and y about the centre. */
export function framePoint(frame: Frame, sx: number, sy: number): { x: number; y: number } {
  const { centre, widthFt, rotationDeg } = frame.placement;
  const map = affineCompose(
    affineTranslate(centre.x, centre.y),
    affineRotate(degrees(rotationDeg)),
  );
  return affineApply(map, { x: (sx * widthFt) / 2, y: (sy * frame.heightFt) / 2 });
}
