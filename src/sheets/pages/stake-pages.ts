/** Stake sheets: round after round in setting order, each with its drawing, table and count. */
import type { Round, Stake, StakePlan } from '../../stakeout/model';
import { moveMarks } from '../draw-labels';
import { wrapText } from '../fit-text';
import { inkBox, inkRule, inkText } from '../ink';
import { stakesById, type Kit } from '../kit';
import type { Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { drawingHeight, planRoundDrawing } from '../round-drawing';
import type { Draft } from '../sheet-head';
import { ROW_HEIGHT, stakeRow, TABLE_HEAD, tableHead } from './stake-table';

const HEAD = 20;
const COUNT_HEIGHT = 30;
/** A drawing is followed by at least this many rows on its sheet, and a count stands below as many. */
const LEAST_ROWS = 3;
/** Height that a drawing gives up to keep a round on one sheet. */
const SPARE = 40;

/** `before`: how many sheets come first. The outline drawings follow right after these sheets. */
export function stakePages(kit: Kit, stakes: StakePlan, before: number): Draft[] {
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
  const pages = flow.pages();
  const lead =
    'Tapes tight and level; drive the stake where they cross. Check off by more than its limit: ' +
    `pull it, set it again. All numbers: sheet ${before + pages.length + 1}.`;
  return pages.map((marks, i) => ({
    title: pageTitle(touched[i] ?? [], stakes.rounds.length),
    lead,
    marks,
  }));
}

function pageTitle(rounds: readonly number[], total: number): string {
  const [first, last] = [rounds[0] ?? 1, rounds[rounds.length - 1] ?? 1];
  const which = first === last ? `round ${first}` : `rounds ${first} to ${last}`;
  return `Stakes, ${which} of ${total}`;
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
  const opening = HEAD + lead.length * 12 + 8 + TABLE_HEAD;
  const tall = drawingHeight(rows.length);
  flow.need(opening + tall + Math.min(rows.length, LEAST_ROWS) * ROW_HEIGHT + COUNT_HEIGHT);
  const over = opening + tall + rows.length * ROW_HEIGHT + COUNT_HEIGHT - flow.left();
  const height = over > 0 && over <= SPARE ? tall - over : tall;
  const drawing = { height, marks: planRoundDrawing(kit, stakes, round, rows, height) };
  note();
  addHeading(kit, roundTitle(round, stakes), lead, flow);
  flow.add(moveMarks(drawing.marks, kit.paper.left, flow.y()), drawing.height + 8);
  addTableHead(kit, flow);
  rows.forEach((stake, i) => {
    const toEnd = rows.length - i;
    const rest = toEnd <= LEAST_ROWS ? toEnd * ROW_HEIGHT + COUNT_HEIGHT : ROW_HEIGHT;
    if (flow.need(rest)) {
      addHeading(kit, `${roundTitle(round, stakes)}, continued`, lead, flow);
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
