/** The words at the head of a round: where tapes are held, who stands where, the walk, the checks. */
import type { Round, Stake, StakePlan } from '../stakeout/model';
import { roundCheckWords } from './check-reach';
import { placesInRound } from './crew-words';
import { walkFt } from './draw-walk';
import { wrapText } from './fit-text';
import { inkText } from './ink';
import { standingPoints, type Kit } from './kit';
import type { Mark } from './marks';
import { wholeLength } from './pass-groups';

const TITLE = 20;
const LINE = 12;

export interface RoundHead {
  readonly height: number;
  /** With the head's top left at (x, y). */
  readonly marksAt: (x: number, y: number) => Mark[];
}

export const roundTitle = (round: Round, stakes: StakePlan): string =>
  `Round ${round.number} of ${stakes.rounds.length}`;

/** Title and words within `width`; a round that goes on on another sheet repeats only how tapes are held. */
export function roundHead(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  width: number,
  continued: boolean,
): RoundHead {
  const title = `${roundTitle(round, stakes)}${continued ? ', continued' : ''}`;
  const wrap = (text: string, font: 'bold' | 'regular') =>
    wrapText(kit.metrics, text, 10, font, width).map((line) => ({ line, font }));
  const notes = continued ? [] : wrap(roundNotes(kit, stakes, round, rows), 'regular');
  const lines = [...wrap(roundLead(round, rows), 'bold'), ...notes];
  return {
    height: TITLE + lines.length * LINE,
    marksAt: (x, y) => [
      inkText(x, y + 14, title, { size: 14, font: 'heading' }),
      ...lines.map(({ line, font }, i) =>
        inkText(x, y + TITLE + 8 + i * LINE, line, { size: 10, font }),
      ),
    ],
  };
}

const SHORT_LEAD =
  'Short tape, two people, nobody at the controls. Chord: stretch the tape between the two marks ' +
  'named and go to its middle. Offset: to the first reading from the first mark. Then measure the ' +
  'offset square to the tape and drive there. Left and right: standing at the first mark, facing the second.';

function roundLead(round: Round, rows: readonly Stake[]): string {
  if (round.from === null) return SHORT_LEAD;
  const [a, b] = round.from;
  const ties = rows.filter((stake) => stake.set.method === 'ties');
  const sides = new Set(ties.map((stake) => (stake.set.side === 'L' ? 'left' : 'right')));
  const sideText =
    sides.size === 1
      ? `Every stake set by ties lies to the ${[...sides][0]}, standing at ${a} facing ${b}.`
      : `Left and right: standing at ${a}, facing ${b}.`;
  const line = rows.some((stake) => stake.set.method === 'line')
    ? 'A line row: one tape only, straight on the line named.'
    : '';
  const [at1, at2] = round.tapes?.[0] === 2 ? [b, a] : [a, b];
  const tapes = round.tapes ? `Tape 1 at ${at1}, tape 2 at ${at2}; checks with the longer.` : '';
  const drive = ties.length > 0 ? `Drive where they cross. ${sideText}` : '';
  return [`Hold tapes at ${a} and ${b}.`, tapes, drive, line]
    .filter((words) => words !== '')
    .join(' ');
}

function roundNotes(kit: Kit, stakes: StakePlan, round: Round, rows: readonly Stake[]): string {
  const { units } = kit.plan.project;
  const [first, last] = [rows[0], rows[rows.length - 1]];
  const walk =
    first && last && first !== last
      ? `Walk the dotted line from ${first.id} to ${last.id}: ${wholeLength(walkFt(rows), units)}.`
      : '';
  const checks = roundCheckWords(rows, standingPoints(stakes), units);
  return [placesInRound(round, stakes.spec.crew), walk, checks]
    .filter((words) => words !== '')
    .join(' ');
}
