/** The headline figures of a plan, as written to `summary.json` and shown on every screen. */
import type { Problem } from '../base/result';
import { checkScale } from '../field/prove-controls';
import { guideWork } from '../labour/guide-work';
import { listInventory } from '../labour/list-inventory';
import type { FieldEfficiency } from '../mowing/model';
import type { TapeSpec } from '../stakeout/model';
import { SQUARE_SIGMA_DEG } from '../stakeout/short-methods';
import { tapesAtHand } from '../stakeout/tapes';
import type { Plan } from './model';

/** Keys are stable; see docs/files.md. Feet, inches and hours as their names say. */
export interface Summary {
  readonly name: string;
  readonly tolerance_in: number;
  readonly target_95_in: number;
  readonly tape_limit_ft: number;
  /** One or two kinds of tape, with the errors that the precision of the stakes is counted from. */
  readonly tapes: readonly TapeFigures[];
  /** Error of a right angle laid on the grass, one sigma. */
  readonly square_sigma_deg: number;
  readonly stakes: number;
  readonly strings: number;
  readonly swings: number;
  readonly bends: number;
  /** Contours with the pieces and readings of an earlier one, moved or mirrored. */
  readonly contours_alike: number;
  /** Beside a grid transfer at the same tolerance; null without a graphic or when no grid serves. */
  readonly grid_saving: {
    readonly cell_ft: number;
    readonly grid_marks: number;
    readonly marks: number;
    readonly bend_marks: number;
    readonly ratio: number;
  } | null;
  readonly set_controls: number;
  readonly rounds: number;
  /** What the crew loads: pieces, or feet of string, by item of `inventory.csv`. */
  readonly inventory: Readonly<Record<string, number>>;
  /** Passes driven along a guide string; null of the drift: no string. */
  readonly guide_strings: number;
  readonly guide_drift_95_in: number | null;
  readonly worst_semi_major_95_in: number | null;
  readonly stakes_over_target: readonly string[];
  /** What can be met and what would do it; null when every stake meets its target. */
  readonly advice: {
    readonly within: number;
    readonly of: number;
    readonly tightest_in: number | null;
    readonly options: readonly {
      readonly change: string;
      readonly words: string;
      readonly controls: number;
    }[];
  } | null;
  /** The proving tapes together as a test of the tape's scale; null without two such controls. */
  readonly scale_check: {
    readonly count: number;
    readonly mean_ft: number;
    readonly limit_in: number;
  } | null;
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
  /** Driven over finished patches against their lay. */
  readonly over_lay_ft: number;
  /** Field efficiency reached, 0 to 1, by machine. */
  readonly efficiency: Readonly<Record<string, number>>;
  /** By machine, shares of 1; the handbook's are null where none is published. */
  readonly field_efficiency: Readonly<Record<string, EfficiencyFigures>>;
  readonly person_hours_p50: number;
  readonly person_hours_p90: number;
  readonly clock_hours_p50: number;
  readonly clock_hours_p90: number;
  readonly fits_p90: boolean;
  readonly problems: readonly Problem[];
  readonly engine: string;
  readonly input: string;
}

/** One sigma each; the scale is one error in all pulls with that tape. */
export interface TapeFigures {
  readonly limit_ft: number;
  readonly reading_sigma_in: number;
  readonly proportional: number;
  readonly scale_sigma: number;
}

const tapeFigures = (tape: TapeSpec): TapeFigures => ({
  limit_ft: tape.limitFt,
  reading_sigma_in: tape.readingSigmaIn,
  proportional: tape.proportional,
  scale_sigma: tape.scaleSigma ?? 0,
});

interface EfficiencyFigures {
  readonly reached: number;
  readonly handbook_low: number | null;
  readonly handbook_high: number | null;
  readonly source: string | null;
}

const efficiencyFigures = ({ reached, handbook }: FieldEfficiency): EfficiencyFigures => ({
  reached,
  handbook_low: handbook?.value.low ?? null,
  handbook_high: handbook?.value.high ?? null,
  source: handbook?.source ?? null,
});

/** The headline figures of `plan`; null where there is no graphic to have one. */
export function summarise(plan: Plan): Summary {
  const { stakes, passes, hours, project } = plan;
  return {
    name: project.name,
    tolerance_in: project.stakeout.toleranceIn,
    target_95_in: project.stakeout.target95In,
    tape_limit_ft: project.stakeout.tape.limitFt,
    tapes: tapesAtHand(project.stakeout).map(tapeFigures),
    square_sigma_deg: SQUARE_SIGMA_DEG[project.stakeout.square ?? 'square'],
    stakes: stakes?.stakes.length ?? 0,
    strings: stakes?.strings ?? 0,
    swings: stakes?.swings ?? 0,
    bends: stakes?.bends ?? 0,
    contours_alike: stakes?.contours.filter((c) => c.like).length ?? 0,
    grid_saving: savingOf(plan),
    set_controls: stakes?.stakes.filter((s) => s.kind === 'control').length ?? 0,
    rounds: stakes?.rounds.length ?? 0,
    inventory: Object.fromEntries(
      listInventory(stakes, guideWork(plan.guides, passes)).map((item) => [item.id, item.quantity]),
    ),
    guide_strings: guideWork(plan.guides, passes).turns,
    guide_drift_95_in: plan.guides.worstDriftIn,
    worst_semi_major_95_in: stakes?.worstSemiMajor95In ?? null,
    stakes_over_target: stakes?.overTarget ?? [],
    advice: adviceOf(plan),
    scale_check: scaleCheckOf(plan),
    largest_gap_in: stakes?.largestGapIn ?? null,
    legible_share: plan.looks[0]?.share ?? null,
    legible_by_seat: Object.fromEntries(plan.looks.map((look) => [look.seat, look.share])),
    graphic_covered_share: passes.graphicCovered,
    laid_outside_share: passes.laidOutside,
    disturbed_share: passes.disturbed,
    mow_ft: passes.mowFt,
    turn_ft: passes.turnFt,
    run_ft: passes.runFt,
    over_lay_ft: passes.overLayFt,
    efficiency: Object.fromEntries(passes.efficiency.map((e) => [e.machine, e.reached])),
    field_efficiency: Object.fromEntries(
      passes.efficiency.map((e) => [e.machine, efficiencyFigures(e)]),
    ),
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

function savingOf({ stakes }: Plan): Summary['grid_saving'] {
  const saving = stakes?.saving;
  if (!saving) return null;
  const { cellFt, gridMarks, marks, bendMarks, ratio } = saving;
  return {
    cell_ft: cellFt,
    grid_marks: gridMarks,
    marks,
    bend_marks: bendMarks,
    ratio,
  };
}

function adviceOf({ stakes }: Plan): Summary['advice'] {
  const advice = stakes?.advice;
  if (!advice) return null;
  const { within, of, tightestIn, options } = advice;
  return { within, of, tightest_in: tightestIn, options };
}

function scaleCheckOf({ field, project }: Plan): Summary['scale_check'] {
  const check = checkScale(field.controls, project.stakeout.tape);
  return check && { count: check.count, mean_ft: check.meanFt, limit_in: check.limitIn };
}
