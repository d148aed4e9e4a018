/** Mix-ups that would put a stake somewhere definite: what its readings would then be. */
import type { NetworkReading } from '../adjust/network-model';
import { circleIntersection } from '../geometry/arc';
import type { Point } from '../geometry/point';
import { pointDistance } from '../geometry/point';
import type { SetMethod, Stake, StakePlan } from '../stakeout/model';
import type { SlipKind } from './model';
import { placeSetting, type PlaceOf, type SettingPair as Pair } from './place-setting';

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

/** A misread number on a short line is that of a mark near by. */
const NEAR_FT = 30;

/** Every mix-up of a stake's setting in `plan`. */
export function alternatives(
  plan: StakePlan,
  stake: Stake,
  rows: Pair,
  placeOf: PlaceOf,
): Alternative[] {
  return mixUpsOf(plan, stake, rows, placeOf).filter((a) => a !== null);
}

/** Null where the readings meet nowhere. */
function mixUpsOf(
  plan: StakePlan,
  { id, set }: Stake,
  rows: Pair,
  placeOf: PlaceOf,
): (Alternative | null)[] {
  const controls = plan.controls.map((c) => c.id);
  switch (set.method) {
    case 'ties':
      return tieMixUps(id, set, rows, controls, placeOf);
    case 'line':
      return lineMixUps(id, rows, controls, placeOf);
    case 'offset':
    case 'chord':
      return [
        sideMixUp(id, set.side, rows, placeOf),
        ...(set.method === 'offset' ? endMixUps(id, rows, placeOf) : []),
        ...heldElsewhere(id, rows, standing(plan, id), placeOf),
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
): (Alternative | null)[] {
  const back: Pair = [{ ...along, distance: -along.distance }, across];
  const turned = `it was taped from ${along.from} the other way along the line`;
  const held = controls
    .filter((id) => id !== along.from && id !== along.to && id !== stake)
    .map((from) => {
      const readings: Pair = [
        { ...along, from },
        { ...across, from },
      ];
      const words = `the tape that belongs at ${along.from} was held at ${from}`;
      return setBeside(stake, readings, placeOf, { kind: 'wrong-control', blame: 0, words });
    });
  return [setBeside(stake, back, placeOf, { kind: 'wrong-way', blame: 0, words: turned }), ...held];
}

function sideMixUp(
  stake: string,
  side: 'L' | 'R',
  [along, across]: Pair,
  placeOf: PlaceOf,
): Alternative | null {
  const [at, not] = [OTHER_SIDE[side], side === 'L' ? 'left' : 'right'];
  const readings: Pair = [along, { ...across, distance: -across.distance }];
  const words = `its offset went to the ${at} of ${across.from} to ${across.to}, not the ${not}`;
  return setBeside(stake, readings, placeOf, { kind: 'wrong-side', blame: 1, words });
}

/** The distance along from the line's other end; the side as printed, or as seen from there. */
function endMixUps(stake: string, [along, across]: Pair, placeOf: PlaceOf): (Alternative | null)[] {
  const { from, to } = across;
  const turned = { from: to, to: from };
  const words = `it was measured from ${to}, not from ${from}`;
  return [across.distance, -across.distance].map((distance) => {
    const readings: Pair = [
      { ...along, ...turned },
      { ...across, ...turned, distance },
    ];
    return setBeside(stake, readings, placeOf, { kind: 'wrong-end', blame: null, words });
  });
}

/** One end of a short line at another mark near the right one. */
function heldElsewhere(
  stake: string,
  rows: Pair,
  marks: readonly string[],
  placeOf: PlaceOf,
): (Alternative | null)[] {
  const { from, to } = rows[1];
  return (['from', 'to'] as const).flatMap((end) => {
    const meant = end === 'from' ? from : to;
    return marks
      .filter((id) => id !== from && id !== to)
      .filter((id) => pointDistance(placeOf(id), placeOf(meant)) <= NEAR_FT)
      .map((id) => {
        const readings: Pair = [
          { ...rows[0], [end]: id },
          { ...rows[1], [end]: id },
        ];
        const words = `the end of the line that belongs at ${meant} was held at ${id}`;
        const told = { kind: 'wrong-control', blame: 0, meant, words } as const;
        return setBeside(stake, readings, placeOf, told);
      });
  });
}

/** The mix-up with the place where its two readings of a line put the stake; null for a line of no length. */
function setBeside(
  stake: string,
  readings: Pair,
  placeOf: PlaceOf,
  told: Pick<Alternative, 'kind' | 'blame' | 'meant' | 'words'>,
): Alternative | null {
  const at = placeSetting(readings, placeOf, placeOf(stake));
  return at && { ...told, stake, readings, at };
}
