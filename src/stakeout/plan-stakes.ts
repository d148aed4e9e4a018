/**
 * The stake-out of a graphic: its outline as strings and swings, the control stakes it needs, every
 * stake's ties and check, and the order of setting. What is printed is what is checked: readings are
 * rounded first, and positions, precision and fit follow from the printed readings.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { inches, feetToInches } from '../base/units';
import { checkOnGrass } from '../art/check-on-grass';
import type { Control, Field } from '../field/model';
import { placeInWords } from '../field/place-in-words';
import { pointDistance } from '../geometry/point';
import { regionArea, regionFrom, type Region } from '../geometry/region';
import { adviseChanges } from './advise';
import { chooseControls } from './choose-controls';
import { controlsServe, type ControlPlan } from './control-plan';
import { traceContours } from './congruent-contours';
import { contourTask, draftOutline, type ContourTask, type Draft } from './draft-outline';
import { gridSaving } from './grid-saving';
import { stakeGround, type StakeGround } from './ground';
import type { JoinedContour, JoinedPiece } from './join-outline';
import { ROUNDING_ALLOWANCE_IN, STAKE_SPACING_FT } from './limits';
import { measureWalk } from './measure-walk';
import { outlineProblems, type DrawnOutline } from './outline-problems';
import { DEFAULT_MINUTES } from './minutes';
import { linkPrices } from './price-links';
import type { Contour, StakeAdvice, StakeoutSpec, StakePlan } from './model';
import type { PrintedStakes } from './print-stakes';
import { reviewOutline, type DrawnContour } from './review-outline';
import { joinOutline, sharedShapes } from './share-readings';
import { printShortest, settleStakes, type Setting } from './set-out';
import { optionWords, overTargetProblem } from './target-problems';
import { banFailed, tightenOffences } from './tighten-rules';
import { plannedTubeFt, tracePoint, type Trace } from './trace';

/** Times the outline is fitted again after its printed form was found wanting. */
const MOST_TRIES = 8;
/** Tries without a better outline after which the best so far is taken. */
const PATIENCE = 3;
/** Times it is fitted again, before it is printed, after its planned form was. */
const MOST_DRAFTS = 12;

interface Attempt extends DrawnOutline {
  readonly controls: ControlPlan;
  readonly setting: Setting;
  readonly printed: PrintedStakes;
}

/**
 * Plans the stake-out of `graphic` on `field`. Errors: `graphic-empty`, those of `checkOnGrass`,
 * `stake-out-of-reach`. Warnings: `stake-over-target`, `detail-too-small`, `outline-off`,
 * `outline-crosses`.
 */
export function planStakes(input: {
  readonly field: Field;
  readonly graphic: Region;
  readonly spec: StakeoutSpec;
}): Result<StakePlan> {
  const { field, spec } = input;
  const graphic = regionFrom(input.graphic);
  const wrong = regionArea(graphic) > 0 ? checkOnGrass(field, graphic) : [nothingThere()];
  if (wrong.length > 0) return fail(...wrong);
  const ground = stakeGround(field);
  const tasks = outlineTasks(graphic, spec, ground);
  const best = shortestOrder(bestAttempt(tasks, field, ground, spec), tasks, spec);
  const lost = unreachable(best, field, ground, spec);
  return lost.length > 0 ? fail(...lost) : finishPlan(best, field, ground, spec);
}

const nothingThere = (): Problem =>
  problem(
    'graphic-empty',
    'the graphic',
    'there is no area to set out',
    'bring a drawing or a word that encloses some area',
  );

function outlineTasks(graphic: Region, spec: StakeoutSpec, ground: StakeGround): ContourTask[] {
  const tasks: ContourTask[] = [];
  for (const { trace, like } of traceContours(graphic)) {
    const first = like && { task: tasks[like.of]!, mirrored: like.mirrored };
    tasks.push(taskFor(trace, first, spec, ground));
  }
  return tasks;
}

function taskFor(
  trace: Trace,
  like: ContourTask['like'],
  spec: StakeoutSpec,
  ground: StakeGround,
): ContourTask {
  const task = contourTask(trace, plannedTubeFt(spec.toleranceIn), like);
  for (let k = 0; k < trace.count; k++) {
    if (!ground.mayPin(tracePoint(trace, k))) task.blocked[k] = 1;
  }
  return task;
}

/** Fits, prints, reviews and tightens until the printed outline holds; the best when it never does. */
function bestAttempt(
  tasks: readonly ContourTask[],
  field: Field,
  ground: StakeGround,
  spec: StakeoutSpec,
): Attempt {
  let best: Attempt | null = null;
  let bestAt = 0;
  for (let tries = 0; ; tries++) {
    const draft = plannedDraft(tasks, ground, spec);
    const attempt = printDraft(draft, tasks, field, ground, spec, best?.controls ?? null);
    if (!best || faultOf(attempt) < faultOf(best)) {
      best = attempt;
      bestAt = tries;
    }
    const again = tighten(tasks, attempt);
    if (!again || tries >= MOST_TRIES || tries - bestAt >= PATIENCE) return best;
  }
}

const faultOf = (a: Attempt): number =>
  1000 * failures(a) + 10 * crossings(a) + a.review.largestGapFt;

/**
 * The outline in its planned places, fitted again until it holds: what is wrong with it before any
 * reading is rounded shows without setting a stake.
 */
function plannedDraft(
  tasks: readonly ContourTask[],
  ground: StakeGround,
  spec: StakeoutSpec,
): Draft {
  const prices = linkPrices(spec.minutes ?? DEFAULT_MINUTES);
  for (let tries = 0; ; tries++) {
    const draft = draftOutline(tasks, { mayPin: ground.mayPin, prices });
    if (tries >= MOST_DRAFTS) return draft;
    const stakes = draft.stakes.map(({ at }, i) => ({ id: String(i), at }));
    const joined = joinOutline(draft.contours, stakes, spec.system);
    const { offences } = reviewOutline(drawnOf(tasks, joined), limitFt(spec));
    const strayed = tightenOffences(offences);
    if (!banFailed(tasks, joined) && !strayed) return draft;
  }
}

const limitFt = (spec: StakeoutSpec): number => inches(spec.toleranceIn + ROUNDING_ALLOWANCE_IN);

const drawnOf = (tasks: readonly ContourTask[], joined: readonly JoinedContour[]): DrawnContour[] =>
  joined.flatMap((j, i): DrawnContour[] =>
    j.ok && j.pieces.length > 0 ? [{ task: tasks[i]!, pieces: j.pieces }] : [],
  );

function printDraft(
  draft: Draft,
  tasks: readonly ContourTask[],
  field: Field,
  ground: StakeGround,
  spec: StakeoutSpec,
  before: ControlPlan | null,
): Attempt {
  const places = draft.stakes.map((s) => s.at);
  const controls =
    before && controlsServe(before, places, spec)
      ? before
      : chooseControls(field.controls, places, ground, spec);
  const { setting, printed } = settleStakes(draft.stakes, controls, spec);
  return reviewed({ draft, controls, setting, printed }, tasks, spec);
}

/**
 * The same stakes in the shortest order, so with other numbers and other roundings; as they were when
 * those would break what holds.
 */
function shortestOrder(
  attempt: Attempt,
  tasks: readonly ContourTask[],
  spec: StakeoutSpec,
): Attempt {
  const ordered = reviewed({ ...attempt, printed: printShortest(attempt) }, tasks, spec);
  const strays = (a: Attempt): number =>
    Math.max(limitFt(spec), a.review.largestGapFt) + crossings(a);
  const holds = failures(ordered) <= failures(attempt) && strays(ordered) <= strays(attempt);
  return holds ? ordered : attempt;
}

const failures = ({ joined }: Pick<Attempt, 'joined'>): number =>
  joined.filter((j) => !j.ok).length;

const crossings = ({ review }: Pick<Attempt, 'review'>): number =>
  review.offences.filter((o) => o.crosses).length;

/** The printed stakes with the outline that they draw. */
function reviewed(
  made: Omit<Attempt, 'joined' | 'review'>,
  tasks: readonly ContourTask[],
  spec: StakeoutSpec,
): Attempt {
  const { draft, controls, setting, printed } = made;
  const joined = joinOutline(draft.contours, printed.printed, spec.system);
  const review = reviewOutline(drawnOf(tasks, joined), limitFt(spec));
  return { draft, controls, setting, printed, joined, review };
}

/** Tightens the rules where the attempt failed; false when there is nothing to mend. */
function tighten(tasks: readonly ContourTask[], attempt: Attempt): boolean {
  const strayed = tightenOffences(attempt.review.offences);
  const failed = banFailed(tasks, attempt.joined);
  return settlePrinted(tasks, attempt) || strayed || failed;
}

/** Printed stakes closer than the contract allows: one of the two places is blocked. */
function settlePrinted(tasks: readonly ContourTask[], attempt: Attempt): boolean {
  const { printed } = attempt.printed;
  let changed = false;
  attempt.draft.contours.forEach((contour, c) => {
    for (const piece of contour.pieces) {
      if (piece.kind === 'circle') continue;
      const stake = printed[piece.from];
      if (!stake) continue;
      const close = printed.some(
        (p) => p && p !== stake && pointDistance(p.at, stake.at) < STAKE_SPACING_FT,
      );
      if (!close) continue;
      tasks[c]!.blocked[piece.link.from % contour.trace.count] = 1;
      tasks[c]!.chain = null;
      changed = true;
    }
  });
  return changed;
}

/** Stakes that no pair of controls sets and checks: an error that names the place and what reaches. */
function unreachable(
  attempt: Attempt,
  field: Field,
  ground: StakeGround,
  spec: StakeoutSpec,
): Problem[] {
  const lost = attempt.draft.stakes.filter((_, i) => !attempt.printed.printed[i]);
  if (lost.length === 0) return [];
  const stakes = attempt.draft.stakes.map((s) => s.at);
  const options = adviseChanges({ field, stakes, ground, spec, targetIn: Infinity });
  const away = 'move the graphic nearer to the infield';
  return [
    problem(
      'stake-out-of-reach',
      `${lost.length} of ${stakes.length} stakes, the first ${placeInWords(lost[0]!.at)}`,
      'no two controls set and a third reading checks it within the tape limit',
      options.length > 0 ? `${optionWords(options)}; or ${away}` : `use a longer tape, or ${away}`,
    ),
  ];
}

function finishPlan(
  best: Attempt,
  field: Field,
  ground: StakeGround,
  spec: StakeoutSpec,
): Result<StakePlan> {
  const contours = drawnContours(best);
  const pieces = best.joined.flatMap((j) => (j.ok ? j.pieces : []));
  const { stakes } = best.printed;
  const traces = best.draft.contours.map((c) => c.art);
  const over = stakes.filter((s) => s.semiMajor95In > spec.target95In);
  const plan: StakePlan = {
    spec,
    controls: [...field.controls, ...best.controls.set.map(setControl)],
    stakes,
    rounds: best.printed.rounds,
    walk: measureWalk([...field.controls, ...best.controls.set.map(setControl)], stakes, spec.crew),
    contours,
    strings: pieces.filter((p) => p.piece.kind === 'string').length,
    swings: pieces.filter((p) => p.piece.kind === 'swing' || p.piece.kind === 'circle').length,
    bends: pieces.filter((p) => p.piece.kind === 'bend').length,
    stringFt: pieces.reduce((sum, p) => sum + stringLength(p), 0),
    saving: gridSaving(traces, stakes, contours, spec),
    worstSemiMajor95In: Math.max(0, ...stakes.map((s) => s.semiMajor95In)),
    largestGapIn: feetToInches(best.review.largestGapFt),
    overTarget: over.map((s) => s.id),
    ...(over.length > 0 ? { advice: adviceFor(best, field, ground, spec) } : {}),
  };
  return succeed(plan, [...planProblems(best, plan)]);
}

function drawnContours({ joined, draft }: Attempt): Contour[] {
  const likes = sharedShapes(
    joined,
    draft.contours.map((c) => c.like),
  );
  return joined.flatMap((j, i): Contour[] => {
    if (!j.ok || j.pieces.length === 0) return [];
    const like = likes[i];
    const pieces = j.pieces.map((p) => p.piece);
    const shape = like ? { like: { contour: like.of + 1, mirrored: like.mirrored } } : {};
    return [{ graphic: '1', contour: i + 1, pieces, ...shape }];
  });
}

const stringLength = (p: JoinedPiece): number =>
  p.piece.kind === 'string' ? pointDistance(p.from, p.to) : 0;

function setControl(c: ControlPlan['set'][number]): Control {
  return {
    id: c.id,
    name: `Control stake ${c.id.slice(1)}`,
    touch: 'the middle of the stake at the ground',
    picture: 'stake',
    kind: 'set',
    at: c.stake.point.at,
    covariance: c.stake.covariance,
  };
}

function planProblems(best: Attempt, plan: StakePlan): Problem[] {
  return [...[overTargetProblem(plan) ?? []].flat(), ...outlineProblems(best, plan)];
}

function adviceFor(
  best: Attempt,
  field: Field,
  ground: StakeGround,
  spec: StakeoutSpec,
): StakeAdvice {
  const { stakes } = best.printed;
  const { targetIn } = best.controls;
  const wanted = best.draft.stakes.map((s) => s.at);
  return {
    within: stakes.filter((s) => s.semiMajor95In <= spec.target95In).length,
    of: stakes.length,
    tightestIn: targetIn < Infinity ? targetIn : null,
    options: adviseChanges({ field, stakes: wanted, ground, spec, targetIn: spec.target95In }),
  };
}
