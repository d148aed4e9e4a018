/** What a crew loads to set the graphic out, and must bring back: every figure from the stakes. */
import { formatLength } from '../base/quantity';
import type { Feet } from '../base/units';
import type { OutlinePiece, Stake, StakeKind, StakePlan, TapeSpec } from '../stakeout/model';
import { checkTape } from '../stakeout/tapes';
import { isShort } from '../stakeout/ties';
import type { GuideWork } from './guide-work';
import { headsNear } from './list-tasks';
import { outlinePieceFts } from './outline-length';

export interface InventoryItem {
  readonly id: string;
  readonly name: string;
  /** Pieces, or feet where `unit` says so. */
  readonly quantity: number;
  readonly unit: 'pieces' | 'ft';
  /** What it is for, or how it was counted; lengths in the plan's own units. */
  readonly note: string;
  /** Used up on the grass: it does not come back. */
  readonly usedUp: boolean;
}

/** String to tie off at each end, feet (common practice, no source). */
export const KNOT_FT = 0.5;
/** Spare string over what strings and knots take (common practice). */
export const STRING_SPARE = 0.05;
/** Dots along a drawn line stand no further apart than this (common practice). */
export const DOT_SPACING_FT = 1;

/** Stakes that go out and must come in: set controls and pins are among them. */
export const stakesOut = (stakes: StakePlan): number => stakes.stakes.length;

/** The list in the order of loading; empty without stakes, dots and strings. */
export function listInventory(stakes: StakePlan | null, guides?: GuideWork): InventoryItem[] {
  const items = [...graphicItems(stakes), ...(guides ? guideItems(guides) : [])];
  return items.filter((item) => item.quantity > 0);
}

function graphicItems(stakes: StakePlan | null): InventoryItem[] {
  if (!stakes || stakes.stakes.length === 0) return [];
  return [
    ...stakeItems(stakes),
    ...flagItems(stakes),
    ...lineItems(stakes),
    ...tapeItems(stakes),
    ...toolItems(stakes),
  ];
}

/** A string and its two stakes serve every guided pass in turn; none of them is on the grass after. */
function guideItems({ marks, turns, longestFt }: GuideWork): InventoryItem[] {
  const strings = turns === 1 ? 'one pass' : `${turns} passes, one after the other`;
  return [
    piece('guide-stakes', 'Guide stakes', turns > 0 ? 2 : 0, `for ${strings}; two out, two in`),
    {
      ...piece('guide-string', 'Guide string', 0, 'as long as the longest, and its knots'),
      quantity: turns > 0 ? Math.ceil(longestFt + 2 * KNOT_FT) : 0,
      unit: 'ft',
    },
    {
      ...piece('edge-dots', 'Dots on the edges', marks, 'paint, along one tape: Guide lines sheet'),
      usedUp: true,
    },
  ];
}

const piece = (id: string, name: string, quantity: number, note: string): InventoryItem => ({
  id,
  name,
  quantity,
  unit: 'pieces',
  note,
  usedUp: false,
});

const KINDS: readonly (readonly [StakeKind, string, string])[] = [
  ['control', 'Control stakes', 'stout and bright; pulled last, before the count'],
  ['outline', 'Outline stakes', 'thin; one at each end of a string or swing'],
  ['pin', 'Swing pins', 'steel, each with a cap; a tape turns on it'],
  ['guide', 'Guide stakes', 'for strings along a first pass'],
];

function stakeItems(stakes: StakePlan): InventoryItem[] {
  const kinds = KINDS.map(([kind, name, note]) =>
    piece(`stakes-${kind}`, name, stakes.stakes.filter((s) => s.kind === kind).length, note),
  );
  const all = stakesOut(stakes);
  return [
    ...kinds,
    piece('stakes-all', 'Stakes and pins in all', all, 'stakes out = stakes in'),
    piece(
      'caps',
      'Caps for pins',
      stakes.stakes.filter((s) => s.kind === 'pin').length,
      'one to a pin',
    ),
    piece('tags', 'Count tags', all, `one to a stake or pin: ${numbersText(stakes.stakes)}`),
  ];
}

/** `K1 to K3, 1 to 164`. */
function numbersText(stakes: readonly Stake[]): string {
  const controls = stakes.filter((s) => s.kind === 'control');
  const others = stakes.filter((s) => s.kind !== 'control');
  return [controls, others].map(runText).filter(Boolean).join(', ');
}

function runText(stakes: readonly Stake[]): string {
  const [first, last] = [stakes[0], stakes[stakes.length - 1]];
  if (!first || !last) return '';
  return first === last ? first.id : `${first.id} to ${last.id}`;
}

const flagItems = (stakes: StakePlan): InventoryItem[] => [
  piece(
    'flags',
    'Flags for heads and valve boxes',
    headsNear(stakes),
    'guessed from the area: walk it and count',
  ),
];

function lineItems(stakes: StakePlan): InventoryItem[] {
  const text = (ft: Feet) => formatLength(ft, stakes.spec.system);
  const fts = outlinePieceFts(stakes);
  const dots = fts.reduce((sum, ft) => sum + Math.ceil(ft / DOT_SPACING_FT), 0);
  const drawn = fts.reduce((sum, ft) => sum + ft, 0);
  return [
    {
      id: 'string',
      name: 'String, bright',
      quantity: Math.ceil(stringLoadFt(stakes)),
      unit: 'ft',
      note: `${text(stakes.stringFt)} in ${stakes.strings} strings, knots, 5 % spare`,
      usedUp: false,
    },
    {
      ...piece(
        'dots',
        'Paint dots',
        dots,
        `along ${text(drawn)} of line, ${text(DOT_SPACING_FT)} apart or less`,
      ),
      usedUp: true,
    },
  ];
}

/** What the strings take with their knots, and the spare. */
const stringLoadFt = ({ stringFt, strings }: StakePlan): Feet =>
  (stringFt + 2 * KNOT_FT * strings) * (1 + STRING_SPARE);

/** Two for the ties, and one that stays free for the checks. */
function tapeItems(stakes: StakePlan): InventoryItem[] {
  const { spec } = stakes;
  const { tape, secondTape } = spec;
  const text = (fts: readonly Feet[]) => formatLength(Math.max(...fts), spec.system);
  const read = `longest reading ${text(stakes.stakes.flatMap(({ set }) => readings(set)))}`;
  const checked = text(stakes.stakes.map(({ check }) => check.reading.ft));
  const along = stakes.stakes.some(({ set }) => isShort(set)) ? ', one along short lines' : '';
  const check = checkTape(spec);
  const held = secondTape
    ? [
        piece('tape-1', tapeName(tape, stakes), 1, `first tape for the ties; ${read}`),
        piece('tape-2', tapeName(secondTape, stakes), 1, 'second tape for the ties'),
      ]
    : [piece('tape', tapeName(tape, stakes), 2, `for the ties${along}; ${read}`)];
  return [
    ...held,
    piece('tape-check', tapeName(check, stakes), 1, `for the checks; longest reading ${checked}`),
    piece('anchors', 'Awls or weights', spec.crew === 2 ? 3 : 1, 'hold a zero where nobody stands'),
  ];
}

function tapeName(tape: TapeSpec, { spec }: StakePlan): string {
  const kind = tape.name ?? (tape.material === 'steel' ? 'Steel tape' : 'Fibreglass tape');
  return `${kind}, ${formatLength(tape.limitFt, spec.system)}`;
}

/** Readings of the long tapes that set a stake. */
function readings(set: Stake['set']): Feet[] {
  if (set.method === 'ties') return [set.tie1.reading.ft, set.tie2.reading.ft];
  return set.method === 'chord' ? [] : [set.tie1.reading.ft];
}

function toolItems(stakes: StakePlan): InventoryItem[] {
  const markers = Math.max(1, stakes.spec.crew - 2);
  const pieces = stakes.contours.flatMap((contour) => contour.pieces);
  const offsets = offsetFts(stakes);
  const swung = pieces.flatMap((one) => radiusFt(one));
  const radius = formatLength(Math.max(0, ...swung), stakes.spec.system);
  return [
    piece('hammers', markers === 1 ? 'Hammer' : 'Hammers', markers, 'one to a person who drives'),
    piece(
      'plumb-bobs',
      markers === 1 ? 'Plumb bob' : 'Plumb bobs',
      markers,
      'where the tapes cross above the grass',
    ),
    piece(
      'clips',
      markers === 1 ? 'Clip for swings' : 'Clips for swings',
      swung.length === 0 ? 0 : markers,
      `hold the marker on the tape; longest radius ${radius}`,
    ),
    ...offsetTools(stakes, offsets),
    piece('poles', 'Ranging pole', hasLines(stakes) ? 1 : 0, 'to sight along a line'),
    piece('markers', 'Paint, with its marker', 1, 'for the dots; never a utility-locate colour'),
    piece('gloves', 'Gloves and eye protection', stakes.spec.crew, 'one set to a person'),
  ];
}

const hasLines = (stakes: StakePlan): boolean =>
  stakes.stakes.some(({ set }) => set.method === 'line');

/** Radii that are swung. */
const radiusFt = (one: OutlinePiece): Feet[] => ('radius' in one ? [one.radius.ft] : []);

/** Offsets that are measured square to a line: of stakes, and of bends. */
const offsetFts = (stakes: StakePlan): Feet[] => [
  ...stakes.stakes.flatMap(({ set }) => ('offset' in set ? [set.offset.ft] : [])),
  ...stakes.contours.flatMap(({ pieces }) => pieces.flatMap(bendOffsetFt)),
];

const bendOffsetFt = (one: OutlinePiece): Feet[] => (one.kind === 'bend' ? [one.offset.ft] : []);

function offsetTools(stakes: StakePlan, offsets: readonly Feet[]): InventoryItem[] {
  if (offsets.length === 0) return [];
  const longest = formatLength(Math.max(...offsets), stakes.spec.system);
  return [
    piece('tape-short', 'Pocket tape', 1, `${offsets.length} offsets; longest ${longest}`),
    ...SQUARES[stakes.spec.square ?? 'square'],
  ];
}

const SQUARES: Readonly<
  Record<NonNullable<StakePlan['spec']['square']>, readonly InventoryItem[]>
> = {
  eye: [],
  square: [piece('square', "Carpenter's square", 1, 'keeps an offset square to its line')],
  triangle: [
    piece('triangle', 'Cord with knots at 3, 4 and 5', 1, 'keeps an offset square to its line'),
  ],
};
