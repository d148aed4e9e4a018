/** The headline figures of a plan, as written to `summary.json` and shown on every screen. */
import type { Problem } from '../base/result';
import type { Plan } from './model';

/** Keys are stable; see docs/files.md. Feet, inches and hours as their names say. */
export interface Summary {
  readonly name: string;
  readonly tolerance_in: number;
  readonly target_95_in: number;
  readonly tape_limit_ft: number;
  readonly stakes: number;
  readonly strings: number;
  readonly swings: number;
  readonly set_controls: number;
  readonly rounds: number;
  readonly worst_semi_major_95_in: number | null;
  readonly stakes_over_target: readonly string[];
  readonly largest_gap_in: number | null;
  /** From the first seat (behind home); null without a graphic. */
  readonly legible_share: number | null;
  readonly legible_by_seat: Readonly<Record<string, number>>;
  readonly graphic_covered_share: number;
  readonly laid_outside_share: number;
  /** Left in a wrong lay by a drum that never lifts. */
  readonly disturbed_share: number;
  readonly mow_ft: number;
  readonly turn_ft: number;
  readonly run_ft: number;
  /** Field efficiency reached, 0 to 1, by machine. */
  readonly efficiency: Readonly<Record<string, number>>;
  readonly person_hours_p50: number;
  readonly person_hours_p90: number;
  readonly clock_hours_p50: number;
  readonly clock_hours_p90: number;
  readonly fits_p90: boolean;
  readonly problems: readonly Problem[];
  readonly engine: string;
  readonly input: string;
}

/** The headline figures of `plan`; null where there is no graphic to have one. */
export function summarise(plan: Plan): Summary {
  const { stakes, passes, hours, project } = plan;
  return {
    name: project.name,
    tolerance_in: project.stakeout.toleranceIn,
    target_95_in: project.stakeout.target95In,
    tape_limit_ft: project.stakeout.tape.limitFt,
    stakes: stakes?.stakes.length ?? 0,
    strings: stakes?.strings ?? 0,
    swings: stakes?.swings ?? 0,
    set_controls: stakes?.stakes.filter((s) => s.kind === 'control').length ?? 0,
    rounds: stakes?.rounds.length ?? 0,
    worst_semi_major_95_in: stakes?.worstSemiMajor95In ?? null,
    stakes_over_target: stakes?.overTarget ?? [],
    largest_gap_in: stakes?.largestGapIn ?? null,
    legible_share: plan.looks[0]?.share ?? null,
    legible_by_seat: Object.fromEntries(plan.looks.map((look) => [look.seat, look.share])),
    graphic_covered_share: passes.graphicCovered,
    laid_outside_share: passes.laidOutside,
    disturbed_share: passes.disturbed,
    mow_ft: passes.mowFt,
    turn_ft: passes.turnFt,
    run_ft: passes.runFt,
    efficiency: Object.fromEntries(passes.efficiency.map((e) => [e.machine, e.reached])),
    person_hours_p50: hours.totals.personHoursP50,
    person_hours_p90: hours.totals.personHoursP90,
    clock_hours_p50: hours.totals.clockHoursP50,
    clock_hours_p90: hours.totals.clockHoursP90,
    fits_p90: hours.window.fitsP90,
    problems: plan.problems,
    engine: plan.engineVersion,
    input: plan.inputHash,
  };
}
