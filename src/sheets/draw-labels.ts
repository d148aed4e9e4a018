/** Placed labels as marks, and moving marks about the sheet. */
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import { boxRing, inkFill, inkLine, inkStroke, inkText } from './ink';
import { WHITE, type Mark } from './marks';
import type { PlacedLabel } from './place-labels';

/** Leaders first, then each label on its own patch of white. */
export function drawLabels(labels: readonly PlacedLabel[], size: number): Mark[] {
  const leaders = labels.flatMap((label) =>
    label.leader ? [inkLine(label.leader, inkStroke(0.4))] : [],
  );
  const words = labels.flatMap((label): Mark[] => [
    inkFill([boxRing(label.box)], WHITE),
    inkText((label.box.minX + label.box.maxX) / 2, label.box.maxY - size * 0.04, label.id, {
      size,
      font: 'bold',
      align: 'centre',
    }),
  ]);
  return [...leaders, ...words];
}

/** The marks moved right by dx and down by dy. */
export function moveMarks(marks: readonly Mark[], dx: number, dy: number): Mark[] {
  const p = (at: Point): Point => ({ x: at.x + dx, y: at.y + dy });
  const b = (box: Box): Box => ({
    minX: box.minX + dx,
    maxX: box.maxX + dx,
    minY: box.minY + dy,
    maxY: box.maxY + dy,
  });
  return marks.map((mark): Mark => {
    if (mark.kind === 'text') return { ...mark, at: p(mark.at) };
    if (mark.kind === 'polyline') return { ...mark, points: mark.points.map(p) };
    if (mark.kind === 'fill') return { ...mark, rings: mark.rings.map((ring) => ring.map(p)) };
    if (mark.kind === 'circle') return { ...mark, centre: p(mark.centre) };
    return { ...mark, clip: b(mark.clip), marks: moveMarks(mark.marks, dx, dy) };
  });
}
