/** The first sheet: the field to scale, the figures, what is wrong, and the order of work. */
import type { Problem } from '../../base/result';
import { boxGrow, type Box } from '../../geometry/box';
import { patchShade } from '../../view/patch-shade';
import type { Patch } from '../../design/model';
import { setOutArea } from '../../mowing/set-out-area';
import { drawBearings, drawField, drawRegion, fieldBox } from '../draw-field';
import { drawLabels } from '../draw-labels';
import { wrapText } from '../fit-text';
import { boxRing, inkFill, inkRing, inkRule, inkStroke, inkText } from '../ink';
import { controlsOf, type Kit } from '../kit';
import { BLACK, LETTER_GREY, TOWARD_GREY, WHITE, type Mark } from '../marks';
import { placeLabels } from '../place-labels';
import type { Draft } from '../sheet-head';
import { AREA_DASH, controlSign, warningSign } from '../symbols';
import { frameView, scaleBar, type ViewFrame } from '../view-frame';
import { keyFacts } from './overview-facts';
import { orderOfWork } from './order-of-work';

const FACTS_WIDTH = 178;
const STRIP_HEIGHT = 96;
const DRAWING_SHARE = 0.56;
/** Of the list of sheets: its heading, and each row. */
const INDEX_HEAD = 28;
const INDEX_ROW = 11.5;
const INDEX_COLUMNS = 2;

/** `others`: titles of the sheets that follow, from sheet 2 on. */
export function overviewPage(
  kit: Kit,
  notes: readonly Problem[],
  others: readonly string[],
): Draft {
  const { left, right, top, bottom } = kit.paper;
  const foot = top + (bottom - top) * DRAWING_SHARE;
  const entries = indexEntries(others);
  const index = bottom - STRIP_HEIGHT - indexHeight(entries.length);
  const window = { minX: left, maxX: right - FACTS_WIDTH - 12, minY: top, maxY: foot };
  return {
    title: kit.plan.project.name === '' ? 'Overview' : 'Overview and order of work',
    lead: 'Read this sheet first. It goes with every other sheet of the same plan number.',
    marks: [
      ...drawing(kit, window),
      ...facts(kit, right - FACTS_WIDTH, top, right),
      ...problems(kit, [...notes, ...kit.plan.problems], foot + 12, index - 8),
      ...sheetIndex(kit, entries, index),
      ...orderOfWork(kit, bottom - STRIP_HEIGHT),
    ],
  };
}

const LABEL_SIZE = 9;

function drawing(kit: Kit, window: Box): Mark[] {
  const { field, design, project } = kit.plan;
  const frame = { ...frameView(fieldBox(field), boxGrow(window, -6), project.units), window };
  const shaded = [...design.patches].sort((a, b) => a.layer - b.layer);
  return [
    { kind: 'clip', clip: window, marks: shaded.flatMap((patch) => patchMarks(patch, frame)) },
    { kind: 'clip', clip: window, marks: drawRegion(design.graphic, frame, LETTER_GREY, 1) },
    drawField(field, frame),
    ...setOutMarks(kit, frame),
    ...controlMarks(kit, frame),
    ...gateMarks(kit, frame),
    ...drawBearings(frame, scaleBar(frame.scale, project.units)),
    ...drawingWords(kit, window),
    inkRing(boxRing(window), inkStroke(0.8)),
  ];
}

function drawingWords(kit: Kit, window: Box): Mark[] {
  const x = window.maxX - 6;
  const small = { size: 8, align: 'right' } as const;
  const area = kit.plan.stakes ? [inkText(x, window.maxY - 16, 'dashes: set-out area', small)] : [];
  return [...area, inkText(x, window.maxY - 6, greyWords(kit.plan.design.patches), small)];
}

/** Grass laid toward home is grey, away white: the darker stripe as home plate sees it. */
function patchMarks(patch: Patch, frame: ViewFrame): Mark[] {
  if (patch.kind === 'graphic') return [];
  const shade = patch.kind === 'border' ? 1 : patchShade(patch);
  return drawRegion(patch.region, frame, WHITE + ((TOWARD_GREY - WHITE) * (1 - shade)) / 2, 0.25);
}

/** What grey says: along curves no lay is toward home or away all the way. */
const greyWords = (patches: readonly Patch[]): string =>
  patches.some((p) => p.kind === 'background' && p.lays.some((lay) => 'guides' in lay))
    ? 'grey: laid the opposite way'
    : 'grey: laid toward home';

/** The ground inside which no powered machine goes before the count, as the route keeps it. */
function setOutMarks(kit: Kit, frame: ViewFrame): Mark[] {
  return setOutArea(kit.plan.design.graphic).map((ring) =>
    inkRing(ring.map(frame.toPaper), inkStroke(0.9, BLACK, AREA_DASH)),
  );
}

function controlMarks(kit: Kit, frame: ViewFrame): Mark[] {
  const controls = controlsOf(kit.plan);
  const at = controls.map((control) => frame.toPaper(control.at));
  const signs = controls.flatMap((c, i) => controlSign(at[i]!, 8, c.kind === 'fixed', false));
  const requests = controls.map((c, i) => ({
    id: c.id,
    at: at[i]!,
    width: kit.metrics.width(c.id, LABEL_SIZE, 'bold') + 1,
    height: LABEL_SIZE * 0.78,
    clear: 6,
  }));
  const scene = {
    window: frame.window,
    discs: at.map((point) => ({ at: point, radius: 6 })),
    lines: kit.plan.design.graphic.map((ring) => ring.map(frame.toPaper)),
    taken: [],
  };
  return [...signs, ...drawLabels(placeLabels(requests, scene).placed, LABEL_SIZE)];
}

function gateMarks(kit: Kit, frame: ViewFrame): Mark[] {
  const at = frame.toPaper(kit.plan.project.mowing.gate);
  const { window } = frame;
  const x = Math.min(window.maxX - 24, Math.max(window.minX + 6, at.x));
  const y = Math.min(window.maxY - 24, Math.max(window.minY + 6, at.y));
  const square = boxRing({ minX: x - 3, maxX: x + 3, minY: y - 3, maxY: y + 3 });
  return [
    inkFill([square], BLACK),
    inkText(x, y + 12, 'gate', { size: 8.5, font: 'bold', align: 'centre' }),
  ];
}

function facts(kit: Kit, x: number, top: number, right: number): Mark[] {
  const marks: Mark[] = [];
  let y = top + 11;
  for (const group of keyFacts(kit)) {
    marks.push(inkText(x, y, group.title, { size: 12, font: 'heading' }));
    marks.push(inkRule(x, right, y + 4, 1.2));
    y += 15.5;
    for (const [name, value] of group.rows) {
      marks.push(inkText(x, y, name, { size: 9 }));
      marks.push(inkText(right, y, value, { size: 10, font: 'bold', align: 'right' }));
      y += 12;
    }
    y += 7;
  }
  return marks;
}

function problems(kit: Kit, list: readonly Problem[], top: number, bottom: number): Mark[] {
  const { left, right } = kit.paper;
  const title = list.length === 0 ? 'No problems found' : `Problems and warnings: ${list.length}`;
  const marks: Mark[] = [
    inkText(left, top + 11, title, { size: 12, font: 'heading' }),
    inkRule(left, right - FACTS_WIDTH - 12, top + 15, 1.2),
  ];
  let y = top + 28;
  for (const [i, one] of list.entries()) {
    const lines = wrapText(kit.metrics, problemText(one), 9, 'regular', right - left - 16);
    const more = list.length - i;
    if (y + (lines.length - 1) * 11 > bottom - (more > 1 ? 12 : 0)) {
      const words = `and ${more} more: see the problems in summary.json.`;
      return [...marks, inkText(left + 14, y, words, { size: 9, font: 'bold' })];
    }
    marks.push(warningSign({ x: left + 4, y }, 7));
    lines.forEach((line, k) => marks.push(inkText(left + 14, y + k * 11, line, { size: 9 })));
    y += lines.length * 11 + 2;
  }
  return marks;
}

type IndexEntry = readonly [sheets: string, title: string];

const indexHeight = (entries: number): number =>
  INDEX_HEAD + Math.ceil(entries / INDEX_COLUMNS) * INDEX_ROW + 4;

/** Which sheet holds what, in columns. */
function sheetIndex(kit: Kit, entries: readonly IndexEntry[], top: number): Mark[] {
  const { left, right } = kit.paper;
  const rows = Math.ceil(entries.length / INDEX_COLUMNS);
  const words = entries.map(([sheets, title], i) => {
    const x = left + (Math.floor(i / rows) * (right - left)) / INDEX_COLUMNS;
    const y = top + INDEX_HEAD + (i % rows) * INDEX_ROW;
    return [
      inkText(x, y, sheets, { size: 9, font: 'bold' }),
      inkText(x + 46, y, title, { size: 9 }),
    ];
  });
  return [
    inkText(left, top + 11, 'In this packet', { size: 12, font: 'heading' }),
    inkRule(left, right, top + 15, 1.2),
    ...words.flat(),
  ];
}

/** Sheets of one kind together: `4 to 9`, `Stakes`. */
function indexEntries(others: readonly string[]): IndexEntry[] {
  const runs: { title: string; from: number; to: number }[] = [];
  others.forEach((full, i) => {
    const title = full.replace(/, rounds? .*/, ', by rounds');
    const last = runs[runs.length - 1];
    if (last?.title === title) last.to = i + 2;
    else runs.push({ title, from: i + 2, to: i + 2 });
  });
  return runs.map(({ title, from, to }) => [from === to ? `${from}` : `${from} to ${to}`, title]);
}

const problemText = (one: Problem): string => `${one.where}: ${one.what}; ${one.fix}.`;
