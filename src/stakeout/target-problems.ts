/** What is said when stakes cannot be set within the target, or not at all. */
import { formatLimit, type LengthSystem } from '../base/quantity';
import { problem, type Problem } from '../base/result';
import type { StakeAdvice, StakeOption, StakePlan } from './model';

/** One warning that names the stakes above the target, what can be met, and what would do it. */
export function overTargetProblem(plan: StakePlan): Problem | null {
  if (plan.overTarget.length === 0 || !plan.advice) return null;
  const { system, target95In } = plan.spec;
  const over = plan.overTarget.length;
  const { advice } = plan;
  const found =
    advice.tightestIn === null
      ? ''
      : `; ${over === advice.of ? 'all' : 'they and all others'} can be set within ${formatLimit(advice.tightestIn, system)}`;
  return problem(
    'stake-over-target',
    `${over === 1 ? 'stake' : 'stakes'} ${idRanges(plan.overTarget)}`,
    `${over} of ${advice.of} stakes are not sure to stand within ${formatLimit(target95In, system)} of their place, 19 times in 20; the worst reaches ${formatLimit(plan.worstSemiMajor95In, system)}${found}`,
    targetFix(advice, system),
    'warning',
  );
}

function targetFix(advice: StakeAdvice, system: LengthSystem): string {
  const raise =
    advice.tightestIn === null
      ? 'raise the target'
      : `set the target at ${formatLimit(advice.tightestIn, system)}`;
  if (advice.options.length === 0) {
    return `no longer tape, steel tape, measured pole or further control stake was found that does it: ${raise}, or move the graphic nearer to the infield`;
  }
  return `${optionWords(advice.options)}; or ${raise}`;
}

/** `use tapes of 300' 0" (then 2 control stakes), or …`. */
export const optionWords = (options: readonly StakeOption[]): string =>
  `use ${options.map((o) => `${o.words} (then ${countWords(o.controls)})`).join(', or ')}`;

const countWords = (controls: number): string =>
  controls === 0
    ? 'no control stake is set'
    : `${controls} control ${controls === 1 ? 'stake is' : 'stakes are'} set`;

/** `K1, 3 to 9, 12`: runs of three or more numbers together. */
export function idRanges(ids: readonly string[]): string {
  const runs: string[][] = [];
  for (const id of ids) {
    const last = runs[runs.length - 1];
    const before = last?.[last.length - 1];
    if (last && /^\d+$/.test(id) && Number(before) + 1 === Number(id)) last.push(id);
    else runs.push([id]);
  }
  return runs
    .flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run[run.length - 1]}`] : run))
    .join(', ');
}
