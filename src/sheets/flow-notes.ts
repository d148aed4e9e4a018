/** Headings, notes and ticks of a running sheet. */
import { wrapText } from './fit-text';
import { inkBox, inkRule, inkText } from './ink';
import type { Kit } from './kit';
import type { Flow } from './page-flow';

export function addHeading(kit: Kit, flow: Flow, text: string): void {
  flow.add([inkText(kit.paper.left, flow.y() + 14, text, { size: 14, font: 'heading' })], 22);
}

/** A heading over a rule from edge to edge, kept together with what follows. */
export function addRuledHeading(kit: Kit, flow: Flow, text: string): void {
  const { left, right } = kit.paper;
  flow.need(70);
  const y = flow.y() + 14;
  flow.add(
    [inkText(left, y, text, { size: 14, font: 'heading' }), inkRule(left, right, y + 5, 1.2)],
    23,
  );
}

export function addNote(kit: Kit, flow: Flow, text: string): void {
  const { left, right } = kit.paper;
  for (const line of wrapText(kit.metrics, text, 9, 'regular', right - left))
    flow.add([inkText(left, flow.y() + 9, line, { size: 9 })], 12);
}

export function addTick(kit: Kit, flow: Flow, text: string): void {
  const { left } = kit.paper;
  const y = flow.y() + 11;
  flow.add([inkBox(left, y - 9, 10, 10), inkText(left + 18, y, text, { size: 10 })], 16);
}
