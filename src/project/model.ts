/** The saved document: everything the user decides, nothing that can be computed. */
import type { LengthSystem } from '../base/quantity';
import type { ArtSpec } from '../art/model';
import type { DesignSpec } from '../design/model';
import type { FieldSpec } from '../field/model';
import type { GuideSpec } from '../guide/model';
import type { LabourSpec } from '../labour/model';
import type { MowingSpec } from '../mowing/model';
import type { PatternSpec } from '../pattern/model';
import type { StakeoutSpec } from '../stakeout/model';
import type { SeatSpec } from '../view/model';

/** What a saved project names itself, and the version that is written. */
export const PROJECT_FORMAT = 'swathscribe-project';
export const PROJECT_VERSION = 2;

export interface Project {
  readonly format: typeof PROJECT_FORMAT;
  readonly version: typeof PROJECT_VERSION;
  /** Name of the job, printed on every sheet. */
  readonly name: string;
  readonly club: string;
  /** Day of the job, ISO `YYYY-MM-DD`, or empty. */
  readonly date: string;
  readonly units: LengthSystem;
  readonly paper: 'letter' | 'a4';
  /** https address of the phone page (`crew/` of the app, served); absent: none, and no codes. */
  readonly crewAddress?: string;
  readonly field: FieldSpec;
  readonly pattern: PatternSpec;
  readonly art: ArtSpec | null;
  readonly design: DesignSpec;
  readonly mowing: MowingSpec;
  /** `system` is `units`. */
  readonly stakeout: Omit<StakeoutSpec, 'system' | 'minutes'>;
  /** Own figures of drift and guide strings over the defaults; absent: all default. */
  readonly guides?: Partial<GuideSpec>;
  readonly labour: LabourSpec;
  readonly seats: readonly SeatSpec[];
}
