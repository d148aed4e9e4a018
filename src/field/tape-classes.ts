/**
 * Accuracy classes of tapes: the largest error that a tape's markings may have over a length
 * (Measuring Instruments Directive 2014/32/EU, annex X, MI-008: a + b·L millimetres, L in metres
 * rounded up to a whole metre).
 */
import { feetToMetres, type Feet } from '../base/units';

/** As printed on the tape's blade. */
export type TapeClass = 'I' | 'II' | 'III';

const LIMITS = {
  I: { fixed: 0.1, perMetre: 0.1 },
  II: { fixed: 0.3, perMetre: 0.2 },
  III: { fixed: 0.6, perMetre: 0.4 },
} as const satisfies Record<TapeClass, { readonly fixed: number; readonly perMetre: number }>;

/** Largest error of the class over `metres`, millimetres. */
export const classLimitMm = (tapeClass: TapeClass, metres: number): number =>
  LIMITS[tapeClass].fixed + LIMITS[tapeClass].perMetre * Math.ceil(metres);

/**
 * Scale error of a tape of the class, one sigma, as a share of its length: the class limit over the
 * whole tape counts as two sigma (assumption: makers stay inside the limit 19 times in 20).
 */
export function classScaleSigma(tapeClass: TapeClass, lengthFt: Feet): number {
  const metres = feetToMetres(lengthFt);
  return classLimitMm(tapeClass, metres) / 2000 / metres;
}
