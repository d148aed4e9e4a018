/** Mix-ups that would put a stake somewhere definite: what its readings would then be. */
import type { NetworkReading } from '../adjust/network-model';
import { circleIntersection } from '../geometry/arc';
import type { Point } from '../geometry/point';
import { pointDistance } from '../geometry/point';
import type { SetMethod, Stake } from '../stakeout/model';
import type { SlipKind } from './model';

/** A stake set otherwise than the plan says. */
export interface Alternative {
  readonly kind: SlipKind;
  readonly stake: string;
  /** The two readings that set it, changed; the place where they put it. */
  readonly readings: readonly [NetworkReading, NetworkReading];
  readonly at: Point;
  /** Which of the two readings is to blame, when only one is. */
  readonly blame: 0 | 1 | null;
  readonly words: string;
}

type PlaceOf = (id: string) => Point;
type Pair = readonly [NetworkReading, NetworkReading];

/** Every mix-up of a stake's setting. `controls`: ids that a tape may have been held at. */
export function alternatives(
  stake: Stake,
  rows: Pair,
  controls: readonly string[],
  placeOf: PlaceOf,
): Alternative[] {
  const { set } = stake;
  switch (set.method) {
    case 'ties':
      return tieMixUps(stake.id, set, rows, controls, placeOf);
    case 'line':
      return lineMixUps(stake.id, rows, controls, placeOf);
    case 'offset':
    case 'chord':
      return sideMixUp(stake.id, set.side, rows, placeOf);
  }
}

type Ties = Extract<SetMethod, { method: 'ties' }>;
const OTHER_SIDE = { L: 'right', R: 'left' } as const;

function tieMixUps(
  stake: string,
  set: Ties,
  rows: Pair,
  controls: readonly string[],
  placeOf: PlaceOf,
): Alternative[] {
  const [a, b] = [set.tie1.from, set.tie2.from];
  const side = set.side === 'L' ? 'left' : 'right';
  const out: Alternative[] = [];
  const add = (
    kind: SlipKind,
    readings: Pair,
    sides: readonly ('left' | 'right')[],
    blame: 0 | 1 | null,
    words: string,
  ): void => {
    const meet = circlesMeet(readings, placeOf);
    if (!meet) return;
    for (const s of sides) out.push({ kind, stake, readings, at: meet[s], blame, words });
  };
  const swapped: Pair = [
    { ...rows[0], distance: rows[1].distance },
    { ...rows[1], distance: rows[0].distance },
  ];
  add('tapes-swapped', swapped, [side], null, `the readings from ${a} and ${b} were swapped`);
  const other = `it stands on the ${OTHER_SIDE[set.side]} of the line from ${a} to ${b}`;
  add('wrong-side', rows, [OTHER_SIDE[set.side]], null, `${other}, not the ${side}`);
  for (const c of controls.filter((id) => id !== a && id !== b && id !== stake)) {
    const held = (meant: string) => `the tape that belongs at ${meant} was held at ${c}`;
    add('wrong-control', [{ ...rows[0], from: c }, rows[1]], ['left', 'right'], 0, held(a));
    add('wrong-control', [rows[0], { ...rows[1], from: c }], ['left', 'right'], 1, held(b));
  }
  return out;
}

const circlesMeet = ([r1, r2]: Pair, placeOf: PlaceOf) =>
  circleIntersection(placeOf(r1.from), r1.distance, placeOf(r2.from), r2.distance);

function lineMixUps(
  stake: string,
  [along, across]: Pair,
  controls: readonly string[],
  placeOf: PlaceOf,
): Alternative[] {
  const back = { ...along, distance: -along.distance };
  const turned: Alternative = {
    kind: 'wrong-way',
    stake,
    readings: [back, across],
    at: onLine(along.from, along.to, back.distance, placeOf),
    blame: 0,
    words: `it was taped from ${along.from} the other way along the line`,
  };
  const held = controls
    .filter((id) => id !== along.from && id !== along.to && id !== stake)
    .map((from): Alternative => ({
      kind: 'wrong-control',
      stake,
      readings: [
        { ...along, from },
        { ...across, from },
      ],
      at: onLine(from, along.to, along.distance, placeOf),
      blame: 0,
      words: `the tape that belongs at ${along.from} was held at ${from}`,
    }));
  return [turned, ...held];
}

function onLine(from: string, to: string, along: number, placeOf: PlaceOf): Point {
  const [a, b] = [placeOf(from), placeOf(to)];
  const k = along / pointDistance(a, b);
  return { x: a.x + k * (b.x - a.x), y: a.y + k * (b.y - a.y) };
}

function sideMixUp(
  stake: string,
  side: 'L' | 'R',
  [along, across]: Pair,
  placeOf: PlaceOf,
): Alternative[] {
  const [a, b, p] = [placeOf(across.from), placeOf(across.to), placeOf(stake)];
  const length = pointDistance(a, b);
  const left = { x: -(b.y - a.y) / length, y: (b.x - a.x) / length };
  const off = -2 * across.distance;
  const [at, not] = [OTHER_SIDE[side], side === 'L' ? 'left' : 'right'];
  return [
    {
      kind: 'wrong-side',
      stake,
      readings: [along, { ...across, distance: -across.distance }],
      at: { x: p.x + off * left.x, y: p.y + off * left.y },
      blame: 1,
      words: `its offset went to the ${at} of ${across.from} to ${across.to}, not the ${not}`,
    },
  ];
}
