/** The audit's first sentence. */
import type { AsSetStake, Suspect } from './model';
import { explanationWords } from './words';

/** What to read first: what is wrong, or that nothing is, and what nothing has proven. */
export function verdictOf(
  suspects: readonly Suspect[],
  stakes: readonly AsSetStake[],
  readings: number,
): string {
  const unproven = stakes.filter((s) => s.proof === 'unproven').length;
  const rest =
    unproven === 0
      ? 'Every stake is controlled by a reading.'
      : `${unproven} of ${stakes.length} stakes ${unproven === 1 ? 'is' : 'are'} not controlled by any reading.`;
  return `${headline(suspects, readings)} ${rest}`;
}

function headline(suspects: readonly Suspect[], readings: number): string {
  const [first] = suspects;
  if (!first) {
    return readings === 1
      ? 'The one reading fits the plan.'
      : `All ${readings} readings fit the plan.`;
  }
  const strong = suspects.filter((s) => s.strong).length;
  if (strong === 0) {
    const more = suspects.length > 1 ? ` ${suspects.length} doubts, this one most.` : '';
    return `No clear slip. ${suspectWords(first)}${more}`;
  }
  const more = strong > 1 ? ` ${strong} things do not fit, this one most.` : '';
  return `${suspectWords(first)}${more}${doubtWords(suspects.length - strong)}`;
}

function doubtWords(doubts: number): string {
  if (doubts === 0) return '';
  return doubts === 1 ? ' There is a doubt beside it.' : ` There are ${doubts} doubts beside it.`;
}

/** One suspect in a sentence or two; a doubt says first that nothing is to be moved for it. */
export function suspectWords(s: Suspect): string {
  return s.strong
    ? findingWords(s)
    : `Only a doubt: measure again before anything is moved. ${findingWords(s)}`;
}

function findingWords(s: Suspect): string {
  const said = explanationWords(s.likeliest);
  const likeliest = `${said[0]!.toUpperCase()}${said.slice(1)}`;
  if (s.sure === 'reading') return `${likeliest}.`;
  const next = s.next
    ? ` Measure ${s.next.stake} from ${s.next.from} to decide.`
    : ' No further reading in reach would decide.';
  if (s.sure === 'stake') {
    return `Stake ${s.likeliest.stake} is off, but the readings do not tell by which of its own readings. Likeliest: ${s.likeliest.words}.${next}`;
  }
  const others = s.rivals.length === 1 ? 'one other way' : `${s.rivals.length} other ways`;
  const start = s.strong ? 'Something is wrong, and these readings' : 'These readings';
  return `${start} cannot tell what: likeliest, ${said}; ${others} to explain it.${next}`;
}
