/** What to load and bring back, who stands where, and what the checks can tell. */
import { guideWork } from '../../labour/guide-work';
import { listInventory, type InventoryItem } from '../../labour/list-inventory';
import type { StakePlan } from '../../stakeout/model';
import { addHowTos, howTosIn } from '../how-to-boxes';
import { stakeHowTos, type HowTo } from '../how-to';
import { checkLimits } from '../check-reach';
import { crewPlaces } from '../crew-words';
import { moveMarks } from '../draw-labels';
import { addRuledHeading } from '../flow-notes';
import { wrapText } from '../fit-text';
import { inkBox, inkRule, inkText } from '../ink';
import { standingPoints, type Kit } from '../kit';
import { FAINT, type Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { wholeLength } from '../pass-groups';
import type { Draft } from '../sheet-head';

const ROW = 15.5;
const QUANTITY_RIGHT = 52;
const NAME = 64;
const NOTE = 226;
const BACK = 12;
const LOADED = 58;
const SIZE = 9.5;
const LINE = 11.5;
/** Share of the width for the places of the crew. */
const CREW_SHARE = 0.4;
const GAP = 16;

export interface LoadPages {
  readonly drafts: readonly Draft[];
  /** How-to boxes that found no room here. */
  readonly leftOver: readonly HowTo[];
}

export function loadPages(kit: Kit, stakes: StakePlan): LoadPages {
  const flow = startFlow(kit.paper);
  addTable(kit, flow, listInventory(stakes, guideWork(kit.plan.guides, kit.plan.passes)));
  flow.add([], 10);
  addColumns(kit, flow, stakes);
  const howTos = stakeHowTos(stakes);
  const count = howTosIn(kit, howTos, flow.left() - HOW_TO_HEAD);
  if (count > 0) {
    flow.add([], 10);
    addRuledHeading(kit, flow, 'How to set a stake');
    addHowTos(kit, flow, howTos.slice(0, count));
  }
  const drafts = flow.pages().map((marks) => ({
    title: 'What to load, who stands where',
    lead: 'Tick loaded at the shed, back at the hold point. Numbers are of this plan.',
    marks,
  }));
  return { drafts, leftOver: howTos.slice(count) };
}

/** The title of the how-to boxes, and the gap above it. */
const HOW_TO_HEAD = 34;

function addTable(kit: Kit, flow: Flow, items: readonly InventoryItem[]): void {
  const { left, right } = kit.paper;
  const y = flow.y() + 10;
  const head = (x: number, text: string, align: 'left' | 'right' | 'centre' = 'left') =>
    inkText(x, y, text, { size: 8, align });
  flow.add(
    [
      head(left + QUANTITY_RIGHT, 'how many', 'right'),
      head(left + NAME, 'what'),
      head(left + NOTE, 'for what, and how it was counted'),
      head(right - LOADED + 6, 'loaded', 'centre'),
      head(right, 'back', 'right'),
      inkRule(left, right, y + 4, 1.2),
    ],
    16,
  );
  items.forEach((item) => flow.add(itemMarks(kit, item, flow.y() + 13), ROW));
}

function itemMarks(kit: Kit, item: InventoryItem, y: number): Mark[] {
  const { left, right } = kit.paper;
  const total = item.id === 'stakes-all';
  const quantity =
    item.unit === 'ft' ? wholeLength(item.quantity, kit.plan.project.units) : String(item.quantity);
  return [
    inkText(left + QUANTITY_RIGHT, y, quantity, { size: 12.5, font: 'bold', align: 'right' }),
    inkText(left + NAME, y, item.name, { size: 10, font: 'bold' }),
    inkText(left + NOTE, y, item.note, { size: 9 }),
    inkBox(right - LOADED, y - 10, 12, 12),
    ...(item.usedUp
      ? [inkText(right, y, 'used', { size: 8, align: 'right' })]
      : [inkBox(right - BACK, y - 10, 12, 12)]),
    inkRule(left, right, y + 4.5, total ? 1.2 : 0.35, total ? 0 : FAINT),
  ];
}

/** Who stands where at the left, what the checks can tell at the right. */
function addColumns(kit: Kit, flow: Flow, stakes: StakePlan): void {
  const { left, right } = kit.paper;
  const middle = left + (right - left) * CREW_SHARE;
  const { crew } = stakes.spec;
  const limits = checkLimits(stakes.stakes, standingPoints(stakes), kit.plan.project.units);
  const places = crewPlaces(crew).map(({ who, text }) => ({ head: who, text }));
  const y = flow.y();
  const columns = [
    columnMarks(kit, `Who sets out: ${crew} people`, places, left, middle - GAP, y),
    columnMarks(kit, 'What the checks can catch', limits, middle, right, y),
  ];
  const height = Math.max(...columns.map((column) => column.height));
  flow.need(height);
  const dy = flow.y() - y;
  flow.add(
    moveMarks(
      columns.flatMap((column) => column.marks),
      0,
      dy,
    ),
    height + 8,
  );
}

function columnMarks(
  kit: Kit,
  title: string,
  words: readonly { readonly head: string; readonly text: string }[],
  x: number,
  right: number,
  top: number,
): { readonly marks: Mark[]; readonly height: number } {
  const marks: Mark[] = [
    inkText(x, top + 14, title, { size: 13, font: 'heading' }),
    inkRule(x, right, top + 19, 1.2),
  ];
  let y = top + 33;
  for (const { head, text } of words) {
    const indent = kit.metrics.width(head, SIZE, 'bold') + 5;
    const lines = wrapAfter(kit, text, right - x, indent);
    marks.push(inkText(x, y, head, { size: SIZE, font: 'bold' }));
    lines.forEach((line, i) =>
      marks.push(inkText(x + (i === 0 ? indent : 0), y + i * LINE, line, { size: SIZE })),
    );
    y += lines.length * LINE + 4;
  }
  return { marks, height: y - LINE - top };
}

/** Lines of which the first starts after a head of width `indent`. */
function wrapAfter(kit: Kit, text: string, width: number, indent: number): string[] {
  const [first] = wrapText(kit.metrics, text, SIZE, 'regular', width - indent);
  if (first === undefined) return [];
  const rest = text.slice(first.length).trimStart();
  return [first, ...wrapText(kit.metrics, rest, SIZE, 'regular', width)];
}
