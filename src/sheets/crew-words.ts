/** Who stands where while stakes are set, by the size of the crew. */
import type { Round, StakeoutSpec } from '../stakeout/model';

type Crew = StakeoutSpec['crew'];

export interface CrewPlace {
  readonly who: string;
  readonly text: string;
}

/** Everyone's place, in words. */
export const crewPlaces = (crew: Crew): readonly CrewPlace[] => PLACES[crew];

const MARKER =
  'takes both tapes, crosses them at the readings, and drives. Reads the row aloud; the holders say the readings back.';
const PLACES: Readonly<Record<Crew, readonly CrewPlace[]>> = {
  2: [
    {
      who: 'Both',
      text: 'hold the zeros at the two controls of the round, and that of the check tape at its control, with an awl or a weight each. One looks back along each tape before it is read: straight, and still at its dot.',
    },
    { who: 'A', text: 'brings the two tapes together at the readings, tight and level.' },
    { who: 'B', text: 'drives the stake, takes the check and ticks the row.' },
  ],
  3: [
    { who: 'A', text: 'holds the first zero at the first control of the round.' },
    { who: 'B', text: 'holds the second zero at the second control.' },
    {
      who: 'C',
      text: `${MARKER} Takes the check with the third tape, its zero held at its control by an awl or a weight, and ticks the row.`,
    },
  ],
  4: [
    { who: 'A', text: 'holds the first zero at the first control of the round.' },
    { who: 'B', text: 'holds the second zero at the second control.' },
    { who: 'C', text: MARKER },
    {
      who: 'D',
      text: 'follows C with the third tape, its zero held at its control by an awl or a weight: takes the check and ticks the row.',
    },
  ],
};

/** A round of short tapes takes two people, whatever the crew. */
const SHORT_PLACES: Readonly<Record<Crew, string>> = {
  2: 'A holds the tape along the line, B measures the offset, drives and checks.',
  3: 'A holds the tape along the line, C measures the offset, drives and checks; B is free.',
  4: 'A holds the tape along the line, C measures the offset, drives and checks; B and D are free.',
};

/** `A at 2B, B at K3, C sets, D checks.`; nobody stands at a control in a round of short tapes. */
export function placesInRound(round: Round, crew: Crew): string {
  if (round.from === null) return SHORT_PLACES[crew];
  const [a, b] = round.from;
  if (crew === 2)
    return `Zeros held at ${a} and ${b} by an awl or a weight; A crosses, B drives and checks.`;
  const rest = crew === 3 ? 'C sets and checks.' : 'C sets, D checks.';
  return `A at ${a}, B at ${b}, ${rest}`;
}
