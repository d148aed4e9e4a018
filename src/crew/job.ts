/** The lists on this phone joined to one job, every stake with its place. */
import type { Point } from '../geometry/point';
import { placeStake, type CrewLine, type CrewList, type CrewStake } from '../exchange/crew-data';

export interface CrewSource {
  /** In setting order; rounds that were not opened yet are missing. */
  readonly lists: readonly CrewList[];
  /** The outline, for the picture; empty when only codes were opened. */
  readonly lines: readonly CrewLine[];
  /** What the tape touches at a control, by its id. */
  readonly touches: Readonly<Record<string, string>>;
  readonly name: string;
}

export interface PlacedStake {
  readonly stake: CrewStake;
  readonly list: CrewList;
}

export interface Job {
  readonly source: CrewSource;
  readonly plan: string;
  readonly stakes: readonly PlacedStake[];
  /** Places of all controls and stakes known here, tape steps. */
  readonly at: ReadonlyMap<string, Point>;
  readonly rounds: readonly CrewList[];
}

/** Null when there is no list at all. */
export function joinJob(source: CrewSource): Job | null {
  const first = source.lists[0];
  if (!first) return null;
  const at = new Map<string, Point>();
  const stakes = source.lists.flatMap((list) => {
    for (const { id, x, y } of list.points) if (!at.has(id)) at.set(id, { x, y });
    return list.stakes.map((stake) => {
      const place = placeStake(stake, at);
      if (place) at.set(stake.id, place);
      return { stake, list };
    });
  });
  const rounds = source.lists.filter(
    (l, i, all) => all.findIndex((k) => k.round === l.round) === i,
  );
  return { source, plan: first.plan, stakes, at, rounds };
}

export const roundStakes = (job: Job, round: number): readonly PlacedStake[] =>
  job.stakes.filter((s) => s.list.round === round);

/** Parts of a round that were not opened yet. */
export const missingParts = (job: Job, round: number): number => {
  const parts = job.source.lists.filter((l) => l.round === round);
  return (parts[0]?.parts ?? 1) - parts.length;
};
