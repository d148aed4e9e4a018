/** Small makers of marks. */
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import {
  BLACK,
  type CircleMark,
  type FillMark,
  type FontName,
  type Grey,
  type PolylineMark,
  type Stroke,
  type TextMark,
} from './marks';

export interface TextStyle {
  readonly size?: number;
  readonly font?: FontName;
  readonly align?: TextMark['align'];
  readonly grey?: Grey;
}

/** A line of text with its baseline at y; 9.5 pt regular unless told. */
export function inkText(x: number, y: number, text: string, style: TextStyle = {}): TextMark {
  const { size = 9.5, font = 'regular', align = 'left', grey = BLACK } = style;
  return { kind: 'text', at: { x, y }, text, size, font, align, grey };
}

export const inkStroke = (width: number, grey: Grey = BLACK, dash?: readonly number[]): Stroke =>
  dash === undefined ? { width, grey } : { width, grey, dash };

export const inkLine = (points: readonly Point[], stroke: Stroke): PolylineMark => ({
  kind: 'polyline',
  points,
  closed: false,
  stroke,
});

export const inkRing = (points: readonly Point[], stroke: Stroke): PolylineMark => ({
  kind: 'polyline',
  points,
  closed: true,
  stroke,
});

/** A level rule across the sheet. */
export const inkRule = (x1: number, x2: number, y: number, width = 0.5, grey: Grey = BLACK) =>
  inkLine(
    [
      { x: x1, y },
      { x: x2, y },
    ],
    inkStroke(width, grey),
  );

export const boxRing = (b: Box): Point[] => [
  { x: b.minX, y: b.minY },
  { x: b.maxX, y: b.minY },
  { x: b.maxX, y: b.maxY },
  { x: b.minX, y: b.maxY },
];

/** A box to write or tick in, from its top left corner. */
export const inkBox = (x: number, y: number, width: number, height: number, stroke = 0.9) =>
  inkRing(boxRing({ minX: x, minY: y, maxX: x + width, maxY: y + height }), inkStroke(stroke));

export const inkFill = (rings: readonly (readonly Point[])[], grey: Grey): FillMark => ({
  kind: 'fill',
  rings,
  grey,
});

export const inkCircle = (
  centre: Point,
  radius: number,
  fill: Grey | null,
  stroke: Stroke | null,
): CircleMark => ({ kind: 'circle', centre, radius, fill, stroke });
