/** The ballpark in a drawing: fence, grass edges, lines, bases. */
import type { Field } from '../field/model';
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import { boxRing, inkFill, inkLine, inkRing, inkStroke, inkText } from './ink';
import { FAINT, WHITE, type Mark } from './marks';
import type { ViewFrame } from './view-frame';

const INNER = new Set(['outfield-grass', 'skin', 'mound', 'home-circle', 'infield-grass']);

/** The field without text, clipped to the frame's window. */
export function drawField(field: Field, frame: ViewFrame): Mark {
  const to = frame.toPaper;
  const edges = field.surfaces
    .filter((surface) => INNER.has(surface.kind))
    .flatMap((surface) => surface.region.map((ring) => inkRing(ring.map(to), inkStroke(0.5))));
  const foul = [field.foulLines.left, field.foulLines.right];
  const marks: Mark[] = [
    ...edges,
    ...foul.map((line) => inkLine(line.map(to), inkStroke(0.8))),
    inkLine(field.fenceLine.map(to), inkStroke(2)),
    ...baseMarks(field, frame),
    ...field.keepOuts.flatMap((keepOut) =>
      keepOut.region.flatMap((ring) => keepOutMarks(ring.map(to))),
    ),
  ];
  return { kind: 'clip', clip: frame.window, marks };
}

function baseMarks(field: Field, frame: ViewFrame): Mark[] {
  const { home, first, second, third } = field.bases;
  const half = Math.max(1.6, frame.scale * 0.9);
  return [home, first, second, third].flatMap((base) => {
    const at = frame.toPaper(base);
    const ring = [
      { x: at.x, y: at.y - half },
      { x: at.x + half, y: at.y },
      { x: at.x, y: at.y + half },
      { x: at.x - half, y: at.y },
    ];
    return [inkFill([ring], WHITE), inkRing(ring, inkStroke(0.7))];
  });
}

/** A place to keep off: outlined, crossed through. */
function keepOutMarks(ring: readonly Point[]): Mark[] {
  const count = ring.length;
  const across = (i: number) =>
    inkLine([ring[i]!, ring[(i + (count >> 1)) % count]!], inkStroke(0.6));
  return [inkFill([ring], WHITE), inkRing(ring, inkStroke(0.9)), across(0), across(count >> 2)];
}

/** Regions filled in one grey. */
export function drawRegion(
  region: readonly (readonly Point[])[],
  frame: ViewFrame,
  grey: number | null,
  edge: number,
): Mark[] {
  const rings = region.map((ring) => ring.map(frame.toPaper));
  return [
    ...(grey === null || rings.length === 0 ? [] : [inkFill(rings, grey)]),
    ...(edge === 0 ? [] : rings.map((ring) => inkRing(ring, inkStroke(edge)))),
  ];
}

/** `Home` with an arrow at the foot of the window, and the scale with its bar. */
export function drawBearings(frame: ViewFrame, bar: { ft: number; text: string }): Mark[] {
  const { minX, maxY } = frame.window;
  const x = minX + 6;
  const y = maxY - 6;
  const length = bar.ft * frame.scale;
  const tick = (at: number) =>
    inkLine(
      [
        { x: at, y: y - 3 },
        { x: at, y },
      ],
      inkStroke(0.8),
    );
  const line = inkLine(
    [
      { x, y },
      { x: x + length, y },
    ],
    inkStroke(0.8),
  );
  const words = [bar.text, frame.scaleText].filter((text) => text !== '').join(', ');
  const ground = boxRing({
    minX: x - 3,
    maxX: x + length + 8 + words.length * 4.4,
    minY: y - 9,
    maxY: y + 3,
  });
  return [
    inkFill([ground], WHITE),
    line,
    tick(x),
    tick(x + length),
    inkText(x + length + 5, y, words, { size: 8 }),
  ];
}

/** The ground to draw for the whole field: everything inside fence and backstop. */
export function fieldBox(field: Field): Box {
  const points = [...field.ground.flat(), ...field.fenceLine];
  return points.reduce(
    (box, p) => ({
      minX: Math.min(box.minX, p.x),
      minY: Math.min(box.minY, p.y),
      maxX: Math.max(box.maxX, p.x),
      maxY: Math.max(box.maxY, p.y),
    }),
    { minX: 0, minY: 0, maxX: 0, maxY: 0 },
  );
}

export const FAINT_LINE = inkStroke(0.3, FAINT);
