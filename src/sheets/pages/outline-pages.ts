/** Outline sheets: drawings on which every stake number can be read, then the strings and swings. */
import type { Contour, StakePlan } from '../../stakeout/model';
import { moveMarks } from '../draw-labels';
import { inkBox, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { drawLegend, GUIDE_ENTRY, STAKE_LEGEND } from '../legend';
import { FAINT } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';
import { drawLocator, LOCATOR_HEIGHT } from '../outline-locator';
import { leastScaleIn } from '../plan-panels';
import { drawStakePanel, planStakePanels, type StakePanelOptions } from '../stake-panels';
import { outlineCells } from '../stake-words';

const LEGEND = 18;
const PANEL_HEAD = 16;
const GAP = 8;
/** Rows of the list: as high as goes on the fewest sheets. */
const ROW_HEIGHTS = [20, 19.5, 19, 18.5, 18, 17.5, 17, 16.5] as const;

export function outlinePages(kit: Kit, stakes: StakePlan): Draft[] {
  return [...drawingPages(kit, stakes), ...listPages(kit, stakes)];
}

/** The drawings on the fewest sheets; of two ways that take as many, the one at the larger scale. */
function drawingPages(kit: Kit, stakes: StakePlan): Draft[] {
  const { paper } = kit;
  const whole = paper.bottom - paper.top - LEGEND - PANEL_HEAD;
  const beside = layDrawings(kit, stakes, whole - LOCATOR_HEIGHT - GAP);
  const alone = layDrawings(kit, stakes, whole);
  const fewer = alone.pages.length - beside.pages.length;
  return fewer < 0 || (fewer === 0 && alone.scale > beside.scale) ? alone.pages : beside.pages;
}

/** Drawings no higher than `maxHeight`, and the scale of the smallest. */
function layDrawings(
  kit: Kit,
  stakes: StakePlan,
  maxHeight: number,
): { readonly pages: Draft[]; readonly scale: number } {
  const { paper } = kit;
  const flow = startFlow(paper);
  const options: StakePanelOptions = {
    stakes,
    named: stakes.stakes.filter((stake) => stake.kind !== 'control'),
    held: [],
    width: paper.right - paper.left,
    maxHeight,
  };
  const panels = planStakePanels(kit, options);
  addLegend(kit, flow);
  const locator = drawLocator(kit, stakes, panels, options.width);
  flow.add(moveMarks(locator, paper.left, flow.y()), LOCATOR_HEIGHT + GAP);
  panels.forEach((panel, i) => {
    const height = panel.frame.window.maxY;
    if (flow.need(PANEL_HEAD + height)) addLegend(kit, flow);
    const words = panels.length > 1 ? `Drawing ${i + 1} of ${panels.length}. ` : '';
    flow.add(
      [inkText(paper.left, flow.y() + 10, `${words}Home plate is toward the foot.`, { size: 9 })],
      PANEL_HEAD,
    );
    const marks = drawStakePanel(kit, panel, options);
    flow.add(moveMarks(marks, paper.left, flow.y()), height + GAP);
  });
  const pages = flow.pages().map((marks) => ({
    title: 'Outline, drawing',
    lead: `${stakes.strings} strings and ${stakes.swings} swings. Numbers stand beside their stakes or at a leader.`,
    marks,
  }));
  return { pages, scale: leastScaleIn(panels) };
}

function addLegend(kit: Kit, flow: Flow): void {
  const guides = kit.plan.stakes?.stakes.some((stake) => stake.kind === 'guide') ?? false;
  const legend = guides ? [...STAKE_LEGEND, GUIDE_ENTRY] : STAKE_LEGEND;
  flow.add(drawLegend(kit.metrics, legend, kit.paper.left, flow.y() + 9), LEGEND);
}

/** Left ends of the columns, points from the left margin. */
const COLUMNS = [0, 40, 88, 150, 204, 260, 380] as const;
const HEADS = ['piece', 'what', 'from', 'to', 'pin', 'radius', 'turn'] as const;

/** The list with rows as high as they may be without another sheet. */
function listPages(kit: Kit, stakes: StakePlan): Draft[] {
  const ways = ROW_HEIGHTS.map((rowHeight) => layList(kit, stakes, rowHeight));
  const fewest = Math.min(...ways.map((pages) => pages.length));
  return ways.find((pages) => pages.length === fewest)!;
}

function layList(kit: Kit, stakes: StakePlan, rowHeight: number): Draft[] {
  const flow = startFlow(kit.paper);
  let graphic = '';
  addListHead(kit, flow);
  for (const contour of stakes.contours) {
    if (contour.graphic !== graphic) {
      graphic = contour.graphic;
      addGraphicTitle(kit, flow, graphic, rowHeight);
    }
    contour.pieces.forEach((_, i) => addPiece(kit, flow, contour, i, rowHeight));
  }
  return flow.pages().map((marks) => ({
    title: 'Outline, strings and swings',
    lead: 'Pull each string. Swing each radius about its pin, from stake to stake; clockwise as seen from above. Mark the turf along both.',
    marks,
  }));
}

function addListHead(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const y = flow.y() + 10;
  const heads = HEADS.map((head, i) => inkText(left + COLUMNS[i]!, y, head, { size: 8 }));
  const done = inkText(right, y, 'marked', { size: 8, align: 'right' });
  flow.add([...heads, done, inkRule(left, right, y + 4, 1.2)], 16);
}

function addGraphicTitle(kit: Kit, flow: Flow, graphic: string, rowHeight: number): void {
  if (flow.need(22 + rowHeight)) addListHead(kit, flow);
  flow.add(
    [inkText(kit.paper.left, flow.y() + 14, `graphic ${graphic}`, { size: 10, font: 'bold' })],
    22,
  );
}

function addPiece(kit: Kit, flow: Flow, contour: Contour, index: number, rowHeight: number): void {
  const { left, right } = kit.paper;
  if (flow.need(rowHeight)) addListHead(kit, flow);
  const y = flow.y() + rowHeight - 5.5;
  const cells = outlineCells(contour, index).map((cell, i) =>
    inkText(left + COLUMNS[i]!, y, cell, {
      size: 11.5,
      font: i === 1 || i === 6 ? 'regular' : 'bold',
    }),
  );
  const last = index === contour.pieces.length - 1;
  flow.add(
    [
      ...cells.filter((cell) => cell.text !== ''),
      inkBox(right - 16, y - 9, 11, 11),
      inkRule(left, right, y + 5, last ? 1 : 0.35, last ? 0 : FAINT),
    ],
    rowHeight,
  );
}
