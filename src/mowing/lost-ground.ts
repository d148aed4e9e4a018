/** Passes that fall short of what was laid out, in words: which patches, where, how many feet. */
import { problem, type Problem } from '../base/result';
import type { Feet } from '../base/units';
import type { Design } from '../design/model';
import { placeInWords } from '../field/place-in-words';
import { pointDistance, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { SAME_POINT } from '../geometry/tolerance';

export interface Loss {
  readonly patch: string;
  /** The first point that is not driven. */
  readonly at: Point;
  readonly lostFt: Feet;
}

/** Feet that may be missing before they are worth a word. */
export const LOST_WORTH_NOTING: Feet = 0.5;
const MOST_NAMED = 3;

/** The first point of `line` that is in none of `kept`, its parts in order along it. */
export function firstLost(line: Polyline, kept: readonly Polyline[]): Point {
  const [first] = kept;
  const begun = first && pointDistance(first[0]!, line[0]!) <= SAME_POINT;
  return begun ? first[first.length - 1]! : line[0]!;
}

/** Each patch once, with the first of its places, up to three: `band-07 (212 ft from home, …)`. */
export function lossPlaces(losses: readonly Pick<Loss, 'patch' | 'at'>[]): string {
  const first = new Map<string, Point>();
  for (const { patch, at } of losses) if (!first.has(patch)) first.set(patch, at);
  const named = [...first].slice(0, MOST_NAMED).map(([id, at]) => `${id} (${placeInWords(at)})`);
  const more = first.size - named.length;
  return named.join(', ') + (more > 0 ? ` and ${more} more` : '');
}

/** Warning `pass-trimmed`; border patches are left out, since their laps overlap. */
export function trimmedProblem(
  where: string,
  who: string,
  losses: readonly Loss[],
  design: Design,
): Problem[] {
  const borders = new Set(design.patches.filter((p) => p.kind === 'border').map((p) => p.id));
  const lost = losses.filter((loss) => !borders.has(loss.patch));
  const feet = lost.reduce((n, loss) => n + loss.lostFt, 0);
  if (feet <= LOST_WORTH_NOTING) return [];
  return [
    problem(
      'pass-trimmed',
      where,
      `passes of ${who} are ${Math.round(feet)} ft short in all, to keep off skin, fence and keep-outs: ${lossPlaces(lost)}`,
      'add an edge lap, or trim those ends by hand',
      'warning',
    ),
  ];
}
