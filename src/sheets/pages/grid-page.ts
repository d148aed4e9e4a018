/** The customary grid, on request: string by string, the distance to each crossing of the outline. */
import { formatLength } from '../../base/quantity';
import { gridSheet, type GridSheet, type GridString } from '../../stakeout/grid-sheet';
import { wrapText } from '../fit-text';
import { inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';

const TEXT = 9.5;
const LINE = 12;
const MARKS_LEFT = 132;
const MARK_WIDTH = 66;

/** No sheets when the project asks for no grid or has no graphic. */
export function gridPages(kit: Kit): Draft[] {
  const { project, design } = kit.plan;
  const { gridSheet: wanted } = project.stakeout;
  const sheet = wanted && gridSheet(design.graphic, wanted.spacingFt, project.units);
  if (!sheet) return [];
  const flow = startFlow(kit.paper);
  addHow(kit, flow, sheet);
  for (const string of sheet.strings) addString(kit, flow, string);
  return flow.pages().map((marks) => ({
    title: 'Grid',
    lead: 'The outline by square strings, in place of the stakes. Mark every distance, then join the marks.',
    marks,
  }));
}

function addHow(kit: Kit, flow: Flow, sheet: GridSheet): void {
  const { left, right } = kit.paper;
  const length = (ft: number) => formatLength(ft, kit.plan.project.units);
  const text =
    `Strings stand ${length(sheet.spacingFt)} apart. U strings run away from home plate, U1 ` +
    `${sideText(sheet.leftFt, length)}; A strings run square to them, A1 ${length(sheet.nearFt)} beyond ` +
    'home plate’s point on the line through second base. Measure along a U string from A1, along an A ' +
    'string from U1. A string without a crossing is left out of the list.';
  const lines = wrapText(kit.metrics, text, TEXT, 'regular', right - left);
  const marks = lines.map((line, i) =>
    inkText(left, flow.y() + 10 + i * LINE, line, { size: TEXT }),
  );
  flow.add(marks, lines.length * LINE + 8);
}

function sideText(ft: number, length: (ft: number) => string): string {
  if (ft === 0) return 'on the line through home plate and second base';
  return `${length(Math.abs(ft))} ${ft < 0 ? 'left' : 'right'} of the line through home plate and second base`;
}

function addString(kit: Kit, flow: Flow, string: GridString): void {
  if (string.marks.length === 0) return;
  const { left, right } = kit.paper;
  const perRow = Math.max(1, Math.floor((right - left - MARKS_LEFT) / MARK_WIDTH));
  const height = Math.ceil(string.marks.length / perRow) * LINE + 6;
  flow.need(height);
  const y = flow.y() + 10;
  const head = inkText(left, y, `${string.name}  ${placeText(kit, string)}`, {
    size: TEXT,
    font: 'bold',
  });
  const marks = string.marks.map((mark, i) =>
    inkText(
      left + MARKS_LEFT + (i % perRow) * MARK_WIDTH,
      y + Math.floor(i / perRow) * LINE,
      mark.text,
      { size: TEXT },
    ),
  );
  flow.add([head, ...marks, inkRule(left, right, flow.y() + height - 2, 0.35, FAINT)], height);
}

function placeText(kit: Kit, { way, atFt }: GridString): string {
  if (way === 'up' && atFt === 0) return 'centre line';
  const at = formatLength(Math.abs(atFt), kit.plan.project.units);
  return way === 'across' ? `${at} out` : `${at} ${atFt < 0 ? 'left' : 'right'}`;
}
