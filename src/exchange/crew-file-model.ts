/** The file that the phone page gives back, as it is written and read. */
import type { StakeKind } from '../stakeout/model';

export const CREW_FORMAT = 'swathscribe-crew';
export const CREW_VERSION = 1;

export interface CrewFileStake {
  readonly stake: string;
  readonly kind: StakeKind;
  readonly round: number;
  /** ISO 8601, or null when the stake was not ticked. */
  readonly set_at: string | null;
  /** Null when it cannot be told: the first after a break, or a gap of more than ten minutes. */
  readonly seconds: number | null;
  readonly check_from: string;
  readonly check_ft: number | null;
  /** As the tape shows it; empty without a check. */
  readonly check_text: string;
  readonly note: string;
}

export interface CrewFileRound {
  readonly round: number;
  readonly started_at: string | null;
  /** From the last stake of the round before to the tapes held at this one's controls. */
  readonly move_seconds: number | null;
}

export interface CrewFile {
  readonly format: typeof CREW_FORMAT;
  readonly version: typeof CREW_VERSION;
  /** First eight digits of the plan's fingerprint. */
  readonly plan: string;
  readonly job: string;
  readonly saved_at: string;
  readonly rounds: readonly CrewFileRound[];
  readonly stakes: readonly CrewFileStake[];
}
