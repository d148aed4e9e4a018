/** The controls: what the tape touches, where they stand, and the tapes that prove them. */
import { formatLimit } from '../../base/quantity';
import type { Control, ProvingTape } from '../../field/model';
import type { Stake } from '../../stakeout/model';
import { moveMarks } from '../draw-labels';
import { wrapText } from '../fit-text';
import { addHeading, addNote } from '../flow-notes';
import { inkBox, inkRule, inkText } from '../ink';
import { controlsOf, type Kit } from '../kit';
import { FAINT, type Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';
import { controlCells } from '../stake-words';
import { PICTURE, touchPicture } from '../touch-pictures';
import { CHECK_SIZE } from './stake-table';
import { addScaleCheck, addSteel, addTapeChecks } from './tape-notes';

const TEXT_LEFT = PICTURE.width + 12;
const CELLS = [TEXT_LEFT, TEXT_LEFT + 34, TEXT_LEFT + 76, TEXT_LEFT + 160, TEXT_LEFT + 244];
const NAME = TEXT_LEFT + 330;

/** Heights of the rows. */
interface Rows {
  readonly proof: number;
  readonly fixed: number;
  readonly set: number;
  /** The first set control is drawn too: where the tape touches a stake. */
  readonly setPicture: boolean;
}

/** The lower rows when they save a sheet. */
const ROWS: readonly Rows[] = [
  { proof: 21, fixed: PICTURE.height + 8, set: 20, setPicture: true },
  { proof: 18, fixed: PICTURE.height + 3, set: 18, setPicture: true },
  { proof: 18, fixed: PICTURE.height + 2, set: 17, setPicture: false },
];

export function controlPages(kit: Kit): Draft[] {
  const ways = ROWS.map((rows) => layControls(kit, rows));
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
}

function layControls(kit: Kit, rows: Rows): Draft[] {
  const flow = startFlow(kit.paper);
  const controls = controlsOf(kit.plan);
  addTapeChecks(kit, flow);
  addProving(kit, flow, rows.proof);
  addSteel(kit, flow);
  addHead(kit, flow, 'Controls');
  controls.forEach((control) => addControl(kit, flow, control, rows));
  flow.need(42);
  flow.add([], 4);
  addNote(kit, flow, NOTE);
  return flow.pages().map((marks) => ({
    title: 'Controls',
    lead: 'Where the tapes are held. Prove the fixed points before round 1.',
    marks,
  }));
}

const NOTE =
  'Feet: home plate is 0, 0; y toward second base and centre field, x toward first base and right ' +
  'field. sigma: how well the point is known. A set control is a stake driven in its round (the tape ' +
  'touches its middle at the ground), marked so that nobody pulls it, and pulled last, before the count. Its check stands in its row of the ' +
  'round: off by more than the limit, stop and re-measure; set nothing from it until the check is good.';

function addProving(kit: Kit, flow: Flow, height: number): void {
  addHeading(kit, flow, 'Proving tapes, before round 1');
  addNote(
    kit,
    flow,
    'Write down what the tape reads, then that less the printed figure, with its sign.',
  );
  kit.plan.field.proving.forEach((tape) => addProof(kit, flow, tape, height));
  addScaleCheck(kit, flow);
  flow.add([], 4);
  addNote(
    kit,
    flow,
    'One off by more than the limit: tape it again, from the other end. Still off: look for a moved ' +
      'base, a wrong socket or a tape in other units. Set nothing from that point until it is explained; ' +
      'enter the measured figures in the plan and print again.',
  );
  flow.add([], 10);
}

/** `prove HP to 2B 127' 3 1/4" within 1 1/2"`. */
function addProof(kit: Kit, flow: Flow, tape: ProvingTape, height: number): void {
  const { left, right } = kit.paper;
  const y = flow.y() + 14;
  const bold = { size: CHECK_SIZE + 1, font: 'bold' } as const;
  flow.add(
    [
      inkText(left, y, 'prove', { size: 9 }),
      inkText(left + 34, y, `${tape.from} to ${tape.to}`, bold),
      inkText(left + 112, y, tape.text, bold),
      inkText(left + 190, y, `within ${formatLimit(tape.limitIn, kit.plan.project.units)}`, {
        size: CHECK_SIZE,
      }),
      inkText(left + 262, y, 'read', { size: 9 }),
      inkRule(left + 284, left + 358, y + 1),
      inkRule(left + 370, left + 444, y + 1),
      inkBox(left + 456, y - 10, 12, 12),
      inkText(left + 472, y, 'good', { size: 9 }),
      inkBox(left + 496, y - 10, 12, 12),
      inkText(left + 513, y, 'off', { size: 9 }),
      inkRule(left, right, y + 6, 0.35, FAINT),
    ],
    height,
  );
}

function addHead(kit: Kit, flow: Flow, text: string): void {
  const { left, right } = kit.paper;
  addHeading(kit, flow, text);
  const y = flow.y() + 8;
  const head = (x: number, word: string) => inkText(left + x, y, word, { size: 8 });
  flow.add(
    [
      head(0, 'hold the tape at the dot'),
      head(CELLS[2]!, 'x, feet'),
      head(CELLS[3]!, 'y, feet'),
      head(CELLS[4]!, 'sigma, inches'),
      inkRule(left, right, y + 4, 1.2),
    ],
    14,
  );
}

function addControl(kit: Kit, flow: Flow, control: Control, rows: Rows): void {
  const { left, right } = kit.paper;
  const tall = control.kind === 'fixed' || (rows.setPicture && isFirstSet(kit, control));
  const height = tall ? rows.fixed : rows.set;
  if (flow.need(height)) addHead(kit, flow, 'Controls, continued');
  const y = flow.y() + 15;
  const picture = tall
    ? moveMarks(touchPicture(control.picture), left, flow.y() + (height - PICTURE.height) / 2)
    : [];
  const below = tall ? touchLines(kit, control, y) : [];
  flow.add(
    [
      ...picture,
      ...rowMarks(kit, control, y),
      ...below,
      inkRule(left, right, flow.y() + height, 0.35, FAINT),
    ],
    height,
  );
}

/** Set controls all look alike. */
const isFirstSet = (kit: Kit, control: Control): boolean =>
  controlsOf(kit.plan).find((c) => c.kind === 'set') === control;

function rowMarks(kit: Kit, control: Control, y: number): Mark[] {
  const { left } = kit.paper;
  const cells = controlCells(control).map((cell, i) => {
    const bold = i === 0 ? ({ size: 14, font: 'bold' } as const) : { size: 10.5 };
    return inkText(left + CELLS[i]!, y, cell, bold);
  });
  const words = control.kind === 'fixed' ? control.name : setInRound(kit, control.id);
  return [...cells, inkText(left + NAME, y, words, { size: 10.5, font: 'bold' })];
}

function setInRound(kit: Kit, id: string): string {
  const stake: Stake | undefined = kit.plan.stakes?.stakes.find((s) => s.id === id);
  return stake ? `stake, set in round ${stake.round}` : 'stake';
}

function touchLines(kit: Kit, control: Control, y: number): Mark[] {
  const { left, right } = kit.paper;
  const width = right - left - TEXT_LEFT;
  const text = `Tape touches: ${control.touch}.`;
  return wrapText(kit.metrics, text, 10.5, 'regular', width)
    .slice(0, 2)
    .map((line, i) => inkText(left + TEXT_LEFT, y + 15 + i * 12, line, { size: 10.5 }));
}
