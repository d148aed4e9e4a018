/**
 * Turns of a machine with a smallest turning circle: Dubins' six words (L. E. Dubins, American
 * Journal of Mathematics 79, 1957) and the three-point turn, which is LSL or RSR with its straight
 * driven in reverse. One radius, feet; angles in radians.
 */
import { keepLong, straight, turnBetween, type Pose, type Stretch } from './drive';

export type Word = 'LSL' | 'RSR' | 'LSR' | 'RSL' | 'LRL' | 'RLR' | 'L-back-L' | 'R-back-R';

export interface Turn {
  readonly word: Word;
  readonly stretches: readonly Stretch[];
  readonly lengthFt: number;
}

interface Centre {
  readonly x: number;
  readonly y: number;
}

/** Centre of the circle that the pose turns about, `side` +1 left, −1 right. */
const centreOf = (pose: Pose, radius: number, side: 1 | -1): Centre => ({
  x: pose.x - side * radius * Math.sin(pose.heading),
  y: pose.y + side * radius * Math.cos(pose.heading),
});

function makeTurn(word: Word, stretches: readonly Stretch[]): Turn {
  const kept = keepLong(stretches);
  return { word, stretches: kept, lengthFt: kept.reduce((n, s) => n + s.lengthFt, 0) };
}

const arc = (turn: number, radius: number, side: 1 | -1): Stretch => ({
  curvature: side / radius,
  lengthFt: turn * radius,
  gear: 1,
});

/** Same side at both ends: outer tangent; `back` drives it in reverse (three-point turn). */
function sameSide(from: Pose, to: Pose, radius: number, side: 1 | -1, back: boolean): Turn {
  const c1 = centreOf(from, radius, side);
  const c2 = centreOf(to, radius, side);
  const along = Math.atan2(c2.y - c1.y, c2.x - c1.x) + (back ? Math.PI : 0);
  const name = side === 1 ? (back ? 'L-back-L' : 'LSL') : back ? 'R-back-R' : 'RSR';
  return makeTurn(name, [
    arc(turnBetween(from.heading, along, side), radius, side),
    straight(Math.hypot(c2.x - c1.x, c2.y - c1.y), back ? -1 : 1),
    arc(turnBetween(along, to.heading, side), radius, side),
  ]);
}

/** Opposite sides: inner tangent; null when the circles overlap. */
function crossSide(from: Pose, to: Pose, radius: number, side: 1 | -1): Turn | null {
  const other = side === 1 ? -1 : 1;
  const c1 = centreOf(from, radius, side);
  const c2 = centreOf(to, radius, other);
  const apart = Math.hypot(c2.x - c1.x, c2.y - c1.y);
  if (apart < 2 * radius) return null;
  const along = Math.atan2(c2.y - c1.y, c2.x - c1.x) + side * Math.asin((2 * radius) / apart);
  return makeTurn(side === 1 ? 'LSR' : 'RSL', [
    arc(turnBetween(from.heading, along, side), radius, side),
    straight(Math.sqrt(Math.max(0, apart * apart - 4 * radius * radius))),
    arc(turnBetween(along, to.heading, other), radius, other),
  ]);
}

/** Three arcs; `bend` chooses which of the two middle circles. Null when the ends are too far. */
function threeArcs(from: Pose, to: Pose, radius: number, side: 1 | -1, bend: 1 | -1): Turn | null {
  const other = side === 1 ? -1 : 1;
  const c1 = centreOf(from, radius, side);
  const c3 = centreOf(to, radius, side);
  const apart = Math.hypot(c3.x - c1.x, c3.y - c1.y);
  if (apart > 4 * radius || apart === 0) return null;
  const toMiddle = Math.atan2(c3.y - c1.y, c3.x - c1.x) + bend * Math.acos(apart / (4 * radius));
  const middle = {
    x: c1.x + 2 * radius * Math.cos(toMiddle),
    y: c1.y + 2 * radius * Math.sin(toMiddle),
  };
  const fromEnd = Math.atan2(middle.y - c3.y, middle.x - c3.x);
  const quarter = (side * Math.PI) / 2;
  return makeTurn(side === 1 ? 'LRL' : 'RLR', [
    arc(turnBetween(from.heading, toMiddle + quarter, side), radius, side),
    arc(turnBetween(toMiddle, fromEnd, other), radius, other),
    arc(turnBetween(fromEnd + quarter, to.heading, side), radius, side),
  ]);
}

/** Every Dubins word that joins the poses, in no particular order; three-point turns on request. */
export function findTurns(from: Pose, to: Pose, radius: number, mayReverse: boolean): Turn[] {
  const turns: (Turn | null)[] = [];
  for (const side of [1, -1] as const) {
    turns.push(sameSide(from, to, radius, side, false), crossSide(from, to, radius, side));
    turns.push(threeArcs(from, to, radius, side, 1), threeArcs(from, to, radius, side, -1));
    if (mayReverse) turns.push(sameSide(from, to, radius, side, true));
  }
  return turns.filter((turn) => turn !== null);
}

/** The shortest way of going forward only from pose to pose. */
export function shortestTurn(from: Pose, to: Pose, radius: number): Turn {
  return findTurns(from, to, radius, false).reduce((best, turn) =>
    turn.lengthFt < best.lengthFt ? turn : best,
  );
}
