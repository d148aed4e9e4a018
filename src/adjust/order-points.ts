/**
 * Order of a network's points in which the factor of its normal equations has short rows: reverse
 * Cuthill-McKee (Cuthill & McKee 1969; George 1971), points of very many readings last.
 */
import { readingPoints } from './check-network';
import type { NetworkReading } from './network-model';

/** More readings than this and a point joins places that lie far apart. */
const BUSY = 20;

/** The ids in the order in which to number them. */
export function orderPoints(ids: readonly string[], readings: readonly NetworkReading[]): string[] {
  const busy = busyPoints(readings);
  const order = breadthFirst(
    neighbours(
      ids.filter((id) => !busy.has(id)),
      readings,
    ),
  );
  return [...order.reverse(), ...ids.filter((id) => busy.has(id))];
}

function busyPoints(readings: readonly NetworkReading[]): ReadonlySet<string> {
  const count = new Map<string, number>();
  for (const id of readings.flatMap(readingPoints)) count.set(id, (count.get(id) ?? 0) + 1);
  return new Set([...count].filter(([, n]) => n > BUSY).map(([id]) => id));
}

type Graph = ReadonlyMap<string, Set<string>>;

function neighbours(ids: readonly string[], readings: readonly NetworkReading[]): Graph {
  const graph = new Map(ids.map((id) => [id, new Set<string>()]));
  for (const reading of readings) {
    const joined = readingPoints(reading).filter((id) => graph.has(id));
    for (const a of joined) for (const b of joined) if (a !== b) graph.get(a)!.add(b);
  }
  return graph;
}

/** Every part of the graph from a point of few neighbours, neighbours of few neighbours first. */
function breadthFirst(graph: Graph): string[] {
  const fewFirst = (ids: Iterable<string>): string[] =>
    [...ids].sort((a, b) => graph.get(a)!.size - graph.get(b)!.size);
  const order = new Set<string>();
  for (const start of fewFirst(graph.keys())) {
    if (order.has(start)) continue;
    order.add(start);
    // A set is walked through to its end while it grows.
    for (const id of order) for (const next of fewFirst(graph.get(id)!)) order.add(next);
  }
  return [...order];
}
