/**
 * The pipeline: a project in, the whole plan out. Each step is a pure function of the ones before it;
 * an error of one step ends the plan with every problem found so far.
 */
import { fingerprint } from '../base/hash';
import { fail, succeed, type Problem, type Result } from '../base/result';
import { loadArtwork } from '../art/load-artwork';
import type { Assets } from '../art/model';
import { placeArtwork } from '../art/place-artwork';
import { composeDesign } from '../design/compose-design';
import type { Design } from '../design/model';
import { buildField } from '../field/build-field';
import type { Field } from '../field/model';
import { DEFAULT_GUIDES } from '../guide/drift';
import type { GuidePlan, GuideSpec } from '../guide/model';
import { planGuides } from '../guide/plan-guides';
import { isGuided } from '../guide/string-turns';
import { EMPTY_REGION, type Region } from '../geometry/region';
import { crewMinutes } from '../labour/crew-minutes';
import { estimateHours } from '../labour/estimate-hours';
import { setOutSeconds } from '../labour/set-out-time';
import type { Hours } from '../labour/model';
import { designWidths, findMachines, type Fleet } from '../mowing/machines';
import type { PassPlan } from '../mowing/model';
import { planPasses } from '../mowing/plan-passes';
import type { Project } from '../project/model';
import { writeProject } from '../project/write-project';
import type { StakeoutSpec, StakePlan } from '../stakeout/model';
import { planStakes } from '../stakeout/plan-stakes';
import { judgeLooks } from '../view/judge-look';
import { ENGINE_VERSION, type Plan } from './model';

/** The steps of a plan, in order, as reported while it is made. */
export type PlanStep = 'ground' | 'design' | 'stakes' | 'passes' | 'hours' | 'look';

interface Steps {
  readonly problems: Problem[];
  readonly failed: () => boolean;
  /** A step's value, or null once it has failed; its problems are kept either way. */
  readonly take: <T>(result: Result<T>) => T | null;
}

function collectSteps(): Steps {
  const problems: Problem[] = [];
  let failures = 0;
  const take = <T>(result: Result<T>): T | null => {
    problems.push(...result.problems);
    if (result.ok) return result.value;
    failures++;
    return null;
  };
  return { problems, failed: () => failures > 0, take };
}

/**
 * Makes the whole plan. `assets` holds the fonts and files that the project names. `onStep` is told
 * each step before it starts.
 */
export function makePlan(
  project: Project,
  assets: Assets,
  onStep: (step: PlanStep) => void = () => undefined,
): Result<Plan> {
  const steps = collectSteps();
  onStep('ground');
  const field = steps.take(buildField(project.field, project.units, project.stakeout.tape));
  const machines = steps.take(findMachines(project.mowing));
  const graphic = steps.take(placeGraphic(project, assets));
  if (!field || !machines || !graphic) return fail(...steps.problems);
  onStep('design');
  const design = steps.take(designOf(project, field, machines, graphic));
  if (!design) return fail(...steps.problems);
  const guides = steps.take(guidesOf(project, field, design, machines));
  if (!guides) return fail(...steps.problems);
  onStep('stakes');
  const stakes =
    graphic.length === 0 ? null : steps.take(planStakes({ field, graphic, spec: specOf(project) }));
  if (steps.failed()) return fail(...steps.problems);
  onStep('passes');
  const passes = steps.take(passesOf(project, { field, design, guides, stakes }, machines));
  if (!passes) return fail(...steps.problems);
  onStep('hours');
  const hours = steps.take(
    estimateHours({ field, design, guides, passes, stakes, spec: project.labour }),
  );
  if (!hours) return fail(...steps.problems);
  onStep('look');
  return succeed(
    assemble(project, { field, design, stakes, guides, passes, hours }, steps.problems),
    steps.problems,
  );
}

interface Parts {
  readonly field: Field;
  readonly design: Design;
  readonly stakes: StakePlan | null;
  readonly guides: GuidePlan;
  readonly passes: PassPlan;
  readonly hours: Hours;
}

function assemble(project: Project, parts: Parts, problems: readonly Problem[]): Plan {
  const shown = parts.design.graphic.length > 0 ? project.seats : [];
  return {
    project,
    inputHash: fingerprint(writeProject(project)),
    engineVersion: ENGINE_VERSION,
    ...parts,
    looks: judgeLooks(parts.design, shown),
    problems,
  };
}

const specOf = (project: Project): StakeoutSpec => ({
  ...project.stakeout,
  system: project.units,
  minutes: crewMinutes(project.labour, project.stakeout.crew),
});

/** The graphic on the grass: empty without art. */
export function placeGraphic(project: Project, assets: Assets): Result<Region> {
  if (project.art === null) return succeed(EMPTY_REGION);
  const artwork = loadArtwork(project.art.source, assets);
  if (!artwork.ok) return artwork;
  const placed = placeArtwork(artwork.value, project.art.placement);
  const problems = [...artwork.problems, ...placed.problems];
  return placed.ok ? succeed(placed.value, problems) : fail(...problems);
}

function designOf(
  project: Project,
  field: Field,
  machines: Fleet,
  graphic: Region,
): Result<Design> {
  return composeDesign({
    field,
    pattern: project.pattern,
    design: project.design,
    graphic,
    ...designWidths(machines),
    toleranceIn: project.stakeout.toleranceIn,
  });
}

/** The default figures of drift with the project's own over them. */
export const guideSpecOf = (project: Project): GuideSpec => ({
  ...DEFAULT_GUIDES,
  ...project.guides,
});

function guidesOf(
  project: Project,
  field: Field,
  design: Design,
  { wide }: Fleet,
): Result<GuidePlan> {
  return planGuides({ field, design, wide, system: project.units, spec: guideSpecOf(project) });
}

function passesOf(
  project: Project,
  parts: Pick<Parts, 'field' | 'design' | 'guides' | 'stakes'>,
  machines: Fleet,
): Result<PassPlan> {
  const { field, design, guides, stakes } = parts;
  return planPasses({
    field,
    design,
    ...machines,
    gate: project.mowing.gate,
    overLaySecondsPerFt: project.mowing.overLaySecondsPerFt,
    toleranceIn: project.stakeout.toleranceIn,
    setOutSeconds: setOutSeconds(stakes, project.labour),
    isGuided: (patch, line) => isGuided(guides, patch, line),
    bandsBeside: guides.strings.length > 0 && guides.spec.order === 'beside',
  });
}
