/** Pass sheets, one set per machine and phase: hold point, drawing, list. */
import { stringTurns } from '../../guide/string-turns';
import type { Pass } from '../../mowing/model';
import { formatFeetInches, formatMetres } from '../../base/quantity';
import { unitFromBearing } from '../../geometry/angle';
import { moveMarks } from '../draw-labels';
import { cutText, wrapText } from '../fit-text';
import { inkBox, inkLine, inkRule, inkStroke, inkText } from '../ink';
import type { Kit } from '../kit';
import { drawLegend, passLegend, PLACES_LEGEND } from '../legend';
import { FAINT, type Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import { groupPasses, layWord, PHASE_WORDS, wholeLength, type PassGroup } from '../pass-groups';
import { drawPassPanel, planPassPanels } from '../pass-panels';
import { leastScaleIn, type Panel } from '../plan-panels';
import type { Draft } from '../sheet-head';
import { arrowHead, backSign } from '../symbols';
import { HOLD_HEIGHT, holdPoint } from './hold-point';

const COLUMNS = 3;
const GAP = 8;
/** Rows of the list; the lower ones when that saves a sheet. */
const ROW_HEIGHTS = [14, 13] as const;
const HEAD_HEIGHT = 15;
const LEGEND = 28;
const LEGEND_ROW = 12;
const PANEL_HEAD = 13;
const PANEL_GAP = 8;
/** Shares of the sheet that one drawing may take. */
const DRAWING_SHARES = [0.62, 0.75, 0.85, 1] as const;

export function passPages(kit: Kit): Draft[] {
  const groups = groupPasses(kit.plan.passes, kit.plan.project.units);
  const graphic = groups.findIndex((group) => group.phase === 'graphic');
  const telling = graphic >= 0 ? graphic : groups.length - 1;
  return groups.flatMap((group, i) => groupPages(kit, group, i === telling));
}

/** The way on the fewest sheets; then with the fewest drawings; then at the largest scale. */
function groupPages(kit: Kit, group: PassGroup, told: boolean): Draft[] {
  const ways = panelWays(kit, group).flatMap((panels) =>
    ROW_HEIGHTS.map((rowHeight): Way => {
      const blank = { panels, drawings: panels.map(() => []) };
      return { panels, rowHeight, sheets: layGroup(kit, group, told, blank, rowHeight).length };
    }),
  );
  const { panels, rowHeight } = ways.reduce((a, b) => (isBetter(b, a) ? b : a));
  const drawings = panels.map((panel) => drawPassPanel(kit, group, panel));
  return layGroup(kit, group, told, { panels, drawings }, rowHeight);
}

interface Way {
  readonly panels: readonly Panel[];
  readonly rowHeight: number;
  readonly sheets: number;
}

function isBetter(a: Way, b: Way): boolean {
  if (a.sheets !== b.sheets) return a.sheets < b.sheets;
  if (a.panels.length !== b.panels.length) return a.panels.length < b.panels.length;
  return leastScaleIn(a.panels) > leastScaleIn(b.panels);
}

/** Drawings of several heights; where there are more than one, also all at the scale of the smallest. */
function panelWays(kit: Kit, group: PassGroup): Panel[][] {
  const room = kit.paper.bottom - kit.paper.top - LEGEND - (group.afterHold ? HOLD_HEIGHT : 30);
  return DRAWING_SHARES.flatMap((share) => {
    const free = planPassPanels(kit, group, (room - PANEL_HEAD - PANEL_GAP) * share);
    const scale = leastScaleIn(free);
    if (!free.some((panel) => panel.frame.scale > scale)) return [free];
    return [free, planPassPanels(kit, group, (room - PANEL_HEAD - PANEL_GAP) * share, scale)];
  });
}

/** Panels with their marks. */
interface Drawn {
  readonly panels: readonly Panel[];
  readonly drawings: readonly (readonly Mark[])[];
}

function layGroup(
  kit: Kit,
  group: PassGroup,
  told: boolean,
  drawn: Drawn,
  rowHeight: number,
): Draft[] {
  const flow = startFlow(kit.paper);
  if (group.afterHold) flow.add(holdPoint(kit, flow.y()), HOLD_HEIGHT);
  else addBeforeHold(kit, group, flow);
  addDrawings(kit, group, drawn, flow);
  addList(kit, group, flow, rowHeight);
  addCount(kit, group, flow);
  if (told) addUncovered(kit, flow);
  return flow.pages().map((marks) => ({
    title: `Passes, ${PHASE_WORDS[group.phase]}`,
    lead: leadText(kit, group),
    marks,
  }));
}

function leadText(kit: Kit, group: PassGroup): string {
  const { machine, passes } = group;
  const { units } = kit.plan.project;
  const cut = machine.cutWidthIn / 12;
  const width = units === 'metric' ? formatMetres(cut, 2) : formatFeetInches(cut, 4);
  const total = wholeLength(
    passes.reduce((sum, pass) => sum + pass.lengthFt, 0),
    units,
  );
  return `${machine.name}, ${width} wide. ${passes.length} passes, ${total} in all.`;
}

function addBeforeHold(kit: Kit, group: PassGroup, flow: Flow): void {
  const text = [
    ...(kit.plan.stakes
      ? [
          'Before setting out: no stake, pin or string of the graphic stands on the grass yet. This machine leaves the grass before the first stake is driven.',
        ]
      : []),
    ...guidedWords(kit, group),
  ].join(' ');
  if (text === '') return;
  const { left, right } = kit.paper;
  for (const line of wrapText(kit.metrics, text, 9.5, 'bold', right - left))
    flow.add([inkText(left, flow.y() + 10, line, { size: 9.5, font: 'bold' })], 12);
  flow.add([], 6);
}

/** Which passes of the group have a guide string beside them. */
function guidedWords(kit: Kit, group: PassGroup): string[] {
  const { guides, passes } = kit.plan;
  const own = new Set(group.passes.map((pass) => pass.number));
  const numbers = stringTurns(guides, passes)
    .filter(({ pass }) => pass.machine === group.machine.id && own.has(pass.number))
    .map(({ pass }) => pass.number);
  if (numbers.length === 0) return [];
  const which = `${numbers.length === 1 ? 'Pass' : 'Passes'} ${numbers.join(', ')}`;
  return [
    `${which}: along a guide string, which stands for that pass alone and is lifted before the turn (sheet Guide lines).`,
  ];
}

function addDrawings(kit: Kit, group: PassGroup, { panels, drawings }: Drawn, flow: Flow): void {
  const { left } = kit.paper;
  const backs = group.passes.some((pass) => group.backs.has(pass.number));
  const legend = passLegend(group.machine.laysInTransit ? '' : LIFTED, backs);
  const rows = [legend, PLACES_LEGEND].flatMap((row, i) =>
    drawLegend(kit.metrics, row, left, flow.y() + 9 + i * LEGEND_ROW),
  );
  flow.add(rows, LEGEND);
  panels.forEach((panel, i) => {
    const height = panel.frame.window.maxY;
    const words = panels.length > 1 ? `Drawing ${i + 1} of ${panels.length}` : '';
    flow.need(height + PANEL_HEAD);
    if (words !== '') flow.add([inkText(left, flow.y() + 9, words, { size: 9 })], PANEL_HEAD);
    flow.add(moveMarks(drawings[i]!, left, flow.y()), height + PANEL_GAP);
  });
}

/** Of machines that lift what leans the grass; the others roll through their turns. */
const LIFTED = ', cutters and rollers up';

function addList(kit: Kit, group: PassGroup, flow: Flow, rowHeight: number): void {
  let rest: readonly Pass[] = group.passes;
  while (rest.length > 0) {
    flow.need(HEAD_HEIGHT + 4 * rowHeight);
    const fits = Math.floor((flow.left() - HEAD_HEIGHT) / rowHeight);
    const rows = Math.min(fits, Math.ceil(rest.length / COLUMNS));
    const part = rest.slice(0, rows * COLUMNS);
    addColumns(kit, group, part, rows, rowHeight, flow);
    rest = rest.slice(part.length);
    if (rest.length > 0) flow.newPage();
  }
}

function addColumns(
  kit: Kit,
  group: PassGroup,
  part: readonly Pass[],
  rows: number,
  rowHeight: number,
  flow: Flow,
): void {
  const { left, right } = kit.paper;
  const width = (right - left - GAP * (COLUMNS - 1)) / COLUMNS;
  const top = flow.y();
  const count = Math.ceil(part.length / rows);
  const heads = Array.from({ length: count }, (_, c) =>
    columnHead(left + c * (width + GAP), width, top + 9),
  );
  const cells = part.map((pass, i) => {
    const x = left + Math.floor(i / rows) * (width + GAP);
    const y = top + HEAD_HEIGHT + (i % rows) * rowHeight + rowHeight - 4;
    return passCells(kit, group, pass, x, y, width);
  });
  flow.add([...heads.flat(), ...cells.flat()], HEAD_HEIGHT + rows * rowHeight + 6);
}

function columnHead(x: number, width: number, y: number): Mark[] {
  const head = (dx: number, text: string, align: 'left' | 'right' = 'left') =>
    inkText(x + dx, y, text, { size: 8, align });
  return [
    head(0, 'pass'),
    head(34.5, 'lay'),
    head(87, 'length', 'right'),
    head(90, 'then'),
    inkRule(x, x + width, y + 4, 1.1),
  ];
}

function passCells(kit: Kit, group: PassGroup, pass: Pass, x: number, y: number, width: number) {
  const lay = layWord(pass);
  const backs = group.backs.has(pass.number);
  const room = width - 90 - 11 - (backs ? 10 : 0);
  const next = cutText(kit.metrics, group.thenText.get(pass.number) ?? '', 8, 'regular', room);
  return [
    inkText(x, y, String(pass.number), { size: 10, font: 'bold' }),
    ...(lay.bearingDeg === null ? [] : layArrow(x + 27, y - 3, lay.bearingDeg)),
    inkText(x + 34, y, lay.word, { size: 8.5 }),
    inkText(x + 87, y, wholeLength(pass.lengthFt, kit.plan.project.units), {
      size: 8.5,
      align: 'right',
    }),
    inkText(x + 90, y, next, { size: 8 }),
    ...(backs ? [backSign({ x: x + width - 16, y: y - 0.5 }, 6)] : []),
    inkBox(x + width - 10, y - 8, 9, 9, 0.7),
    inkRule(x, x + width, y + 3.6, 0.3, FAINT),
  ];
}

/** A small arrow the way the pass is driven, home at the foot of the sheet. */
function layArrow(x: number, y: number, bearingDeg: number): Mark[] {
  const { x: ux, y: uy } = unitFromBearing(bearingDeg);
  const end = (k: number) => ({ x: x + ux * k, y: y - uy * k });
  return [inkLine([end(-5), end(2)], inkStroke(1)), arrowHead(end(5.5), ux, -uy, 5)];
}

function addCount(kit: Kit, group: PassGroup, flow: Flow): void {
  const { left, right } = kit.paper;
  flow.need(30);
  const y = flow.y() + 20;
  const word = (x: number, text: string) => inkText(left + x, y, text, { size: 10 });
  flow.add(
    [
      word(0, 'passes done'),
      inkBox(left + 64, y - 13, 44, 18),
      inkText(left + 116, y, `of ${group.passes.length}`, { size: 10, font: 'bold' }),
      word(180, 'started'),
      inkBox(left + 220, y - 13, 60, 18),
      word(296, 'finished'),
      inkBox(left + 340, y - 13, 60, 18),
      inkText(right - 66, y, 'initials', { size: 10, align: 'right' }),
      inkBox(right - 60, y - 13, 60, 18),
    ],
    30,
  );
}

/** Parts of the graphic that no tool reaches, by place. */
function addUncovered(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const { uncovered, graphicCovered } = kit.plan.passes;
  if (uncovered.length === 0) return;
  const share = `${(Math.floor(graphicCovered * 1000) / 10).toFixed(1)} %`;
  const places = uncovered.map((u) => `${u.place} (${u.areaSqFt.toFixed(1)} sq ft)`).join('; ');
  const text = `Planned passes cover ${share} of the graphic. Left to a hand broom or roller: ${places}.`;
  for (const line of wrapText(kit.metrics, text, 9, 'regular', right - left)) {
    flow.need(12);
    flow.add([inkText(left, flow.y() + 10, line, { size: 9 })], 12);
  }
}
