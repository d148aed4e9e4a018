/** A closed tour as an array in which two neighbouring runs of nodes can change places. */

/** Two runs that change places: the first begins at a position and is followed by the second. */
export interface Exchange {
  readonly at: number;
  readonly first: number;
  readonly second: number;
}

export interface SegmentTour {
  readonly nodes: Int32Array;
  /** Position of each node. */
  readonly position: Int32Array;
  readonly spare: Int32Array;
}

export function segmentTour(order: ArrayLike<number>): SegmentTour {
  const nodes = Int32Array.from(order);
  const position = new Int32Array(nodes.length);
  nodes.forEach((node, i) => (position[node] = i));
  return { nodes, position, spare: new Int32Array(nodes.length) };
}

export function nodeAfter({ nodes, position }: SegmentTour, node: number): number {
  const i = position[node]! + 1;
  return nodes[i === nodes.length ? 0 : i]!;
}

export function nodeBefore({ nodes, position }: SegmentTour, node: number): number {
  const i = position[node]!;
  return nodes[(i === 0 ? nodes.length : i) - 1]!;
}

/** How many steps lead from `from` on to `to`. */
export function stepsTo({ nodes, position }: SegmentTour, from: number, to: number): number {
  const d = position[to]! - position[from]!;
  return d < 0 ? d + nodes.length : d;
}

/**
 * The exchange after which `a` is followed by the run from after `b` to `c`, and that by the run from
 * after `a` to `b`. Of the three runs of the tour any two that change places give the same tour; the
 * two shortest do. The nodes are met in the order a, b, c.
 */
export function exchangeRuns(tour: SegmentTour, a: number, b: number, c: number): Exchange {
  const n = tour.nodes.length;
  const [one, two] = [stepsTo(tour, a, b), stepsTo(tour, b, c)];
  const three = n - one - two;
  const wrap = (i: number): number => (i >= n ? i - n : i);
  const [afterA, afterB, afterC] = [a, b, c].map((node) => wrap(tour.position[node]! + 1));
  if (three >= one && three >= two) return { at: afterA!, first: one, second: two };
  if (one >= two) return { at: afterB!, first: two, second: three };
  return { at: afterC!, first: three, second: one };
}

/** What undoes an exchange. */
export const reversed = ({ at, first, second }: Exchange): Exchange => ({
  at,
  first: second,
  second: first,
});

export function apply({ nodes, position, spare }: SegmentTour, exchange: Exchange): void {
  const { at, first, second } = exchange;
  const n = nodes.length;
  for (let i = 0, p = at; i < first; i++, p = p + 1 === n ? 0 : p + 1) spare[i] = nodes[p]!;
  let to = at;
  let from = at + first >= n ? at + first - n : at + first;
  for (let i = 0; i < second; i++) {
    const node = nodes[from]!;
    nodes[to] = node;
    position[node] = to;
    to = to + 1 === n ? 0 : to + 1;
    from = from + 1 === n ? 0 : from + 1;
  }
  for (let i = 0; i < first; i++) {
    const node = spare[i]!;
    nodes[to] = node;
    position[node] = to;
    to = to + 1 === n ? 0 : to + 1;
  }
}
