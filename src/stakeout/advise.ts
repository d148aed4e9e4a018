/** What would let every stake meet the target, found by planning the controls anew. */
import { formatLength } from '../base/quantity';
import type { Control, Field } from '../field/model';
import { placeControls } from '../field/place-controls';
import { classScaleSigma } from '../field/tape-classes';
import { pointDistance, type Point } from '../geometry/point';
import { controlsFor, MOST_CONTROLS } from './choose-controls';
import type { StakeGround } from './ground';
import type { StakeOption, StakeoutSpec, TapeSpec } from './model';
import { longestTapeFt, STEEL_TAPE } from './tapes';

export interface AdviceTask {
  readonly field: Field;
  /** Where stakes are wanted. */
  readonly stakes: readonly Point[];
  readonly ground: StakeGround;
  readonly spec: StakeoutSpec;
  /** What all must be set within, inches; Infinity asks for reach only. */
  readonly targetIn: number;
}

/** The means of a job: what it says, changed. */
interface Means {
  readonly spec: StakeoutSpec;
  readonly controls: readonly Control[];
  readonly most: number;
}

interface Change {
  readonly name: StakeOption['change'];
  readonly words: string;
  readonly apply: (means: Means) => Means;
}

/** Longest open-reel tape in common use, feet. */
const LONG_TAPE_FT = 300;
/** A foul pole taped twice along the line, one sigma. Assumption. */
const POLE_SIGMA_IN = 0.5;

/** The changes that suffice one by one; where none does, two or three together that do. */
export function adviseChanges(task: AdviceTask): StakeOption[] {
  const changes = changesFor(task);
  const alone = [...changes, moreControls].flatMap((change) => tryChange(task, change) ?? []);
  if (alone.length > 0) return alone;
  const two = changes.flatMap((b, j) =>
    changes.slice(0, j).flatMap((a) => tryChange(task, together([a, b])) ?? []),
  );
  if (two.length > 0 || changes.length < 3) return two;
  return [tryChange(task, together(changes)) ?? []].flat();
}

const together = (changes: readonly Change[]): Change => ({
  name: 'several',
  words: changes.map((c) => c.words).join(' and '),
  apply: (means) => changes.reduce((m, c) => c.apply(m), means),
});

function tryChange(task: AdviceTask, change: Change): StakeOption | null {
  const { spec, controls, most } = change.apply({
    spec: task.spec,
    controls: task.field.controls,
    most: MOST_CONTROLS,
  });
  const plan = controlsFor(controls, task.stakes, task.ground, spec, task.targetIn, most);
  return plan && { change: change.name, words: change.words, controls: plan.set.length };
}

/** What a job does not have yet. */
function changesFor({ field, spec }: AdviceTask): Change[] {
  const { left, right } = field.spec.poles;
  return [
    ...(longestTapeFt(spec) < LONG_TAPE_FT ? [longerTape(spec)] : []),
    ...(tapesOf(spec).every((t) => t.material === 'steel') ? [] : [steelTape]),
    ...(left && right ? [] : [measuredPoles(field)]),
  ];
}

const tapesOf = (spec: StakeoutSpec): TapeSpec[] =>
  spec.secondTape ? [spec.tape, spec.secondTape] : [spec.tape];

/** Both tapes changed alike. */
const withTapes = (spec: StakeoutSpec, change: (tape: TapeSpec) => TapeSpec): StakeoutSpec => ({
  ...spec,
  tape: change(spec.tape),
  ...(spec.secondTape ? { secondTape: change(spec.secondTape) } : {}),
});

const longerTape = (spec: StakeoutSpec): Change => ({
  name: 'longer-tape',
  words: `tapes of ${formatLength(LONG_TAPE_FT, spec.system)}`,
  apply: (means) => ({
    ...means,
    spec: withTapes(means.spec, (t) => ({ ...t, limitFt: Math.max(t.limitFt, LONG_TAPE_FT) })),
  }),
});

const steelTape: Change = {
  name: 'steel-tape',
  words: 'steel tapes of class II, corrected for temperature',
  apply: (means) => ({ ...means, spec: withTapes(means.spec, toSteel) }),
};

const toSteel = (tape: TapeSpec): TapeSpec => ({
  ...tape,
  material: 'steel',
  accuracyClass: 'II',
  proportional: Math.min(tape.proportional, STEEL_TAPE.proportional),
  scaleSigma: classScaleSigma('II', tape.limitFt),
});

const moreControls: Change = {
  name: 'more-controls',
  words: 'many more control stakes',
  apply: (means) => ({ ...means, most: 2 * MOST_CONTROLS }),
};

/** A pole counts at the fence's distance; what it measures on the day is typed in then. */
function measuredPoles(field: Field): Change {
  const { poles, bases, spec } = field;
  const measured = (at: Point) => ({
    distanceFt: pointDistance(bases.home, at),
    sigmaIn: POLE_SIGMA_IN,
  });
  const known = {
    left: spec.poles.left ?? measured(poles.left),
    right: spec.poles.right ?? measured(poles.right),
  };
  return {
    name: 'measured-poles',
    words: 'both foul poles as controls, once their distances are measured',
    apply: (means) => ({ ...means, controls: placeControls({ ...spec, poles: known }, bases) }),
  };
}
