/** Stake sheets: round after round in setting order, each with its drawing, table and count. */
import type { Round, Stake, StakePlan } from '../../stakeout/model';
import { moveMarks } from '../draw-labels';
import { wrapText } from '../fit-text';
import { inkBox, inkRule, inkText } from '../ink';
import { stakesById, type Kit } from '../kit';
import type { Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { planRoundDrawing } from '../round-drawing';
import type { Draft } from '../sheet-head';
import { ROW_HEIGHT, stakeRow, TABLE_HEAD, tableHead } from './stake-table';

const HEAD = 20;
const COUNT_HEIGHT = 30;
/** A drawing is followed by at least this many rows on its sheet. */
const LEAST_ROWS = 3;

export function stakePages(kit: Kit, stakes: StakePlan): Draft[] {
  const flow = startFlow(kit.paper);
  const byId = stakesById(stakes);
  const touched: number[][] = [];
  const note = (round: number) => {
    const page = flow.pageIndex();
    touched[page] = [...new Set([...(touched[page] ?? []), round])];
  };
  for (const round of stakes.rounds) {
    const rows = round.stakes.map((id) => byId.get(id)).filter((stake) => stake !== undefined);
    addRound(kit, stakes, round, rows, flow, () => note(round.number));
  }
  const total = stakes.rounds.length;
  return flow.pages().map((marks, i) => pageDraft(marks, touched[i] ?? [], total));
}

function pageDraft(marks: readonly Mark[], rounds: readonly number[], total: number): Draft {
  const [first, last] = [rounds[0] ?? 1, rounds[rounds.length - 1] ?? 1];
  const which = first === last ? `round ${first}` : `rounds ${first} to ${last}`;
  return {
    title: `Stakes, ${which} of ${total}`,
    lead: 'Both tapes tight and level. Drive the stake where they cross. Measure the check.',
    marks,
  };
}

function addRound(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  flow: Flow,
  note: () => void,
): void {
  const lead = roundLead(kit, round, rows);
  const drawing = planRoundDrawing(kit, stakes, round, rows);
  const opening = HEAD + lead.length * 12 + drawing.height + 8 + TABLE_HEAD;
  flow.need(opening + Math.min(rows.length, LEAST_ROWS) * ROW_HEIGHT + COUNT_HEIGHT);
  note();
  addHeading(kit, roundTitle(round, stakes), lead, flow);
  flow.add(moveMarks(drawing.marks, kit.paper.left, flow.y()), drawing.height + 8);
  addTableHead(kit, flow);
  rows.forEach((stake, i) => {
    const last = i === rows.length - 1;
    if (flow.need(ROW_HEIGHT + (last ? COUNT_HEIGHT : 0))) {
      addHeading(kit, `${roundTitle(round, stakes)}, continued`, [holdText(round)], flow);
      addTableHead(kit, flow);
    }
    note();
    flow.add(stakeRow(kit, stake, i, flow.y() + 14), ROW_HEIGHT);
  });
  addCount(kit, round, rows.length, flow);
}

const roundTitle = (round: Round, stakes: StakePlan): string =>
  `Round ${round.number} of ${stakes.rounds.length}`;

const holdText = (round: Round): string => `Hold tapes at ${round.from[0]} and ${round.from[1]}.`;

function roundLead(kit: Kit, round: Round, rows: readonly Stake[]): string[] {
  const [a, b] = round.from;
  const ties = rows.filter((stake) => stake.set.method === 'ties');
  const sides = new Set(ties.map((stake) => (stake.set.side === 'L' ? 'left' : 'right')));
  const sideText =
    sides.size === 1
      ? `Every stake set by ties lies to the ${[...sides][0]}, standing at ${a} facing ${b}.`
      : `Left and right: standing at ${a}, facing ${b}.`;
  const line = rows.some((stake) => stake.set.method === 'line')
    ? 'A line row: pull the first tape from its control straight toward (or straight away from) the control named, and drive the stake at the reading.'
    : '';
  const text = [holdText(round), ties.length > 0 ? sideText : '', line].join(' ');
  return wrapText(kit.metrics, text, 10, 'bold', kit.paper.right - kit.paper.left);
}

function addHeading(kit: Kit, title: string, lead: readonly string[], flow: Flow): void {
  const { left } = kit.paper;
  flow.add([inkText(left, flow.y() + 14, title, { size: 14, font: 'heading' })], HEAD);
  for (const line of lead)
    flow.add([inkText(left, flow.y() + 8, line, { size: 10, font: 'bold' })], 12);
}

function addTableHead(kit: Kit, flow: Flow): void {
  flow.add(tableHead(kit, flow.y() + 10), TABLE_HEAD);
}

/** `Round 2 stakes 24`, boxes for set and lifted, initials. */
function addCount(kit: Kit, round: Round, count: number, flow: Flow): void {
  const { left, right } = kit.paper;
  const y = flow.y() + 20;
  const word = (x: number, text: string, bold = false) =>
    inkText(left + x, y, text, { size: 10, font: bold ? 'bold' : 'regular' });
  const marks: Mark[] = [
    word(0, `Round ${round.number} stakes ${count}`, true),
    word(130, 'set'),
    inkBox(left + 150, y - 13, 44, 18),
    word(206, 'lifted'),
    inkBox(left + 238, y - 13, 44, 18),
    word(296, 'All three must match.', true),
    inkText(right - 66, y, 'initials', { size: 10, align: 'right' }),
    inkBox(right - 60, y - 13, 60, 18),
  ];
  flow.add(marks, COUNT_HEIGHT);
  flow.add([inkRule(left, right, flow.y(), 1.2)], 10);
}
