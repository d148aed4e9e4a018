/** Stake sheets: round after round in setting order, each with its drawing, table and count. */
import type { Round, Stake, StakePlan } from '../../stakeout/model';
import { isBlind } from '../check-reach';
import { moveMarks } from '../draw-labels';
import type { HowTo } from '../how-to';
import { addHowTos } from '../how-to-boxes';
import { inkBox, inkRule, inkText } from '../ink';
import { standingPoints, stakesById, type Kit } from '../kit';
import type { Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { drawingHeight, FEW, planRoundDrawing } from '../round-drawing';
import { roundHead } from '../round-head';
import type { Draft } from '../sheet-head';
import { ROW_HEIGHTS, stakeRow, TABLE_HEAD, tableHead } from './stake-table';

const COUNT_HEIGHT = 30;
/** A drawing is followed by at least this many rows on its sheet, and a count stands below as many. */
const LEAST_ROWS = 3;
/** Least height of the drawing of a handful of stakes. */
const FEW_HEIGHT = 124;
/** Share of the width that the drawing of a handful takes; the words stand beside it. */
const FEW_SHARE = 0.52;
const GAP = 8;
/** Height that a drawing gives up to keep a round on one sheet. */
const SPARE = 40;

/** Tallest drawing of a round of more than a few stakes; the taller ones where they take no sheet more. */
const DRAWING_HEIGHTS = [200, 260, 320] as const;

/**
 * `before`: how many sheets come first. The outline drawings follow right after these sheets.
 * `howTos`: boxes that found no room before.
 */
export function stakePages(
  kit: Kit,
  stakes: StakePlan,
  before: number,
  howTos: readonly HowTo[],
): Draft[] {
  const places = standingPoints(stakes);
  const blind = stakes.stakes.filter((stake) => isBlind(stake, places));
  const twice = new Set(blind.map((stake) => stake.id));
  const opening = (round: Round, drawing: number): Opening => ({
    ...roundOpening(kit, stakes, round, rowsOf(stakes, round), drawing),
    twice,
  });
  const lay = (openings: ReadonlyMap<Round, Opening>, rowHeight: number) =>
    layStakes(kit, stakes, before, howTos, openings, rowHeight);
  const [leastDrawing, ...tallerDrawings] = DRAWING_HEIGHTS;
  const [leastRow, ...tallerRows] = ROW_HEIGHTS;
  let openings = new Map(stakes.rounds.map((round) => [round, opening(round, leastDrawing)]));
  let pages = lay(openings, leastRow);
  for (const round of stakes.rounds.filter((r) => r.stakes.length > FEW)) {
    for (const drawing of tallerDrawings) {
      const taller = new Map(openings).set(round, opening(round, drawing));
      const tried = lay(taller, leastRow);
      if (tried.length === pages.length) [openings, pages] = [taller, tried];
    }
  }
  for (const rowHeight of tallerRows) {
    const tried = lay(openings, rowHeight);
    if (tried.length === pages.length) pages = tried;
  }
  return pages;
}

function layStakes(
  kit: Kit,
  stakes: StakePlan,
  before: number,
  howTos: readonly HowTo[],
  openings: ReadonlyMap<Round, Opening>,
  rowHeight: number,
): Draft[] {
  const flow = startFlow(kit.paper);
  addHowTos(kit, flow, howTos);
  const touched: number[][] = [];
  const note = (round: number) => {
    const page = flow.pageIndex();
    touched[page] = [...new Set([...(touched[page] ?? []), round])];
  };
  for (const round of stakes.rounds) {
    const rows = rowsOf(stakes, round);
    addRound(kit, stakes, round, rows, flow, rowHeight, openings.get(round)!, () =>
      note(round.number),
    );
  }
  const pages = flow.pages();
  const lead =
    'Tapes tight and level. Check off by more than its limit: pull the stake, set it again. ' +
    `All numbers: sheet ${before + pages.length + 1}.`;
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

function rowsOf(stakes: StakePlan, round: Round): Stake[] {
  const byId = stakesById(stakes);
  return round.stakes.map((id) => byId.get(id)).filter((stake) => stake !== undefined);
}

function addRound(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  flow: Flow,
  rowHeight: number,
  opening: Opening,
  note: () => void,
): void {
  const width = kit.paper.right - kit.paper.left;
  const rest = TABLE_HEAD + COUNT_HEIGHT;
  flow.need(opening.height + rest + Math.min(rows.length, LEAST_ROWS) * rowHeight);
  const over = opening.height + rest + rows.length * rowHeight - flow.left();
  const spared = over > 0 && over <= opening.spare ? over : 0;
  note();
  flow.add(opening.marksAt(kit.paper.left, flow.y(), spared), opening.height - spared);
  addTableHead(kit, round, flow);
  rows.forEach((stake, i) => {
    const toEnd = rows.length - i;
    const room = toEnd <= LEAST_ROWS ? toEnd * rowHeight + COUNT_HEIGHT : rowHeight;
    if (flow.need(room)) {
      const head = roundHead(kit, stakes, round, rows, width, true);
      flow.add(head.marksAt(kit.paper.left, flow.y()), head.height);
      addTableHead(kit, round, flow);
    }
    note();
    flow.add(stakeRow(kit, stake, i, flow.y(), rowHeight, opening.twice.has(stake.id)), rowHeight);
  });
  addCount(kit, round, rows.length, flow);
}

interface Opening extends Head {
  /** Stakes whose readings are taken twice. */
  readonly twice: ReadonlySet<string>;
}

/** Words and drawing at the top of a round. */
interface Head {
  readonly height: number;
  /** Height that it gives up to keep a round on one sheet. */
  readonly spare: number;
  /** Marks from the top left at (x, y), drawn `spared` points lower than planned. */
  readonly marksAt: (x: number, y: number, spared: number) => Mark[];
}

/** Each height drawn once: the sheets are laid several times with rows of other heights. */
function remember(draw: (height: number) => readonly Mark[]) {
  const drawn = new Map<number, readonly Mark[]>();
  return (height: number): readonly Mark[] => {
    const marks = drawn.get(height) ?? draw(height);
    drawn.set(height, marks);
    return marks;
  };
}

/** Words and drawing of a round: a handful of stakes has them side by side, more have them stacked. */
function roundOpening(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  drawing: number,
): Head {
  const width = kit.paper.right - kit.paper.left;
  const few = rows.length <= FEW;
  const drawn = few ? width * FEW_SHARE : width;
  const head = roundHead(kit, stakes, round, rows, few ? width - drawn - 12 : width, false);
  const tall = few
    ? Math.max(FEW_HEIGHT, head.height)
    : drawingHeight(kit, stakes, rows, width, drawing);
  const draw = remember((height) =>
    planRoundDrawing(kit, stakes, round, rows, { width: drawn, height }),
  );
  if (few)
    return {
      height: tall + GAP,
      spare: Math.min(SPARE, tall - head.height),
      marksAt: (x, y, spared) => [
        ...moveMarks(draw(tall - spared), x, y),
        ...head.marksAt(x + drawn + 12, y),
      ],
    };
  return {
    height: head.height + tall + GAP,
    spare: SPARE,
    marksAt: (x, y, spared) => [
      ...head.marksAt(x, y),
      ...moveMarks(draw(tall - spared), x, y + head.height),
    ],
  };
}

function addTableHead(kit: Kit, round: Round, flow: Flow): void {
  flow.add(tableHead(kit, flow.y() + 10, round.from === null), TABLE_HEAD);
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
