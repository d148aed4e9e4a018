/** The tapes at hand and who holds which. */
import { classScaleSigma } from '../field/tape-classes';
import type { StakeoutSpec, TapeNumber, TapeSpec } from './model';

/** A tape with the cause of error that is its own scale. */
export interface HeldTape extends TapeSpec {
  readonly scaleCause: number;
  /** Absent when both tapes are of one kind: then it does not matter who holds which. */
  readonly held?: TapeNumber;
}

/** The tapes held at the first and at the second control. */
export type TapePair = readonly [HeldTape, HeldTape];

type Tapes = Pick<StakeoutSpec, 'tape' | 'secondTape'>;

/**
 * One kind of tape, or two. Two tapes of one kind are laid side by side before work and differ by less
 * than a step, so that their scale is one cause of error.
 */
export function tapesAtHand(spec: Tapes): readonly HeldTape[] {
  if (!spec.secondTape) return [{ ...spec.tape, scaleCause: 0 }];
  return [
    { ...spec.tape, scaleCause: 0, held: 1 },
    { ...spec.secondTape, scaleCause: 1, held: 2 },
  ];
}

/** Every way of holding the tapes at two controls. */
export function tapePairs(spec: Tapes): readonly TapePair[] {
  const [first, second] = tapesAtHand(spec);
  if (!second) return [[first!, first!]];
  return [
    [first!, second],
    [second, first!],
  ];
}

/** The tape that checks are pulled with: the longer one. */
export const checkTape = (spec: Tapes): HeldTape =>
  tapesAtHand(spec).reduce((a, b) => (b.limitFt > a.limitFt ? b : a));

/** No pull is longer than this. */
export const longestTapeFt = (spec: Tapes): number => checkTape(spec).limitFt;

/**
 * A steel tape to begin with: class II, and 1 : 5000 in each pull, what textbooks call average for
 * ordinary steel taping. To be typed over.
 */
export const STEEL_TAPE: TapeSpec = {
  material: 'steel',
  accuracyClass: 'II',
  readingSigmaIn: 0.25,
  proportional: 1 / 5000,
  scaleSigma: classScaleSigma('II', 300),
  limitFt: 300,
};
