/** The whole plan: every result of one project, plain data. */
import type { Problem } from '../base/result';
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import type { GuidePlan } from '../guide/model';
import type { Hours } from '../labour/model';
import type { PassPlan } from '../mowing/model';
import type { Project } from '../project/model';
import type { StakePlan } from '../stakeout/model';
import type { Legibility } from '../view/model';

/** Printed in every summary; raised when equal input may give another plan. */
export const ENGINE_VERSION = '0.1.0';

export interface Plan {
  readonly project: Project;
  /** Fingerprint of the project as read. */
  readonly inputHash: string;
  readonly engineVersion: string;
  readonly field: Field;
  readonly design: Design;
  /** Null without a graphic. */
  readonly stakes: StakePlan | null;
  /** Strings along first passes, and running distances; made without a graphic too. */
  readonly guides: GuidePlan;
  readonly passes: PassPlan;
  readonly hours: Hours;
  /** One per seat; empty without a graphic. */
  readonly looks: readonly Legibility[];
  readonly problems: readonly Problem[];
}
