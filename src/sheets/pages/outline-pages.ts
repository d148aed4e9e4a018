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
import { leastScaleIn, type Panel } from '../plan-panels';
import { drawStakePanel, planStakePanels, type StakePanelOptions } from '../stake-panels';
import { outlineHowTos } from '../how-to';
import { addHowTos } from '../how-to-boxes';
import { outlineParts, partStakes, type OutlinePart } from '../outline-parts';
import { outlineCells } from '../stake-words';

const LEGEND = 18;
const PANEL_HEAD = 16;
const GAP = 8;
/** Heights of the titles of a graphic and of a part. */
const TITLE = 20;
const PART_TITLE = 18;
/** Rows of the list: as high as goes on the fewest sheets. */
const ROW_HEIGHTS = [20, 19.5, 19, 18.5, 18, 17.5, 17, 16.5] as const;

export function outlinePages(kit: Kit, stakes: StakePlan): Draft[] {
  const drawings = drawingPages(kit, stakes);
  return [...drawings.pages, ...listPages(kit, stakes, drawings.panels)];
}

/** The drawings on the fewest sheets; of ways that take as many, the one at the largest scale. */
function drawingPages(kit: Kit, stakes: StakePlan): Drawings {
  const { paper } = kit;
  const whole = paper.bottom - paper.top - LEGEND - PANEL_HEAD;
  const beside = whole - LOCATOR_HEIGHT - GAP;
  const best = fewer(layDrawings(kit, stakes, beside), layDrawings(kit, stakes, whole));
  if (best.pages.length === 1) return best;
  return fewer(best, layDrawings(kit, stakes, beside, SMALLER_SCALE));
}

/** 1 in = 12 ft: still above the least, and often on one sheet less. */
const SMALLER_SCALE = 6;

function fewer(a: Drawings, b: Drawings): Drawings {
  const sheets = a.pages.length - b.pages.length;
  return sheets > 0 || (sheets === 0 && b.scale > a.scale) ? b : a;
}

interface Drawings {
  readonly pages: readonly Draft[];
  readonly panels: readonly Panel[];
  /** Of the smallest drawing. */
  readonly scale: number;
}

/** Drawings no higher than `maxHeight`, at no more than `mostScale` points per foot. */
function layDrawings(kit: Kit, stakes: StakePlan, maxHeight: number, mostScale?: number): Drawings {
  const { paper } = kit;
  const flow = startFlow(paper);
  const options: StakePanelOptions = {
    stakes,
    named: stakes.stakes.filter((stake) => stake.kind !== 'control'),
    held: [],
    width: paper.right - paper.left,
    maxHeight,
    ...(mostScale === undefined ? {} : { mostScale }),
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
    lead: `${piecesText(stakes)}. Numbers stand beside their stakes or at a leader.`,
    marks,
  }));
  return { pages, panels, scale: leastScaleIn(panels) };
}

function piecesText({ strings, swings, bends = 0 }: StakePlan): string {
  return bends > 0
    ? `${strings} strings, ${swings} swings and ${bends} bends`
    : `${strings} strings and ${swings} swings`;
}

function addLegend(kit: Kit, flow: Flow): void {
  const guides = kit.plan.stakes?.stakes.some((stake) => stake.kind === 'guide') ?? false;
  const pieces = kit.plan.stakes?.contours.flatMap((contour) => contour.pieces) ?? [];
  const kinds = new Set<string>(pieces.map((piece) => piece.kind));
  const used = STAKE_LEGEND.filter(({ word }) => word !== 'bend' || kinds.has('bend'));
  const legend = guides ? [...used, GUIDE_ENTRY] : used;
  flow.add(drawLegend(kit.metrics, legend, kit.paper.left, flow.y() + 9), LEGEND);
}

/** Left ends of the columns, points from the left margin. */
const COLUMNS = [0, 40, 88, 150, 204, 260, 380] as const;
const HEADS = ['piece', 'what', 'from', 'to', 'pin', 'radius, offset', 'turn, side'] as const;

/** The list with rows as high as they may be without another sheet. */
function listPages(kit: Kit, stakes: StakePlan, panels: readonly Panel[]): Draft[] {
  const ways = ROW_HEIGHTS.map((rowHeight) => layList(kit, stakes, panels, rowHeight));
  const fewest = Math.min(...ways.map((pages) => pages.length));
  return ways.find((pages) => pages.length === fewest)!;
}

function layList(
  kit: Kit,
  stakes: StakePlan,
  panels: readonly Panel[],
  rowHeight: number,
): Draft[] {
  const flow = startFlow(kit.paper);
  const parts = outlineParts(stakes);
  let graphic = '';
  addHowTos(kit, flow, outlineHowTos(stakes));
  addListHead(kit, flow);
  parts.forEach((part, i) => {
    const first = part.graphic !== graphic;
    graphic = part.graphic;
    if (flow.need((first ? TITLE : 0) + PART_TITLE + rowHeight)) addListHead(kit, flow);
    if (first) addTitle(kit, flow, `graphic ${graphic}`, TITLE);
    if (parts.length > 1) addTitle(kit, flow, partTitle(parts, i, panels), PART_TITLE);
    for (const contour of part.contours)
      contour.pieces.forEach((_, k) => addPiece(kit, flow, contour, k, rowHeight));
  });
  return flow.pages().map((marks) => ({
    title: 'Outline, strings and swings',
    lead: 'Piece by piece, head to tail; clockwise as seen from above. Mark the turf along each, then tick.',
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

/** `Part 2 of 8: contours 3, 4. Stakes 12 to 31, in drawing 1.` */
function partTitle(parts: readonly OutlinePart[], index: number, panels: readonly Panel[]): string {
  const part = parts[index]!;
  const contours = part.contours.map((contour) => contour.contour);
  const ids = new Set(partStakes(part));
  const drawings = panels.flatMap((panel, i) =>
    panel.ids.some((id) => ids.has(id)) ? [String(i + 1)] : [],
  );
  const where =
    panels.length > 1
      ? `, in drawing${drawings.length > 1 ? 's' : ''} ${drawings.join(' and ')}`
      : '';
  const word = contours.length > 1 ? 'contours' : 'contour';
  return `Part ${index + 1} of ${parts.length}: ${word} ${contours.join(', ')}${where}${likeText(part)}`;
}

/** Which of the part's contours are another one over again: their radii and offsets are the same. */
function likeText(part: OutlinePart): string {
  return part.contours
    .flatMap(({ contour, like }) =>
      like
        ? [`; ${contour} has the shape of ${like.contour}${like.mirrored ? ', mirrored' : ''}`]
        : [],
    )
    .join('');
}

function addTitle(kit: Kit, flow: Flow, text: string, height: number): void {
  const y = flow.y() + height - 5;
  flow.add([inkText(kit.paper.left, y, text, { size: 10, font: 'bold' })], height);
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
