/** The ground of a new project. */
import type { FieldSpec, Turf } from './model';
import { BASEBALL_90 } from './rulebook/baseball-90';

/** 1 sigma per coordinate of the plate and of each base, inches. Assumption. */
export const DEFAULT_CONTROL_SIGMA_IN = 0.5;

/** What grows where nobody has said so; assumption. */
export const USUAL_TURF: Turf = { grass: 'cool-season', heightIn: 1.5 };

/** The college field of the rule book, every figure its recommendation; no pole measured yet. */
export function defaultFieldSpec(): FieldSpec {
  return {
    name: '90-ft college field',
    book: 'baseball-90',
    baseSizeIn: 15,
    bases: 'in',
    fence: BASEBALL_90.fence.value.map((p) => ({ ...p })),
    fenceShape: 'smooth',
    trackWidthFt: BASEBALL_90.trackWidthFt.value,
    skinArcFrom: 'plate-front',
    skinRadiusFt: BASEBALL_90.skinRadiusFt.value,
    foulWidthFt: BASEBALL_90.foulWidthFt.value,
    poles: { left: null, right: null },
    controlSigmaIn: DEFAULT_CONTROL_SIGMA_IN,
    keepOuts: [],
  };
}
