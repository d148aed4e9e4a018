/** Person-hours and clock-hours of the visit, against the window that the user types. */
import { fail, invariant, problem, succeed, type Problem, type Result } from '../base/result';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import type { GuidePlan } from '../guide/model';
import type { PassPlan } from '../mowing/model';
import type { StakePlan } from '../stakeout/model';
import { checkLabour, LEAST_TO_SET_OUT } from './check-labour';
import { readClock, writeClock } from './clock';
import { guideWork, type GuideWork } from './guide-work';
import { listTasks, type PlannedTask } from './list-tasks';
import type { Hours, HoursTotals, LabourSpec, Task } from './model';
import { hoursAt, middleDay, simulateHours, type SimulatedHours } from './simulate-hours';
import { quantile } from './spread';

const VISIT = 1;
export interface HoursInput {
  readonly field: Field;
  readonly design: Design;
  readonly guides?: GuidePlan;
  readonly passes: PassPlan;
  readonly stakes: StakePlan | null;
  readonly spec: LabourSpec;
}

interface Crewed {
  readonly tasks: readonly PlannedTask[];
  readonly simulated: SimulatedHours;
}

/**
 * Fails with the problems of `checkLabour`; warns `window-short` when the work does not fit at P90.
 * Person-hours count people at work on a task, not people waiting.
 */
export function estimateHours(input: HoursInput): Result<Hours> {
  const { spec, stakes } = input;
  const problems = checkLabour(spec, stakes !== null);
  if (problems.some((p) => p.severity === 'error')) return fail(...problems);
  const best = bestCrew(input, input.guides && guideWork(input.guides, input.passes));
  if (!best) return fail(...problems, machineCrewShort(spec.people));
  const hours = assemble(spec, best);
  return succeed(hours, [...problems, ...windowProblems(hours)]);
}

/** Only crews whose middle day is this near the shortest can have the earliest P90 finish. */
const NEAR_BEST = 1.1;

/** Nobody is made to work: the number at work, up to the people there are, that finishes first. */
function bestCrew(input: HoursInput, guides: GuideWork | undefined): Crewed | null {
  const tasksOf = (people: number) => tasksFor(input, guides, people);
  const most = Math.min(input.spec.people, mostUseful(tasksOf(input.spec.people)));
  const least = input.stakes ? LEAST_TO_SET_OUT : 1;
  const crews = Array.from({ length: most - least + 1 }, (_, i) => least + i)
    .map((people) => ({ people, tasks: tasksOf(people) }))
    .filter(({ people, tasks }) => tasks.every((task) => task.people <= people))
    .map((crew) => ({ ...crew, middle: middleDay(crew.tasks, crew.people) }));
  const shortest = Math.min(...crews.map((crew) => crew.middle));
  return crews
    .filter((crew) => crew.middle <= NEAR_BEST * shortest)
    .map(({ tasks, people }) => ({ tasks, simulated: simulateHours(tasks, people) }))
    .reduce<Crewed | null>((best, crew) => (best && p90(best) <= p90(crew) ? best : crew), null);
}

const p90 = ({ simulated }: Crewed): number => quantile(simulated.clockMinutes, 0.9);

/** More people than this change nothing: those of the largest stage and of what runs beside it. */
function mostUseful(tasks: readonly PlannedTask[]): number {
  const stages = new Map<string, number>();
  for (const { after, people } of tasks) {
    const key = after.join();
    stages.set(key, (stages.get(key) ?? 0) + people);
  }
  const beside = stages.get('') ?? 0;
  return beside + Math.max(...stages.values());
}

function tasksFor(
  { field, passes, stakes, spec }: HoursInput,
  guides: GuideWork | undefined,
  people: number,
): PlannedTask[] {
  const work = { spec, people, stakes, provingTapes: field.proving.length, passes };
  return listTasks(guides ? { ...work, guides } : work);
}

const machineCrewShort = (people: number): Problem =>
  problem(
    'crew-short',
    'labour.people',
    `a machine takes more than ${people} people`,
    'plan more people or choose another machine',
  );

function assemble(spec: LabourSpec, { tasks, simulated }: Crewed): Hours {
  const totals = totalsOf(simulated);
  return {
    spec,
    tasks: tasks.map((task, i) => timeTask(task, simulated, i)),
    visits: [{ visit: VISIT, ...totals }],
    totals,
    window: windowOf(spec, simulated),
    simulated: Array.from(simulated.clockMinutes, (minutes) => minutes / 60),
  };
}

function timeTask(task: PlannedTask, simulated: SimulatedHours, i: number): Task {
  const { id, name, quantity, unit, rate, people, after } = task;
  return {
    id,
    name,
    visit: VISIT,
    quantity,
    unit,
    rate,
    people,
    after,
    minutesP50: simulated.minutesP50[i]!,
    minutesP90: simulated.minutesP90[i]!,
    startMin: simulated.slots[i]!.start,
    endMin: simulated.slots[i]!.end,
  };
}

const totalsOf = ({ clockMinutes, personMinutes }: SimulatedHours): HoursTotals => ({
  personHoursP50: hoursAt(personMinutes, 0.5),
  personHoursP90: hoursAt(personMinutes, 0.9),
  clockHoursP50: hoursAt(clockMinutes, 0.5),
  clockHoursP90: hoursAt(clockMinutes, 0.9),
});

function windowOf(spec: LabourSpec, { clockMinutes }: SimulatedHours): Hours['window'] {
  const opens = readClock(spec.opens);
  const closes = readClock(spec.closes);
  invariant(opens !== null && closes !== null, 'the window was checked');
  const length = closes - opens;
  const spare = Math.floor(length - quantile(clockMinutes, 0.9));
  return {
    opens: spec.opens,
    closes: spec.closes,
    fitsP90: spare >= 0,
    spareMinutesP90: spare,
    finishP50: writeClock(opens + quantile(clockMinutes, 0.5)),
    finishP90: writeClock(opens + quantile(clockMinutes, 0.9)),
    chance: clockMinutes.filter((minutes) => minutes <= length).length / clockMinutes.length,
  };
}

function windowProblems({ window }: Hours): Problem[] {
  if (window.fitsP90) return [];
  return [
    problem(
      'window-short',
      'labour.closes',
      `on nine days in ten the work ends by ${window.finishP90}, ${-window.spareMinutesP90} minutes past the window`,
      'open the window earlier, plan more people, or make the graphic simpler',
      'warning',
    ),
  ];
}
