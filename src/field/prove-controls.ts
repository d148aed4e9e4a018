/** The distances taped before round 1, to prove that plate and bases lie where the book has them. */
import { roundReading, type LengthSystem } from '../base/quantity';
import { feetToInches } from '../base/units';
import { pointDistance, pointSubtract } from '../geometry/point';
import type { Control, ProvingTape } from './model';

/** Reading error and proportional error of one pull, 1 sigma. Assumption: 0.25 in and 1 : 3000. */
export const DEFAULT_TAPE = { readingSigmaIn: 0.25, proportional: 1 / 3000 } as const;

/** The rule book's own checks, and across the diamond: it shows a corner swung out of square. */
const PAIRS = [
  ['1B', '2B'],
  ['2B', '3B'],
  ['HP', '2B'],
  ['1B', '3B'],
] as const;

export function proveControls(controls: readonly Control[], system: LengthSystem): ProvingTape[] {
  return PAIRS.flatMap(([from, to]) => {
    const a = controls.find((c) => c.id === from);
    const b = controls.find((c) => c.id === to);
    return a && b ? [provingTape(a, b, system)] : [];
  });
}

function provingTape(a: Control, b: Control, system: LengthSystem): ProvingTape {
  const distance = pointDistance(a.at, b.at);
  const reading = roundReading(distance, system);
  const tape =
    DEFAULT_TAPE.readingSigmaIn ** 2 + (DEFAULT_TAPE.proportional * feetToInches(distance)) ** 2;
  const variance = varianceAlong(a, b) + varianceAlong(b, a) + tape;
  return {
    from: a.id,
    to: b.id,
    ft: reading.ft,
    text: reading.text,
    limitIn: 3 * Math.sqrt(variance),
  };
}

/** Variance of `a` along the line to `b`, square inches. */
function varianceAlong(a: Control, b: Control): number {
  const d = pointSubtract(b.at, a.at);
  const c = a.covariance;
  return (c.xx * d.x * d.x + 2 * c.xy * d.x * d.y + c.yy * d.y * d.y) / (d.x * d.x + d.y * d.y);
}
