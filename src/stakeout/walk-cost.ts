/**
 * Seconds between setting one stake and the next, handling left out: the marker walks while the tape
 * holders, when the pair of controls changes, walk to theirs and hook on again.
 */
import type { Feet, Seconds } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import type { StakeoutSpec, TapeNumber } from './model';

/** Walking over grass with a tape in hand; assumption. */
export const WALK_FT_PER_S = 4;
/** Finding a control, hooking the tape and signing ready; assumption. */
export const HOOK_SECONDS: Seconds = 20;

/** Where one tape is held. */
export interface Holder {
  readonly id: string;
  readonly at: Point;
  /** Absent when both tapes are of one kind. */
  readonly tape?: TapeNumber;
}

/** Where both tapes are held. */
export type Hold = readonly [Holder, Holder];

/** Seconds to walk from one place to another. */
export const walkSeconds = (from: Point, to: Point): Seconds =>
  pointDistance(from, to) / WALK_FT_PER_S;

/** Both tapes at the same two controls. */
export const sameHold = (p: Hold, q: Hold): boolean =>
  matchings(p, q).some((m) => m.every(([from, to]) => from.id === to.id));

type Move = readonly [Holder, Holder];

/** Who goes where: either holder to either control, each with the tape that is wanted there. */
const matchings = (p: Hold, q: Hold): (readonly [Move, Move])[] =>
  [
    [
      [p[0], q[0]],
      [p[1], q[1]],
    ] as const,
    [
      [p[0], q[1]],
      [p[1], q[0]],
    ] as const,
  ].filter((m) => m.every(([from, to]) => mayGo(from, to)));

/** A holder of whom no tape is said takes the one that is wanted. */
const mayGo = (from: Holder, to: Holder): boolean =>
  from.tape === undefined || to.tape === undefined || from.tape === to.tape;

/**
 * Seconds from stake to stake with the tapes at `p` and then at `q`. Three or four people: both
 * holders move while the marker walks. Two: one holds a tape, the other tape's end is hooked on a pin
 * at its control, and the marker goes there to move it.
 */
export function stepSeconds(
  from: Point,
  to: Point,
  p: Hold,
  q: Hold,
  crew: StakeoutSpec['crew'],
): Seconds {
  const walk = walkSeconds(from, to);
  if (sameHold(p, q)) return walk;
  const moves = matchings(p, q).map(([one, two]) =>
    crew === 2
      ? Math.min(hookSeconds(from, to, one, two), hookSeconds(from, to, two, one))
      : Math.max(holderSeconds(one), holderSeconds(two)),
  );
  return Math.max(walk, Math.min(...moves));
}

const holderSeconds = ([from, to]: Move): Seconds =>
  from.id === to.id ? 0 : walkSeconds(from.at, to.at) + HOOK_SECONDS;

/** The marker moves the hooked end while the one holder moves himself. */
function hookSeconds(from: Point, to: Point, hooked: Move, held: Move): Seconds {
  const marker =
    hooked[0].id === hooked[1].id
      ? walkSeconds(from, to)
      : walkSeconds(from, hooked[0].at) + holderSeconds(hooked) + walkSeconds(hooked[1].at, to);
  return Math.max(marker, holderSeconds(held));
}

/** The length of a walk through places in order. */
export const walkFt = (places: readonly Point[]): Feet =>
  places.slice(1).reduce((sum, p, i) => sum + pointDistance(places[i]!, p), 0);
