/** Stakes in words that a crew can follow. */
import type { Stake } from '../../stakeout/model';

const NAMES = {
  control: 'Control stake',
  outline: 'Outline stake',
  pin: 'Swing pin',
  guide: 'Guide stake',
} as const;

export const stakeName = (s: Stake): string => NAMES[s.kind];

/** `right`, `left`, or along the line. */
export function sideWords(s: Stake): string {
  if (s.set.method !== 'line') return s.set.side === 'R' ? 'right' : 'left';
  return s.set.side === 'T'
    ? `from ${s.set.tie1.from} toward ${s.set.lineTo}`
    : `beyond ${s.set.tie1.from}, away from ${s.set.lineTo}`;
}

/** One reading to take, and where from. */
export interface Pull {
  readonly from: string;
  readonly text: string;
}

/** The readings that set a stake, in the order in which they are taken. */
export function pulls(s: Stake): Pull[] {
  const { set } = s;
  switch (set.method) {
    case 'ties':
      return [set.tie1, set.tie2].map((tie) => ({ from: tie.from, text: tie.reading.text }));
    case 'line':
      return [{ from: set.tie1.from, text: set.tie1.reading.text }];
    case 'offset':
      return [
        { from: `${set.tie1.from} to ${set.lineTo}`, text: set.tie1.reading.text },
        { from: 'square off', text: set.offset.text },
      ];
    case 'chord':
      return [{ from: `mid ${set.chordFrom}, ${set.lineTo}`, text: set.offset.text }];
  }
}
