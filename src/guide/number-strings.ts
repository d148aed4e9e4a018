/** Strings and their end stakes with their printed numbers and readings. */
import { roundReading, type LengthSystem, type Reading } from '../base/quantity';
import { pointDistance } from '../geometry/point';
import { edgePoint, type EdgeCrossing, type GrassEdge } from './grass-edges';
import type { LaidString } from './lay-strings';
import type { GuideStake, GuideString } from './model';

export interface UnnumberedString {
  readonly letter: string;
  readonly string: LaidString;
}

/** S1, S2 … family by family from left to right; G1 and G2 at the ends of S1, and so on. */
export function numberStrings(
  edges: readonly GrassEdge[],
  laid: readonly UnnumberedString[],
  keep: Reading,
  system: LengthSystem,
): GuideString[] {
  return laid.map(({ letter, string }, i) => {
    const stake = (n: number, end: EdgeCrossing) => guideStake(edges, `G${n}`, end, system);
    const [from, to] = [stake(2 * i + 1, string.from), stake(2 * i + 2, string.to)];
    return {
      id: `S${i + 1}`,
      family: letter,
      patches: [...new Set(string.pieces.map((p) => p.patch))],
      middle: string.pieces[0]!.from,
      bearingDeg: string.bearingDeg,
      from,
      to,
      side: string.side,
      middleFt: keep,
      lengthFt: pointDistance(from.at, to.at),
    };
  });
}

function guideStake(
  edges: readonly GrassEdge[],
  id: string,
  { edge, alongFt }: EdgeCrossing,
  system: LengthSystem,
): GuideStake {
  const along = roundReading(alongFt, system);
  const own = edges.find((one) => one.name === edge)!;
  return { id, edge, along, at: edgePoint(own, along.ft) };
}
