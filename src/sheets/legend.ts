/** Legends: one row of sign and word after another. */
import { inkLine, inkStroke, inkText } from './ink';
import type { FontMetrics } from './fonts';
import type { Mark } from './marks';
import {
  arrowHead,
  BACK_DASH,
  backSign,
  BEND_DASH,
  controlSign,
  EMPTY_DASH,
  gateSign,
  guideSign,
  pinSign,
  startSign,
  stakeSign,
  SWING_DASH,
  turnSign,
} from './symbols';
import type { Point } from '../geometry/point';

export interface LegendEntry {
  readonly word: string;
  readonly sign: (at: Point) => readonly Mark[];
}

const across = (at: Point, half = 11): Point[] => [
  { x: at.x - half, y: at.y },
  { x: at.x + half, y: at.y },
];

export const STAKE_LEGEND: readonly LegendEntry[] = [
  { word: 'stake', sign: (at) => stakeSign(at, 2.6) },
  { word: 'swing pin', sign: (at) => pinSign(at, 3) },
  { word: 'set control', sign: (at) => controlSign(at, 8, false, false) },
  { word: 'fixed control', sign: (at) => controlSign(at, 8, true, false) },
  {
    word: 'string',
    sign: (at) => [
      inkLine(across(at), inkStroke(1.5)),
      ...across(at).flatMap((p) => stakeSign(p, 2)),
    ],
  },
  { word: 'swing', sign: (at) => [inkLine(across(at, 13), inkStroke(1.1, 0, SWING_DASH))] },
  { word: 'bend', sign: (at) => [inkLine(across(at, 13), inkStroke(1.3, 0, BEND_DASH))] },
];

export const GUIDE_ENTRY: LegendEntry = { word: 'guide stake', sign: (at) => guideSign(at, 3) };

/** `lifted`: what is off the grass at a turn point; `backs`: the machine backs up in some turn. */
export const passLegend = (lifted: string, backs: boolean): readonly LegendEntry[] => [
  {
    word: 'pass, from its number',
    sign: (at) => [
      inkLine(across(at), inkStroke(0.8)),
      arrowHead({ x: at.x + 4, y: at.y }, 1, 0, 7),
    ],
  },
  { word: `turn point${lifted}`, sign: (at) => turnSign(at, 2.2) },
  { word: 'turn', sign: (at) => [inkLine(across(at), inkStroke(0.4))] },
  ...(backs ? [BACKING] : []),
];

/** Empty runs, where the work of the sheet begins, and where machines come on. */
export const PLACES_LEGEND: readonly LegendEntry[] = [
  {
    word: 'empty run',
    sign: (at) => [
      inkLine(across(at), inkStroke(1.3, 0, EMPTY_DASH)),
      arrowHead({ x: at.x + 13, y: at.y }, 1, 0, 5),
    ],
  },
  { word: 'start of the first pass', sign: (at) => startSign(at, 4) },
  { word: 'gate', sign: (at) => gateSign(at, 3.6) },
  {
    word: 'way to the gate, when it lies outside the drawing',
    sign: (at) => [...gateSign(at, 3.6), arrowHead({ x: at.x + 11, y: at.y }, 1, 0, 6)],
  },
];

const BACKING: LegendEntry = {
  word: 'backs up: look behind',
  sign: (at) => [
    inkLine(across(at), inkStroke(1.2, 0, BACK_DASH)),
    backSign({ x: at.x, y: at.y + 4 }, 7),
  ],
};

/** Entries in one row from the left; y is the words' baseline. */
export function drawLegend(
  metrics: FontMetrics,
  entries: readonly LegendEntry[],
  x: number,
  y: number,
): Mark[] {
  let left = x;
  return entries.flatMap(({ word, sign }) => {
    const at = { x: left + 13, y: y - 3 };
    const marks = [...sign(at), inkText(left + 30, y, word, { size: 9 })];
    left += 30 + metrics.width(word, 9, 'regular') + 12;
    return marks;
  });
}
