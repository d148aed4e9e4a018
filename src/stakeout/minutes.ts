/**
 * What each step of the set-out costs the crew, person-minutes. The outline's pieces and the ways of
 * setting a stake are chosen by these. The plan fills them from its labour rates (`crew-minutes.ts`).
 */

/** Person-minutes; a stake's figures hold its share of sorting before and pulling after. */
export interface CrewMinutes {
  /** A stake set by two tapes, checked. */
  readonly ties: number;
  /** A stake set on the line through two controls, checked. */
  readonly line: number;
  /** A stake set with a short tape from two places near it, checked. */
  readonly short: number;
  /** One string more: tied off at both ends, and pulled up again. */
  readonly stringEach: number;
  readonly stringPerFt: number;
  /** One swing more, its stakes and pin left out. */
  readonly swing: number;
  /** One bend more, its stakes left out. */
  readonly bend: number;
  /** Both tapes moved to another pair of controls. */
  readonly moveTapes: number;
}

/** The rates of the catalogue with a tape crew of three and one pair for the lines. */
export const DEFAULT_MINUTES: CrewMinutes = {
  ties: 4.85,
  line: 4.85,
  short: 2.65,
  stringEach: 1.9,
  stringPerFt: 0.1,
  swing: 3.4,
  bend: 2.4,
  moveTapes: 6,
};
