/** From the field frame (feet, y up) to a window on the sheet (points, y down). */
import type { LengthSystem } from '../base/quantity';
import { metresToFeet, POINTS_PER_INCH } from '../base/units';
import { boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box';
import type { Point } from '../geometry/point';

export interface ViewFrame {
  /** The window on the sheet. */
  readonly window: Box;
  /** Points per foot. */
  readonly scale: number;
  /** `1 in = 40 ft` or `1 : 500`; empty when the scale is not a round one. */
  readonly scaleText: string;
  readonly toPaper: (p: Point) => Point;
}

/** Round scales: feet to the inch of paper, or the ratio. */
const FEET_PER_INCH = [
  4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150,
  160, 180, 200,
];
const RATIOS = [
  50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 600, 750, 900, 1000, 1100, 1250, 1500, 2000,
];

/**
 * The largest round scale at which `ground` fits the window, centred; any scale beyond the list.
 * `cap` (points per foot): no larger than this.
 */
export function frameView(
  ground: Box,
  window: Box,
  system: LengthSystem,
  cap = Infinity,
): ViewFrame {
  const most = Math.min(
    cap,
    boxWidth(window) / Math.max(boxWidth(ground), 1),
    boxHeight(window) / Math.max(boxHeight(ground), 1),
  );
  const steps =
    system === 'metric'
      ? RATIOS.map((r) => ({ scale: pointsPerFootAt(r), text: `1 : ${r}` }))
      : FEET_PER_INCH.map((f) => ({ scale: POINTS_PER_INCH / f, text: `1 in = ${f} ft` }));
  const step = steps.find(({ scale }) => scale <= most) ?? { scale: most, text: '' };
  return frameAt(ground, window, step.scale, step.text);
}

const pointsPerFootAt = (ratio: number): number => (12 * POINTS_PER_INCH) / ratio;

function frameAt(ground: Box, window: Box, scale: number, scaleText: string): ViewFrame {
  const from = boxCentre(ground);
  const to = boxCentre(window);
  return {
    window,
    scale,
    scaleText,
    toPaper: (p) => ({ x: to.x + (p.x - from.x) * scale, y: to.y - (p.y - from.y) * scale }),
  };
}

/** A round length for a scale bar of 40 to 100 points, in feet, with its text. */
export function scaleBar(scale: number, system: LengthSystem): { ft: number; text: string } {
  const unit = system === 'metric' ? metresToFeet(1) : 1;
  const sizes = [1, 2, 5, 10, 20, 50, 100, 200, 500];
  const size = sizes.find((n) => n * unit * scale >= 40) ?? 500;
  return { ft: size * unit, text: `${size} ${system === 'metric' ? 'm' : 'ft'}` };
}
