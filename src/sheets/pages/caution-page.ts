/** Cautions and what must be done before the first stake. */
import { wrapText } from '../fit-text';
import { cautionGroups, type Caution } from '../cautions';
import { addRuledHeading } from '../flow-notes';
import { inkBox, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';

const TEXT_SIZE = 9.5;
const LINE = 11;
const HEAD_WIDTH = 136;

export function cautionPages(kit: Kit): Draft[] {
  const flow = startFlow(kit.paper);
  const { project, field } = kit.plan;
  for (const group of cautionGroups(
    project.units,
    field.keepOuts.map((keepOut) => keepOut.name),
  )) {
    addRuledHeading(kit, flow, group.title);
    group.cautions.forEach((caution) => addCaution(kit, flow, caution));
    flow.add([], 6);
  }
  addSigned(kit, flow);
  return flow.pages().map((marks) => ({
    title: 'Before you start',
    lead: 'Read all of it aloud. No stake is driven before every box here is ticked.',
    marks,
  }));
}

function addCaution(kit: Kit, flow: Flow, caution: Caution): void {
  const { left, right } = kit.paper;
  const x = left + HEAD_WIDTH;
  const lines = wrapText(kit.metrics, caution.text, TEXT_SIZE, 'regular', right - x);
  const height = Math.max(1, lines.length) * LINE + 4.5;
  flow.need(height);
  const y = flow.y() + 12;
  flow.add(
    [
      ...(caution.tick ? [inkBox(left, y - 9, 11, 11)] : []),
      inkText(left + 18, y, caution.head, { size: TEXT_SIZE, font: 'bold' }),
      ...lines.map((line, i) => inkText(x, y + i * LINE, line, { size: TEXT_SIZE })),
      inkRule(left, right, flow.y() + height, 0.35, FAINT),
    ],
    height,
  );
}

function addSigned(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  flow.need(36);
  const y = flow.y() + 22;
  flow.add(
    [
      inkText(left, y, 'Read to the crew by', { size: 10 }),
      inkRule(left + 96, left + 280, y + 1),
      inkText(left + 296, y, 'day and time', { size: 10 }),
      inkRule(left + 360, right, y + 1),
    ],
    36,
  );
}
