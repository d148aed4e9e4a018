/** How long stakes stand in the grass. */
import type { Seconds } from '../base/units';
import { proveControls } from '../field/prove-controls';
import type { StakePlan } from '../stakeout/model';
import { LEAST_TO_SET_OUT } from './check-labour';
import { listTasks } from './list-tasks';
import type { LabourSpec } from './model';
import { middleDay } from './simulate-hours';

/**
 * Middle (P50) clock seconds from the first head flagged to the signed count, machines not included;
 * 0 without stakes. A crew that `estimateHours` refuses is taken as the fewest people that can set out.
 */
export function setOutSeconds(stakes: StakePlan | null, spec: LabourSpec): Seconds {
  if (!stakes) return 0;
  const people = Math.max(LEAST_TO_SET_OUT, Math.floor(spec.people) || 0);
  const provingTapes = proveControls(stakes.controls, stakes.spec.system).length;
  const tasks = listTasks({ spec, people, stakes, provingTapes, passes: null })
    .filter((task) => task.id !== 'prepare')
    .map((task) => ({ ...task, after: task.after.filter((id) => id !== 'prepare') }));
  return 60 * middleDay(tasks, people);
}
