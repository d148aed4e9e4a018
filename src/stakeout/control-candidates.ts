/** Places where the crew might set a control stake. */
import type { Control } from '../field/model';
import { pointDistance, pointSubtract, vectorCross, type Point } from '../geometry/point';
import { boxOfPoints } from '../geometry/box';
import { PLANNED_CONTROL_SPACING_FT } from './limits';
import { spacingIndex, spacingAdd, spacingNear } from './spacing';
import type { StakeGround } from './ground';

/** Spacing of candidates along a line through two controls, and of the grid over the grass. */
const LINE_STEP_FT = 10;
const GRID_STEP_FT = 25;
const GRID_STEP_FAR_FT = 35;
/** Candidates farther than this from every stake are of no use with any tape of that length. */
const SPARE_REACH_FT = 60;

/**
 * Candidates where a stake is in nobody's way: on the lines through home plate and each other fixed
 * control (the foul lines and the centre line), out to `limitFt` beyond it, and along the track's
 * edge.
 */
export function handyCandidates(
  controls: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  limitFt: number,
): Point[] {
  const home = controls.find((c) => c.id === 'HP') ?? controls[0];
  if (!home) return [];
  const out: Point[] = [...ground.trackEdge];
  for (const other of distinctLines(home, controls)) {
    const length = pointDistance(home.at, other.at);
    const e = pointSubtract(other.at, home.at);
    for (let s = LINE_STEP_FT; s <= length + limitFt; s += LINE_STEP_FT) {
      out.push({ x: home.at.x + (e.x * s) / length, y: home.at.y + (e.y * s) / length });
    }
  }
  return usable(out, stakes, ground);
}

/** One control per line through home. */
function distinctLines(home: Control, controls: readonly Control[]): Control[] {
  const out: Control[] = [];
  for (const c of controls) {
    const d = pointSubtract(c.at, home.at);
    const length = Math.hypot(d.x, d.y);
    if (!(length > 0)) continue;
    const known = out.some((o) => {
      const e = pointSubtract(o.at, home.at);
      return Math.abs(vectorCross(d, e)) < 0.05 * Math.hypot(e.x, e.y);
    });
    if (!known) out.push(c);
  }
  return out;
}

/** Candidates on a square grid over the box of the stakes and the controls. */
export function gridCandidates(
  controls: readonly Control[],
  stakes: readonly Point[],
  ground: StakeGround,
  limitFt: number,
): Point[] {
  const box = boxOfPoints([...controls.map((c) => c.at), ...stakes]);
  if (!box) return [];
  const out: Point[] = [];
  const step = Math.min(GRID_STEP_FAR_FT, Math.max(GRID_STEP_FT, limitFt / 6));
  const grow = Math.min(limitFt / 2, SPARE_REACH_FT);
  for (let x = box.minX - grow; x <= box.maxX + grow; x += step) {
    for (let y = box.minY - grow; y <= box.maxY + grow; y += step) {
      out.push({ x: Math.round(x), y: Math.round(y) });
    }
  }
  return usable(out, stakes, ground);
}

/** On grass, and clear of every stake. */
function usable(places: readonly Point[], stakes: readonly Point[], ground: StakeGround): Point[] {
  const near = spacingIndex<null>(PLANNED_CONTROL_SPACING_FT);
  for (const s of stakes) spacingAdd(near, s, null);
  return places.filter((p) => ground.mayControl(p) && spacingNear(near, p).length === 0);
}
