/** How each way of setting a stake and of drawing a piece is done: a few plain sentences each. */
import type { OutlinePiece, SetMethod, StakePlan, StakeoutSpec } from '../stakeout/model';

/** What a box explains. */
export type HowToId = SetMethod['method'] | 'check' | OutlinePiece['kind'];

export interface HowTo {
  readonly id: HowToId;
  readonly title: string;
  readonly text: string;
}

const STAKE_ORDER: readonly HowToId[] = ['ties', 'line', 'offset', 'chord'];
const PIECE_ORDER: readonly HowToId[] = ['string', 'swing', 'circle', 'bend'];

const HOW_TO: Readonly<Record<HowToId, Omit<HowTo, 'id'>>> = {
  ties: {
    title: 'Ties: two tapes',
    text:
      'Hold one zero at the first control, the other at the second. Cross the tapes at the two ' +
      'readings, both tight and level, on the side named. Drive the stake at the crossing. Left and ' +
      'right: standing at the first control, facing the second.',
  },
  line: {
    title: 'Line: one tape',
    text:
      'Hold the zero at the first control. Toward: pull it straight to the second control and on past ' +
      'it. Away: pull it straight away from the second control, while somebody there sights over both. ' +
      'Drive at the reading.',
  },
  offset: {
    title: 'Offset from a line',
    text:
      'Stretch a tape from the first mark named to the second. Go along it to the first reading. ' +
      'From there measure the offset square to the tape (TOOL), on the side named: left or right, ' +
      'standing ' +
      'at the first mark, facing the second. Drive there.',
  },
  chord: {
    title: 'Chord: offset at the middle',
    text:
      'Stretch a tape between the two stakes named and find its middle. From there measure the ' +
      'offset square to the tape (TOOL), on the side named: left or right, standing at the first ' +
      'stake, facing the second. Drive there.',
  },
  check: {
    title: 'Then the check',
    text:
      'With the third tape measure from the check named to the stake, to its middle at the ground. ' +
      'Within its limit: tick and go ' +
      'on. Off by more: pull the stake, take both its readings again, set it again. Twice off: stop, ' +
      'and check the two marks that it is set from by their own rows.',
  },
  string: {
    title: 'String',
    text:
      'Pull a string tight from stake to stake, low, touching nothing. Put a paint dot under it at ' +
      'each end and at every FOOT between.',
  },
  swing: {
    title: 'Swing about a pin',
    text:
      'Loop the tape over the pin and clip the marker at the radius. Keep it tight and walk from the ' +
      'first stake to the second, turning as named (seen from above); a paint dot at every FOOT. Carry ' +
      'the tape over stakes in its way and plumb the dot down; no string may be up there. A ' +
      'step of STEP or less at a stake is right: join it straight. A larger one: see whether radius ' +
      'and pin are those of the row, then check both stakes.',
  },
  circle: {
    title: 'Full circle',
    text:
      'Loop the tape over the pin, clip the marker at the radius, and walk all the way round with ' +
      'the tape tight; a paint dot at every FOOT. Carry the tape over stakes in its way.',
  },
  bend: {
    title: 'Bend between two stakes',
    text:
      'Pull a string between the stakes. At its middle measure the offset square to it, left or ' +
      'right facing the second stake, and put a dot there. Where the offset is over a fifth of the ' +
      'string, do the same from each stake to that dot, a quarter of the offset out (over two fifths: ' +
      'three tenths). Draw one even curve through the dots.',
  },
};

/** Spacing of paint dots, and the step that a printed radius leaves at a stake. */
const WORDS = {
  'feet-inches': { foot: 'foot', step: '3/4 in' },
  metric: { foot: '30 cm', step: '2 cm' },
} as const;

/** How the crew makes a square angle. */
const TOOL_WORDS: Readonly<Record<NonNullable<StakeoutSpec['square']>, string>> = {
  eye: 'by eye',
  square: "with a carpenter's square",
  triangle: 'with a 3-4-5 triangle',
};

function howTo(id: HowToId, { system, square = 'square' }: StakeoutSpec): HowTo {
  const { title, text } = HOW_TO[id];
  const { foot, step } = WORDS[system];
  return {
    id,
    title,
    text: text
      .replaceAll('FOOT', foot)
      .replaceAll('STEP', step)
      .replaceAll('TOOL', TOOL_WORDS[square]),
  };
}

/** The boxes for the ways in which this plan's stakes are set, and for the check. */
export function stakeHowTos(stakes: StakePlan): HowTo[] {
  const used = new Set<HowToId>(stakes.stakes.map((stake) => stake.set.method));
  return [...STAKE_ORDER.filter((id) => used.has(id)), 'check' as const].map((id) =>
    howTo(id, stakes.spec),
  );
}

/** The boxes for the kinds of pieces of this plan's outline. */
export function outlineHowTos(stakes: StakePlan): HowTo[] {
  const pieces = stakes.contours.flatMap((contour) => contour.pieces);
  const used = new Set<HowToId>(pieces.map((piece) => piece.kind));
  return PIECE_ORDER.filter((id) => used.has(id)).map((id) => howTo(id, stakes.spec));
}
