/**
 * What is drawn on a sheet, as plain data. Paper points (72 to the inch), origin at the top left
 * corner of the sheet, x right, **y down**. Greys run from 0 (black) to 1 (white); there is no colour,
 * so that any copier can carry the packet.
 */
import type { PaperPoints } from '../base/units';
import type { Box } from '../geometry/box';
import type { Point } from '../geometry/point';

export type FontName = 'regular' | 'bold' | 'heading';
export type Grey = number;

export interface Stroke {
  readonly width: PaperPoints;
  readonly grey: Grey;
  /** On and off lengths; solid when missing. */
  readonly dash?: readonly PaperPoints[];
}

export interface TextMark {
  readonly kind: 'text';
  /** Left end, right end or middle of the text, by `align`; y is the baseline. */
  readonly at: Point;
  readonly text: string;
  readonly size: PaperPoints;
  readonly font: FontName;
  readonly align: 'left' | 'right' | 'centre';
  readonly grey: Grey;
}

export interface PolylineMark {
  readonly kind: 'polyline';
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly stroke: Stroke;
}

/** Rings filled by the even-odd rule. */
export interface FillMark {
  readonly kind: 'fill';
  readonly rings: readonly (readonly Point[])[];
  readonly grey: Grey;
}

export interface CircleMark {
  readonly kind: 'circle';
  readonly centre: Point;
  readonly radius: PaperPoints;
  readonly fill: Grey | null;
  readonly stroke: Stroke | null;
}

/** Marks of which only the part inside `clip` is drawn. Holds no text. */
export interface ClipMark {
  readonly kind: 'clip';
  readonly clip: Box;
  readonly marks: readonly Mark[];
}

export type Mark = TextMark | PolylineMark | FillMark | CircleMark | ClipMark;

/** One sheet of paper. */
export interface Sheet {
  readonly title: string;
  readonly width: PaperPoints;
  readonly height: PaperPoints;
  readonly marks: readonly Mark[];
}

export const BLACK: Grey = 0;
export const WHITE: Grey = 1;
/** Two greys that a poor copier keeps: letters, and grass laid toward home. */
export const LETTER_GREY: Grey = 0.9;
export const TOWARD_GREY: Grey = 0.87;
/** Thin helping lines. */
export const FAINT: Grey = 0.55;
