/** The outline drawn between stakes as they stand: what to set again, then the drawing and the list. */
import type { AsSetPiece, AsSetStake, Audit } from '../../audit/model';
import { formatLimit } from '../../base/quantity';
import type { StakePlan } from '../../stakeout/model';
import { wrapText } from '../fit-text';
import { addHeading, addNote } from '../flow-notes';
import { inkBox, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';
import { outlinePages } from './outline-pages';

/** `carried`: the plan from where the stakes stand. */
export function asSetPages(kit: Kit, carried: StakePlan, audit: Audit): Draft[] {
  const lead = `From where the stakes stand by ${audit.readings} readings, in place of the outline sheets of the packet.`;
  const outline = outlinePages(kit, carried).map((draft) => ({
    ...draft,
    title: draft.title.replace('Outline', 'Outline as set'),
    lead,
  }));
  return [whatToSetAgain(kit, audit, lead), ...outline].flat();
}

function whatToSetAgain(kit: Kit, audit: Audit, lead: string): Draft[] {
  const flow = startFlow(kit.paper);
  addVerdict(kit, flow, audit.verdict);
  const again = audit.stakes.filter((s) => s.move === 'now');
  addHeading(kit, flow, again.length === 0 ? 'No stake to set again' : 'Pull and set again');
  if (again.length > 0) addNote(kit, flow, FIRST);
  for (const stake of again) addStake(kit, flow, stake);
  const doubtful = audit.stakes.filter((s) => s.move === 'once-measured-again');
  if (doubtful.length > 0) {
    flow.add([], 8);
    addHeading(kit, flow, 'Measure again first; if it is so, pull and set again');
    for (const stake of doubtful) addStake(kit, flow, stake);
  }
  flow.add([], 8);
  const changed = audit.outline.filter((p) => p.changed);
  addHeading(kit, flow, 'Pieces with another size than in the packet');
  addNote(kit, flow, changed.length === 0 ? 'None.' : `${changed.map(pieceName).join(', ')}.`);
  flow.add([], 8);
  const beyond = audit.outline.filter((p) => !p.within);
  addHeading(kit, flow, 'Pieces that cannot follow the art from here');
  addNote(kit, flow, beyond.length === 0 ? 'None.' : BEYOND);
  for (const piece of beyond) addBeyond(kit, flow, piece);
  return flow.pages().map((marks) => ({ title: 'Outline as set, stakes', lead, marks }));
}

const FIRST =
  'Mark nothing before these stand again and are checked: the pieces at them are drawn from the wrong ' +
  'place. Then make the readings again and print anew. The ticks here are for stakes set again.';

const BEYOND =
  'Set the stakes above again first, check them, and print anew. What is left after that is the price of drawing from here.';

const pieceName = (p: AsSetPiece): string => `${p.contour}.${p.seq}`;

function addVerdict(kit: Kit, flow: Flow, verdict: string): void {
  const { left, right } = kit.paper;
  for (const line of wrapText(kit.metrics, verdict, 11, 'bold', right - left))
    flow.add([inkText(left, flow.y() + 11, line, { size: 11, font: 'bold' })], 14);
  flow.add([], 8);
}

const ROW = 18;

function addStake(kit: Kit, flow: Flow, stake: AsSetStake): void {
  const { units } = kit.plan.project;
  const off = `stands ${formatLimit(stake.offIn, units)} ${stake.toward} of its place`;
  addRow(kit, flow, stake.stake, off);
}

function addBeyond(kit: Kit, flow: Flow, piece: AsSetPiece): void {
  const { units } = kit.plan.project;
  addRow(kit, flow, pieceName(piece), `${formatLimit(piece.gapIn, units)} from the art`);
}

function addRow(kit: Kit, flow: Flow, name: string, words: string): void {
  const { left, right } = kit.paper;
  flow.need(ROW);
  const y = flow.y() + 13;
  flow.add(
    [
      inkText(left, y, name, { size: 11.5, font: 'bold' }),
      inkText(left + 60, y, words, { size: 10.5 }),
      inkBox(right - 16, y - 9, 11, 11),
      inkRule(left, right, y + 5, 0.35, FAINT),
    ],
    ROW,
  );
}
