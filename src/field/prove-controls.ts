/** The distances taped before round 1, to prove that plate and bases lie where the book has them. */
import { roundReading, type LengthSystem } from '../base/quantity';
import type { Feet } from '../base/units';
import { tapeSigmaIn, type TapePrecision } from '../adjust/precise-point';
import { pointDistance, pointSubtract, type Point } from '../geometry/point';
import type { Control, Covariance, ProvingTape } from './model';

/**
 * An open-reel fibreglass tape of class III, 1 sigma. Assumption: 1/4 in of reading; the scale as
 * half the class limit, about 1 : 5000; and 1 : 3750 of pull and slope in each reading, so that one
 * reading's whole proportional error is 1 : 3000, what ordinary taping reaches.
 */
export const DEFAULT_TAPE = {
  material: 'fibreglass',
  accuracyClass: 'III',
  readingSigmaIn: 0.25,
  proportional: 1 / 3750,
  scaleSigma: 1 / 5000,
} as const;

/** Error of one pull with a tape, 1 sigma; what its scale adds is what the check looks for. */
export type Pull = Pick<TapePrecision, 'readingSigmaIn' | 'proportional'>;

/**
 * The sides and the diagonal that the rule book gives, and across the diamond: it shows a corner swung
 * out of square.
 */
const PAIRS = [
  ['HP', '1B'],
  ['HP', '3B'],
  ['1B', '2B'],
  ['2B', '3B'],
  ['HP', '2B'],
  ['1B', '3B'],
] as const;

type Tested = readonly [Control, Control];

function testedPairs(controls: readonly Control[]): Tested[] {
  return PAIRS.flatMap(([from, to]): Tested[] => {
    const a = controls.find((c) => c.id === from);
    const b = controls.find((c) => c.id === to);
    return a && b ? [[a, b]] : [];
  });
}

/** The distances taped before round 1, each with three sigma of what it may read otherwise. */
export function proveControls(
  controls: readonly Control[],
  system: LengthSystem,
  tape: Pull = DEFAULT_TAPE,
): ProvingTape[] {
  return testedPairs(controls).map(([a, b]) => {
    const distance = pointDistance(a.at, b.at);
    const reading = roundReading(distance, system);
    const variance = alongVariance(a, b) + alongVariance(b, a) + tapeSigmaIn(tape, distance) ** 2;
    return {
      from: a.id,
      to: b.id,
      ft: reading.ft,
      text: reading.text,
      limitIn: 3 * Math.sqrt(variance),
    };
  });
}

/** The proving tapes taken together, as a check of the tape's scale. */
export interface ScaleCheck {
  /** Distances taped. */
  readonly count: number;
  /** Their mean. */
  readonly meanFt: Feet;
  /** 3 sigma of the mean of reading less printed distance, with a tape of true scale, inches. */
  readonly limitIn: number;
}

/**
 * Limit of the mean difference of all proving tapes from the controls' and the pulls' errors alone:
 * beyond it the tape is long (reads short) or short (reads long). Null without two such controls.
 */
export function checkScale(
  controls: readonly Control[],
  tape: Pull = DEFAULT_TAPE,
): ScaleCheck | null {
  const tested = testedPairs(controls);
  if (tested.length === 0) return null;
  const lengths = tested.map(([a, b]) => pointDistance(a.at, b.at));
  const pulls = lengths.reduce((sum, ft) => sum + tapeSigmaIn(tape, ft) ** 2, 0);
  const moved = controls.reduce((sum, c) => sum + quadratic(c.covariance, pushOn(c, tested)), 0);
  return {
    count: tested.length,
    meanFt: lengths.reduce((sum, ft) => sum + ft, 0) / tested.length,
    limitIn: (3 * Math.sqrt(pulls + moved)) / tested.length,
  };
}

/** How the sum of the distances answers to the control's coordinates. */
function pushOn(c: Control, tested: readonly Tested[]): Point {
  return tested.reduce(
    (sum, [a, b]) => {
      const other = c === a ? b : c === b ? a : null;
      if (!other) return sum;
      const d = pointSubtract(c.at, other.at);
      const length = Math.hypot(d.x, d.y);
      return { x: sum.x + d.x / length, y: sum.y + d.y / length };
    },
    { x: 0, y: 0 },
  );
}

/** Variance of `a` along the line to `b`, square inches. */
function alongVariance(a: Control, b: Control): number {
  const d = pointSubtract(b.at, a.at);
  return quadratic(a.covariance, d) / (d.x * d.x + d.y * d.y);
}

const quadratic = (c: Covariance, d: Point): number =>
  c.xx * d.x * d.x + 2 * c.xy * d.x * d.y + c.yy * d.y * d.y;
