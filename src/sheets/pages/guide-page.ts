/** Guide lines: what is strung, on which side to drive, and the running distances along the edges. */
import { feetToInches } from '../../base/units';
import { formatLimit } from '../../base/quantity';
import type { EdgeMark, EdgeTable, GuideStake } from '../../guide/model';
import { machineHalfFt } from '../../guide/lay-strings';
import { stringTurns, type StringTurn } from '../../guide/string-turns';
import { addNote, addRuledHeading } from '../flow-notes';
import { wrapText } from '../fit-text';
import { guideDrawing } from '../guide-drawing';
import { driftWords, EDGE_WORDS, zeroWords } from '../guide-words';
import { boxRing, inkBox, inkRing, inkRule, inkStroke, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT, type Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { wholeLength } from '../pass-groups';
import type { Draft } from '../sheet-head';
import { guideSign } from '../symbols';

const ROW = 15;
const DRAWING_HEIGHT = 250;

/** No sheets without straight bands. */
export function guidePages(kit: Kit): Draft[] {
  const { guides, passes, project } = kit.plan;
  if (guides.tables.length === 0) return [];
  const turns = stringTurns(guides, passes);
  const flow = startFlow(kit.paper);
  if (turns.length > 0) addSafety(kit, flow, turns);
  addDrawing(kit, flow);
  if (turns.length > 0) addTurns(kit, flow, turns);
  for (const words of driftWords(guides, passes, project.units)) addNote(kit, flow, words);
  flow.add([], 6);
  guides.tables.forEach((table) => addTable(kit, flow, table));
  return flow.pages().map((marks) => ({
    title: 'Guide lines',
    lead: 'Before the background: dot every band edge along one tape, then string the first passes, one at a time.',
    marks,
  }));
}

const SAFETY_LINE = 12;

function addSafety(kit: Kit, flow: Flow, turns: readonly StringTurn[]): void {
  const { left, right } = kit.paper;
  const lines = safetyWords(kit, turns).flatMap((text) =>
    wrapText(kit.metrics, text, 10, 'bold', right - left - 16),
  );
  const top = flow.y();
  const height = lines.length * SAFETY_LINE + 9;
  flow.add(
    [
      inkRing(boxRing({ minX: left, maxX: right, minY: top, maxY: top + height }), inkStroke(2)),
      ...lines.map((line, i) =>
        inkText(left + 8, top + 13 + i * SAFETY_LINE, line, { size: 10, font: 'bold' }),
      ),
    ],
    height + 8,
  );
}

function safetyWords(kit: Kit, turns: readonly StringTurn[]): string[] {
  const { units } = kit.plan.project;
  const wide = kit.plan.passes.machines.find((machine) => machine.role === 'wide')!;
  const { middleFt, lengthFt } = turns.reduce((a, b) =>
    b.string.lengthFt > a.string.lengthFt ? b : a,
  ).string;
  const clear = formatFloor(feetToInches(middleFt.ft - machineHalfFt(wide)), units);
  return [
    'A string stands only while its own pass is driven. Put it up when the machine waits at the start of that pass, cutters stopped; lift it and both stakes before the machine turns away.',
    `Drive with the middle of the machine ${middleFt.text} from the string, on the side printed below: ${clear} stay clear between them. Nobody stands there.`,
    `Two guide stakes and one string of ${wholeLength(Math.ceil(lengthFt + 1), units)} serve all. Two out, two in: tick after every pass. None stands when another pass is driven.`,
  ];
}

/** A clearance is never rounded up. */
const formatFloor = (valueIn: number, units: Parameters<typeof formatLimit>[1]): string => {
  const per = units === 'metric' ? 25.4 : 4;
  return formatLimit(Math.floor(valueIn * per) / per, units);
};

function addDrawing(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const top = flow.y();
  const window = { minX: left, maxX: right, minY: top, maxY: top + DRAWING_HEIGHT };
  flow.add(guideDrawing(kit, window), DRAWING_HEIGHT + 6);
}

/** Left edges of the columns, and their heads. */
const COLUMNS = [
  [0, 'string'],
  [30, 'pass'],
  [58, 'driven from'],
  [190, 'to'],
  [322, 'string at driver’s'],
  [388, 'lift before'],
  [434, 'driven over'],
] as const;
const LIFTED = 56;

function addTurns(kit: Kit, flow: Flow, turns: readonly StringTurn[]): void {
  const { left, right } = kit.paper;
  const head = (): void => {
    const y = flow.y() + 10;
    const words = COLUMNS.map(([x, word]) => inkText(left + x, y, word, { size: 8 }));
    const boxes = [
      inkText(right - LIFTED + 6, y, 'up', { size: 8, align: 'centre' }),
      inkText(right, y, 'lifted, 2 in', { size: 8, align: 'right' }),
    ];
    flow.add([...words, ...boxes, inkRule(left, right, y + 4, 1.2)], 15);
  };
  flow.need(15 + ROW);
  head();
  for (const turn of turns) {
    if (flow.need(ROW)) head();
    flow.add(turnMarks(kit, turn, flow.y() + 12), ROW);
  }
  flow.add([], 6);
}

function turnMarks(kit: Kit, { string, pass, liftBefore, over }: StringTurn, y: number): Mark[] {
  const { left, right } = kit.paper;
  const cells: readonly string[] = [
    string.id,
    String(pass.number),
    stakeText(string.from),
    stakeText(string.to),
    string.side,
    liftBefore === null ? 'done' : `pass ${liftBefore}`,
    over === null ? 'no pass' : `pass ${over}`,
  ];
  return [
    ...cells.map((text, i) =>
      inkText(left + COLUMNS[i]![0], y, text, {
        size: i < 2 ? 10.5 : 9.5,
        font: i < 2 || i === 4 ? 'bold' : 'regular',
      }),
    ),
    inkBox(right - LIFTED, y - 9, 11, 11),
    inkBox(right - 11, y - 9, 11, 11),
    inkRule(left, right, y + 3.4, 0.35, FAINT),
  ];
}

const stakeText = ({ id, edge, along }: GuideStake): string =>
  `${id} ${EDGE_WORDS[edge].toLowerCase()} ${along.text}`;

const MARK_COLUMNS = 5;
const MARK_ROW = 13;
/** Heading and words over the marks, at most. */
const TABLE_HEAD = 76;

function addTable(kit: Kit, flow: Flow, table: EdgeTable): void {
  const { units } = kit.plan.project;
  const heading = `${EDGE_WORDS[table.edge]}, ${table.marks.length} dots`;
  const whole = TABLE_HEAD + Math.ceil(table.marks.length / MARK_COLUMNS) * MARK_ROW;
  flow.add([], 8);
  if (whole <= kit.paper.bottom - kit.paper.top) flow.need(whole);
  addRuledHeading(kit, flow, heading);
  addNote(kit, flow, zeroWords(table, units));
  addNote(kit, flow, totalWords(kit, table));
  flow.add([], 3);
  let rest = table.marks;
  while (rest.length > 0) {
    flow.need(2 * MARK_ROW);
    const fits = Math.floor(flow.left() / MARK_ROW);
    const rows = Math.min(fits, Math.ceil(rest.length / MARK_COLUMNS));
    addMarks(kit, flow, rest.slice(0, rows * MARK_COLUMNS), rows);
    rest = rest.slice(rows * MARK_COLUMNS);
    if (rest.length > 0) flow.newPage();
  }
  flow.add([], 4);
}

/** The check at the far end, and what to do with a tape that is shorter than the edge. */
function totalWords(kit: Kit, { edge, total }: EdgeTable): string {
  const { limitFt } = kit.plan.project.stakeout.tape;
  const end = edge === 'skin' || edge === 'track' ? 'the right foul line' : 'the skin';
  const check = `Check: the edge ends at ${end} at ${total.text}.`;
  if (total.ft <= limitFt) return check;
  const full = wholeLength(Math.floor(limitFt), kit.plan.project.units);
  return `${check} Where the tape ends, at ${full}, set a pin, carry the zero there and take ${full} off what is printed.`;
}

/** Down the first column, then the next: the order of the tape. */
function addMarks(kit: Kit, flow: Flow, marks: readonly EdgeMark[], rows: number): void {
  const { left, right } = kit.paper;
  const width = (right - left) / MARK_COLUMNS;
  const top = flow.y();
  const cells = marks.flatMap((mark, i) => {
    const x = left + Math.floor(i / rows) * width;
    const y = top + (i % rows) * MARK_ROW + 10;
    const isStake = mark.kind === 'stake';
    return [
      ...(isStake ? guideSign({ x: x + 4, y: y - 3.2 }, 3.4) : []),
      inkText(x + 11, y, mark.name, { size: 9, font: isStake ? 'bold' : 'regular' }),
      inkText(x + width - 14, y, mark.along.text, { size: 10, font: 'bold', align: 'right' }),
      inkRule(x, x + width - 10, y + 3, 0.3, FAINT),
    ];
  });
  flow.add(cells, rows * MARK_ROW);
}
