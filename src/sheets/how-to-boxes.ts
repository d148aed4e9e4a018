/** How-to boxes, two to a row, no larger than their words. */
import { moveMarks } from './draw-labels';
import { wrapText } from './fit-text';
import type { HowTo } from './how-to';
import { HOW_TO_PICTURE, howToPicture } from './how-to-pictures';
import { boxRing, inkRing, inkStroke, inkText } from './ink';
import type { Kit } from './kit';
import type { Mark } from './marks';
import type { Flow } from './page-flow';

const GAP = 10;
const PAD = 6;
const SIZE = 9;
const LINE = 10.5;
const TITLE = 13;

interface Box {
  readonly howTo: HowTo;
  readonly lines: readonly string[];
}

/** How many of the boxes, whole rows of them, fit into `height`. */
export function howTosIn(kit: Kit, howTos: readonly HowTo[], height: number): number {
  let used = 0;
  let count = 0;
  for (const row of boxRows(kit, howTos)) {
    used += rowHeight(row) + GAP;
    if (used > height + GAP) break;
    count += row.length;
  }
  return count;
}

/** Adds the boxes to the flow, a row at a time. */
export function addHowTos(kit: Kit, flow: Flow, howTos: readonly HowTo[]): void {
  const { left } = kit.paper;
  const width = boxWidth(kit);
  for (const row of boxRows(kit, howTos)) {
    const height = rowHeight(row);
    flow.need(height);
    const y = flow.y();
    const marks = row.flatMap((box, k) =>
      boxMarks(box, left + k * (width + GAP), y, width, height),
    );
    flow.add(marks, height + GAP);
  }
}

const boxWidth = (kit: Kit): number => (kit.paper.right - kit.paper.left - GAP) / 2;

function boxRows(kit: Kit, howTos: readonly HowTo[]): Box[][] {
  const room = boxWidth(kit) - 3 * PAD - HOW_TO_PICTURE.width;
  const boxes = howTos.map((howTo) => ({
    howTo,
    lines: wrapText(kit.metrics, howTo.text, SIZE, 'regular', room),
  }));
  const starts = boxes.map((_, i) => i).filter((i) => i % 2 === 0);
  return starts.map((i) => boxes.slice(i, i + 2));
}

const rowHeight = (row: readonly Box[]): number => Math.max(...row.map(boxHeight));

const boxHeight = ({ lines }: Box): number =>
  Math.max(HOW_TO_PICTURE.height, TITLE + lines.length * LINE) + 2 * PAD;

function boxMarks(box: Box, x: number, y: number, width: number, height: number): Mark[] {
  const words = x + 2 * PAD + HOW_TO_PICTURE.width;
  const frame = boxRing({ minX: x, maxX: x + width, minY: y, maxY: y + height });
  return [
    inkRing(frame, inkStroke(0.8)),
    ...moveMarks(howToPicture(box.howTo.id), x + PAD, y + (height - HOW_TO_PICTURE.height) / 2),
    inkText(words, y + PAD + 9, box.howTo.title, { size: 10.5, font: 'bold' }),
    ...box.lines.map((text, i) =>
      inkText(words, y + PAD + TITLE + 8 + i * LINE, text, { size: SIZE }),
    ),
  ];
}
