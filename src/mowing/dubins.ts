/**
 * Turns of a machine with a smallest turning circle: Dubins' six words (L. E. Dubins, American
 * Journal of Mathematics 79, 1957) and the three-point turn, which is LSL or RSR with its straight
 * driven in reverse. One radius, feet; angles in radians.
 */
import { keepLong, straight, turnBetween, type Pose, type Stretch } from './drive';

export type Word = 'LSL' | 'RSR' | 'LSR' | 'RSL' | 'LRL' | 'RLR' | 'L-back-L' | 'R-back-R';

/** Lengths of the three stretches, feet, and which way they go. */
export interface Turn {
  readonly word: Word;
  readonly first: number;
  readonly middle: number;
  readonly last: number;
  readonly lengthFt: number;
  /** True when the middle is backed. */
  readonly backs: boolean;
}

/** Every Dubins word that joins the poses, in no particular order; three-point turns on request. */
export function findTurns(from: Pose, to: Pose, radius: number, mayReverse: boolean): Turn[] {
  const turns: Turn[] = [];
  for (const side of SIDES) {
    turns.push(sameSide(from, to, radius, side, false));
    const cross = crossSide(from, to, radius, side);
    if (cross) turns.push(cross);
    for (const bend of SIDES) {
      const arcs = threeArcs(from, to, radius, side, bend);
      if (arcs) turns.push(arcs);
    }
    if (mayReverse) turns.push(sameSide(from, to, radius, side, true));
  }
  return turns;
}

/** The shortest way of going forward only from pose to pose. */
export function shortestTurn(from: Pose, to: Pose, radius: number): Turn {
  return findTurns(from, to, radius, false).reduce((best, turn) =>
    turn.lengthFt < best.lengthFt ? turn : best,
  );
}

/** The turn as driven stretches, those of no length left out. */
export function turnStretches(turn: Turn, radius: number): Stretch[] {
  const middle = turn.word[1] === 'S' || turn.backs;
  return keepLong([
    arc(turn.word[0], turn.first, radius),
    middle ? straight(turn.middle, turn.backs ? -1 : 1) : arc(turn.word[1], turn.middle, radius),
    arc(turn.word[turn.word.length - 1], turn.last, radius),
  ]);
}

const arc = (side: string | undefined, lengthFt: number, radius: number): Stretch => ({
  curvature: (side === 'L' ? 1 : -1) / radius,
  lengthFt,
  gear: 1,
});

const SIDES: readonly (1 | -1)[] = [1, -1];

function makeTurn(word: Word, first: number, middle: number, last: number, backs = false): Turn {
  return { word, first, middle, last, lengthFt: first + middle + last, backs };
}

/** Centre of the circle that the pose turns about, `side` +1 left, −1 right. */
const centreX = (pose: Pose, radius: number, side: number): number =>
  pose.x - side * radius * Math.sin(pose.heading);
const centreY = (pose: Pose, radius: number, side: number): number =>
  pose.y + side * radius * Math.cos(pose.heading);

/** Same side at both ends: outer tangent; `backs` drives it in reverse (three-point turn). */
function sameSide(from: Pose, to: Pose, radius: number, side: 1 | -1, backs: boolean): Turn {
  const dx = centreX(to, radius, side) - centreX(from, radius, side);
  const dy = centreY(to, radius, side) - centreY(from, radius, side);
  const along = Math.atan2(dy, dx) + (backs ? Math.PI : 0);
  const name = side === 1 ? (backs ? 'L-back-L' : 'LSL') : backs ? 'R-back-R' : 'RSR';
  return makeTurn(
    name,
    turnBetween(from.heading, along, side) * radius,
    Math.hypot(dx, dy),
    turnBetween(along, to.heading, side) * radius,
    backs,
  );
}

/** Opposite sides: inner tangent; null when the circles overlap. */
function crossSide(from: Pose, to: Pose, radius: number, side: 1 | -1): Turn | null {
  const other = side === 1 ? -1 : 1;
  const dx = centreX(to, radius, other) - centreX(from, radius, side);
  const dy = centreY(to, radius, other) - centreY(from, radius, side);
  const apart = Math.hypot(dx, dy);
  if (apart < 2 * radius) return null;
  const along = Math.atan2(dy, dx) + side * Math.asin((2 * radius) / apart);
  return makeTurn(
    side === 1 ? 'LSR' : 'RSL',
    turnBetween(from.heading, along, side) * radius,
    Math.sqrt(Math.max(0, apart * apart - 4 * radius * radius)),
    turnBetween(along, to.heading, other) * radius,
  );
}

/** Three arcs; `bend` chooses which of the two middle circles. Null when the ends are too far. */
function threeArcs(from: Pose, to: Pose, radius: number, side: 1 | -1, bend: 1 | -1): Turn | null {
  const dx = centreX(to, radius, side) - centreX(from, radius, side);
  const dy = centreY(to, radius, side) - centreY(from, radius, side);
  const apart = Math.hypot(dx, dy);
  if (apart > 4 * radius || apart === 0) return null;
  const toMiddle = Math.atan2(dy, dx) + bend * Math.acos(apart / (4 * radius));
  const x = 2 * radius * Math.cos(toMiddle) - dx;
  const y = 2 * radius * Math.sin(toMiddle) - dy;
  const fromEnd = Math.atan2(y, x);
  const quarter = (side * Math.PI) / 2;
  const other = side === 1 ? -1 : 1;
  return makeTurn(
    side === 1 ? 'LRL' : 'RLR',
    turnBetween(from.heading, toMiddle + quarter, side) * radius,
    turnBetween(toMiddle, fromEnd, other) * radius,
    turnBetween(fromEnd + quarter, to.heading, side) * radius,
  );
}
