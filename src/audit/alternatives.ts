/** Mix-ups that would put a stake somewhere definite: what its readings would then be. */
import type { NetworkReading } from '../adjust/network-model';
import { circleIntersection } from '../geometry/arc';
import type { Point } from '../geometry/point';
import { pointDistance } from '../geometry/point';
import type { SetMethod, Stake, StakePlan } from '../stakeout/model';
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
  /** The mark that should have been held, when another was. */
  readonly meant?: string;
  readonly words: string;
}

type PlaceOf = (id: string) => Point;
type Pair = readonly [NetworkReading, NetworkReading];

/** A misread number on a short line is that of a mark near by. */
const NEAR_FT = 30;

/** Every mix-up of a stake's setting in `plan`. */
export function alternatives(
  plan: StakePlan,
  stake: Stake,
  rows: Pair,
  placeOf: PlaceOf,
): Alternative[] {
  const { set } = stake;
  const controls = plan.controls.map((c) => c.id);
  switch (set.method) {
    case 'ties':
      return tieMixUps(stake.id, set, rows, controls, placeOf);
    case 'line':
      return lineMixUps(stake.id, rows, controls, placeOf);
    case 'offset':
    case 'chord':
      return [
        sideMixUp(stake.id, set.side, rows, placeOf),
        ...heldElsewhere(stake.id, rows, standing(plan, stake.id), placeOf),
      ];
  }
}

/** Controls, and the stakes that stand before this one is set. */
const standing = (plan: StakePlan, stake: string): string[] => [
  ...plan.controls.filter((c) => c.kind === 'fixed').map((c) => c.id),
  ...plan.stakes
    .slice(
      0,
      plan.stakes.findIndex((s) => s.id === stake),
    )
    .map((s) => s.id),
];

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
): Alternative {
  const [at, not] = [OTHER_SIDE[side], side === 'L' ? 'left' : 'right'];
  const readings: Pair = [along, { ...across, distance: -across.distance }];
  return {
    kind: 'wrong-side',
    stake,
    readings,
    at: besideLine(readings, placeOf),
    blame: 1,
    words: `its offset went to the ${at} of ${across.from} to ${across.to}, not the ${not}`,
  };
}

/** One end of a short line at another mark near the right one. */
function heldElsewhere(
  stake: string,
  rows: Pair,
  marks: readonly string[],
  placeOf: PlaceOf,
): Alternative[] {
  const { from, to } = rows[1];
  return (['from', 'to'] as const).flatMap((end) => {
    const meant = end === 'from' ? from : to;
    return marks
      .filter((id) => id !== from && id !== to)
      .filter((id) => pointDistance(placeOf(id), placeOf(meant)) <= NEAR_FT)
      .map((id): Alternative => {
        const readings: Pair = [
          { ...rows[0], [end]: id },
          { ...rows[1], [end]: id },
        ];
        const words = `the end of the line that belongs at ${meant} was held at ${id}`;
        const at = besideLine(readings, placeOf);
        return { kind: 'wrong-control', stake, readings, at, blame: 0, meant, words };
      });
  });
}

/** Where a distance along a line (or its middle) and one square to it put a stake. */
function besideLine([along, across]: Pair, placeOf: PlaceOf): Point {
  const [a, b] = [placeOf(across.from), placeOf(across.to)];
  const length = pointDistance(a, b);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const far = along.distance + (along.kind === 'middle' ? length / 2 : 0);
  return {
    x: a.x + far * ux - across.distance * uy,
    y: a.y + far * uy + across.distance * ux,
  };
}
