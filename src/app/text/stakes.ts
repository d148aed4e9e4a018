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
  if (s.set.method === 'ties') return s.set.side === 'R' ? 'right' : 'left';
  return s.set.side === 'T'
    ? `from ${s.set.tie1.from} toward ${s.set.lineTo}`
    : `beyond ${s.set.tie1.from}, away from ${s.set.lineTo}`;
}

/** The whole sentence for the phone. */
export function sideSentence(s: Stake): string {
  if (s.set.method === 'ties') {
    const side = s.set.side === 'R' ? 'Right' : 'Left';
    return `${side} of the line ${s.set.tie1.from} to ${s.set.tie2.from}`;
  }
  return s.set.side === 'T'
    ? `On the line ${s.set.tie1.from} to ${s.set.lineTo}`
    : `On the line, beyond ${s.set.tie1.from} from ${s.set.lineTo}`;
}
