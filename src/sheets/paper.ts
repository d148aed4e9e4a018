/** Paper sizes and the area that is printed on. */
import type { PaperPoints } from '../base/units';

/** ISO 216 A4 is 210 × 297 mm; US letter is 8.5 × 11 in. */
const SIZES = {
  letter: { width: 612, height: 792 },
  a4: { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
} as const;

/** 10 mm on every side. */
export const MARGIN: PaperPoints = (10 / 25.4) * 72;

/** Height of the head: sheet number, title, what to do, job. */
export const HEAD_HEIGHT: PaperPoints = 52;
/** Height of the line at the foot. */
export const FOOT_HEIGHT: PaperPoints = 16;

/** The sheet, and the area between head and foot. */
export interface Paper {
  readonly width: PaperPoints;
  readonly height: PaperPoints;
  readonly left: PaperPoints;
  readonly right: PaperPoints;
  readonly top: PaperPoints;
  readonly bottom: PaperPoints;
}

export function paperOf(size: 'letter' | 'a4'): Paper {
  const { width, height } = SIZES[size];
  return {
    width,
    height,
    left: MARGIN,
    right: width - MARGIN,
    top: MARGIN + HEAD_HEIGHT + 8,
    bottom: height - MARGIN - FOOT_HEIGHT,
  };
}
