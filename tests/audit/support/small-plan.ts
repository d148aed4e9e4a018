/** A small stake-out made by hand: every way of setting, every kind of piece; drawn art with it. */
import { roundReading } from '../../../src/base/quantity';
import type { Control } from '../../../src/field/model';
import type { OutlinePiece, SetMethod, Stake, StakePlan } from '../../../src/stakeout/model';
import { apart, beside, meet, type Place } from './field-crew';

const places = new Map<string, Place>();
const QUARTER = { xx: 1 / 16, xy: 0, yy: 1 / 16 };

function control(id: string, x: number, y: number): Control {
  places.set(id, { x, y });
  return {
    id,
    name: id,
    touch: id,
    picture: 'stake',
    kind: 'fixed',
    at: { x, y },
    covariance: QUARTER,
  };
}

const read = (ft: number) => roundReading(ft, 'feet-inches');
const to = (from: string, wanted: Place) => read(apart(places.get(from)!, wanted));

function placed(set: SetMethod): Place {
  if (set.method === 'ties') {
    const [a, b] = [places.get(set.tie1.from)!, places.get(set.tie2.from)!];
    return meet(a, set.tie1.reading.ft, b, set.tie2.reading.ft, set.side === 'L');
  }
  const from = places.get(set.method === 'chord' ? set.chordFrom : set.tie1.from)!;
  const end = places.get(set.lineTo)!;
  if (set.method === 'line') {
    return beside(from, end, set.tie1.reading.ft * (set.side === 'T' ? 1 : -1), 0);
  }
  const along = set.method === 'chord' ? apart(from, end) / 2 : set.tie1.reading.ft;
  return beside(from, end, along, set.offset.ft * (set.side === 'L' ? 1 : -1));
}

function stake(id: string, set: SetMethod, checkFrom: string, kind: Stake['kind']): Stake {
  const at = placed(set);
  places.set(id, at);
  return {
    id,
    kind,
    round: 1,
    at,
    set,
    check: { from: checkFrom, reading: to(checkFrom, at), limitIn: 2 },
    covariance: { xx: 0.6, xy: 0, yy: 0.6 },
    semiMajor95In: 1.9,
  };
}

function ties(a: string, b: string, x: number, y: number): SetMethod {
  const [p, q] = [places.get(a)!, places.get(b)!];
  const left = (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x) > 0;
  return {
    method: 'ties',
    tie1: { from: a, reading: to(a, { x, y }) },
    tie2: { from: b, reading: to(b, { x, y }) },
    side: left ? 'L' : 'R',
    intersectionDeg: 60,
  };
}

const controls = [
  control('HP', 0, 0),
  control('1B', 63.64, 63.64),
  control('2B', 0, 127.28),
  control('3B', -63.64, 63.64),
];

const stakes = [
  stake('K1', ties('1B', '3B', 0, 230), '2B', 'control'),
  stake(
    'K2',
    { method: 'line', tie1: { from: 'HP', reading: read(220) }, lineTo: '1B', side: 'T' },
    '2B',
    'control',
  ),
  stake('1', ties('2B', 'K2', 40, 200), '3B', 'outline'),
  stake('2', ties('2B', 'K2', 70, 205), 'K1', 'outline'),
  stake('3', ties('2B', 'K2', 72, 235), '1B', 'outline'),
  stake('4', ties('K1', '1B', 38, 240), '2B', 'outline'),
  stake('5', ties('1B', '3B', -20, 205), '2B', 'pin'),
  stake('6', ties('1B', '3B', -30, 205), '2B', 'outline'),
  stake('7', ties('1B', '3B', -20, 215), '2B', 'outline'),
  stake(
    '8',
    {
      method: 'offset',
      tie1: { from: '1', reading: read(12) },
      lineTo: '2',
      offset: read(3),
      side: 'L',
    },
    'K1',
    'outline',
  ),
  stake(
    '9',
    { method: 'chord', chordFrom: '2', lineTo: '3', offset: read(4), side: 'R' },
    '3B',
    'outline',
  ),
];

const string = (from: string, end: string): OutlinePiece => ({ kind: 'string', from, to: end });
const outline = ['1', '8', '2', '9', '3', '4'];

/** Art that the plan follows, the contours in order. */
export const SMALL_ART: readonly (readonly Place[])[] = [
  outline.map((id) => places.get(id)!),
  Array.from({ length: 90 }, (_, i) => {
    const angle = -Math.PI + (i * Math.PI) / 180;
    return beside(
      places.get('5')!,
      { ...places.get('5')!, x: 1000 },
      10 * Math.cos(angle),
      -10 * Math.sin(angle),
    );
  }),
];

/** Without the walk and other sums, which no audit reads. */
const parts: Partial<StakePlan> = {
  spec: {
    toleranceIn: 3,
    target95In: 3,
    tape: { readingSigmaIn: 0.25, proportional: 1 / 3750, scaleSigma: 1 / 5000, limitFt: 300 },
    system: 'feet-inches',
    crew: 3,
  },
  controls: [
    ...controls,
    ...stakes.slice(0, 2).map((s): Control => ({ ...control(s.id, s.at.x, s.at.y), kind: 'set' })),
  ],
  stakes,
  rounds: [],
  contours: [
    { graphic: '1', contour: 1, pieces: outline.map((id, i) => string(id, outline[(i + 1) % 6]!)) },
    {
      graphic: '1',
      contour: 2,
      pieces: [
        { kind: 'swing', from: '6', to: '7', pin: '5', radius: read(10), sweep: 'cw' },
        string('7', '6'),
      ],
    },
  ],
  strings: 7,
  swings: 1,
  stringFt: 150,
  worstSemiMajor95In: 1.9,
  largestGapIn: 1,
  overTarget: [],
};

export const SMALL_PLAN = parts as StakePlan;
