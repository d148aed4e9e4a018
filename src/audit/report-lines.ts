/** The audit as lines of plain words, the verdict first. */
import { formatLimit, type LengthSystem } from '../base/quantity';
import type { AsSetStake, Audit, Suspect } from './model';
import { suspectWords } from './verdict';
import { explanationWords } from './words';

/** What to print or show: verdict, each suspect, what to move, what is unproven, how sure it all is. */
export function auditLines(audit: Audit, system: LengthSystem): string[] {
  return [
    audit.verdict,
    ...audit.suspects.flatMap((s, i) => ['', ...suspectLines(s, i + 1)]),
    ...moveLines(audit.stakes, system),
    ...unprovenLines(audit.stakes),
    '',
    certaintyLine(audit),
  ];
}

function suspectLines(s: Suspect, number: number): string[] {
  const line = s.likeliest.line === null ? '' : ` (line ${s.likeliest.line})`;
  return [
    `${number}. ${suspectWords(s)}${line}`,
    ...s.rivals.map((r) => `   or: ${explanationWords(r)}`),
    ...(s.next ? nextLines(s.next) : []),
  ];
}

const nextLines = (next: NonNullable<Suspect['next']>): string[] => [
  `   Measure ${next.stake} from ${next.from}:`,
  ...next.wouldRead.map((w) => `   ${w.reading.text} if ${w.words}`),
];

function moveLines(stakes: readonly AsSetStake[], system: LengthSystem): string[] {
  const toMove = stakes.filter((s) => s.move);
  if (toMove.length === 0) return [];
  return [
    '',
    'Pull and set again:',
    ...toMove.map((s) => `   ${s.stake}, ${formatLimit(s.offIn, system)} ${s.toward}`),
  ];
}

function unprovenLines(stakes: readonly AsSetStake[]): string[] {
  const unproven = stakes.filter((s) => s.proof === 'unproven').map((s) => s.stake);
  return unproven.length === 0 ? [] : ['', `No reading controls: ${unproven.join(', ')}`];
}

const certaintyLine = (audit: Audit): string =>
  `${audit.readings} readings. With no slip at all, one job in ${Math.max(1, Math.round(1 / audit.falseAlarmChance))} of this size raises a doubt; ` +
  `one in 20 goes beyond ${audit.familyLimit.toFixed(2)} sigma.`;
