/** The marker's walk over the printed stakes: how long it is, and how much shorter any could be. */
import type { Point } from '../geometry/point';
import type { Control } from '../field/model';
import type { SetMethod, Stake, StakeoutSpec, StakeWalk } from './model';
import { walkBound } from './one-tree';
import { walkTask } from './order-stakes';
import { isShort, methodControls } from './ties';
import { sameHold, stepSeconds, walkFt, walkSeconds, type Hold } from './walk-cost';

/** From the last control stake on, or from the first stake where none is set. */
export function measureWalk(
  controls: readonly Control[],
  stakes: readonly Stake[],
  crew: StakeoutSpec['crew'],
): StakeWalk {
  const at = new Map(controls.map((c) => [c.id, c.at]));
  const first = stakes.findIndex((s) => s.kind !== 'control');
  const path = first < 0 ? [] : stakes.slice(Math.max(0, first - 1));
  const tied = path
    .filter((s) => !isShort(s.set))
    .map((s) => ({ at: s.at, hold: holdOf(s.set, at) }));
  const short = path.filter((s) => isShort(s.set)).map((s) => s.at);
  const seconds = tiedSeconds(tied, crew) + shortSeconds(short, tied[tied.length - 1]?.at);
  const boundSeconds =
    walkBound(tiedTask(tied, crew), tiedSeconds(tied, crew)) +
    walkBound(shortTask(short), shortSeconds(short, undefined));
  return {
    ft: walkFt(path.map((s) => s.at)),
    changes: tied.slice(1).filter((t, i) => !sameHold(tied[i]!.hold, t.hold)).length,
    seconds,
    boundSeconds,
  };
}

interface Held {
  readonly at: Point;
  readonly hold: Hold;
}

/** On a line the other holder has the other tape. */
function holdOf(set: SetMethod, at: ReadonlyMap<string, Point>): Hold {
  const [a, b] = methodControls(set);
  const first = set.method === 'ties' || set.method === 'line' ? set.tie1.tape : undefined;
  const tapes = first === undefined ? [{}, {}] : [{ tape: first }, { tape: first === 1 ? 2 : 1 }];
  return [
    { id: a, at: at.get(a)!, ...tapes[0] },
    { id: b, at: at.get(b)!, ...tapes[1] },
  ] as Hold;
}

const tiedSeconds = (tied: readonly Held[], crew: StakeoutSpec['crew']): number =>
  tied
    .slice(1)
    .reduce((sum, t, i) => sum + stepSeconds(tied[i]!.at, t.at, tied[i]!.hold, t.hold, crew), 0);

const shortSeconds = (short: readonly Point[], from: Point | undefined): number =>
  short.reduce((sum, p, i) => {
    const before = i === 0 ? from : short[i - 1];
    return before ? sum + walkSeconds(before, p) : sum;
  }, 0);

/** The first tied stake is the start. */
const tiedTask = (tied: readonly Held[], crew: StakeoutSpec['crew']) => {
  const step = (i: number, j: number): number =>
    stepSeconds(tied[i]!.at, tied[j]!.at, tied[i]!.hold, tied[j]!.hold, crew);
  const count = Math.max(0, tied.length - 1);
  return walkTask(
    count,
    (i) => step(0, i + 1),
    (i, j) => step(i + 1, j + 1),
  );
};

/** The first short stake is any of them: the way to it costs nothing. */
const shortTask = (short: readonly Point[]) =>
  walkTask(
    short.length,
    () => 0,
    (i, j) => walkSeconds(short[i]!, short[j]!),
  );
