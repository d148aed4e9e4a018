/** The marker's walk through a round's stakes, in setting order. */
import type { Feet } from '../base/units';
import { pointDistance, pointLerp, type Point } from '../geometry/point';
import type { Stake } from '../stakeout/model';
import { inkLine, inkStroke } from './ink';
import { BLACK, type Mark } from './marks';
import { arrowHead, WALK_DASH } from './symbols';
import type { ViewFrame } from './view-frame';

const ARROW = 4.2;
/** Steps shorter than this on paper get no arrow, points. */
const LEAST_STEP = 12;
/** Where on a step its arrow's tip stands. */
const TIP = 0.6;

/** Feet from the first stake of the round to the last, stake by stake. */
export const walkFt = (rows: readonly Stake[]): Feet =>
  steps(rows.map((stake) => stake.at)).reduce((sum, [a, b]) => sum + pointDistance(a, b), 0);

/** A dotted line from stake to stake, an arrow on every step that is long enough to hold one. */
export function walkMarks(rows: readonly Stake[], frame: ViewFrame): Mark[] {
  const points = rows.map((stake) => frame.toPaper(stake.at));
  if (points.length < 2) return [];
  const arrows = steps(points)
    .filter(([a, b]) => pointDistance(a, b) >= LEAST_STEP)
    .map(([a, b]) => arrowHead(pointLerp(a, b, TIP), b.x - a.x, b.y - a.y, ARROW));
  return [inkLine(points, inkStroke(0.9, BLACK, WALK_DASH)), ...arrows];
}

const steps = (points: readonly Point[]): [Point, Point][] =>
  points.slice(1).map((to, i) => [points[i]!, to]);
