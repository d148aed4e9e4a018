/** The audit as lines of plain words, the verdict first. */
import { CRITICAL } from '../adjust/reliability';
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
    ...rivalLines(s).map((line) => `   ${line}`),
    ...(s.next ? nextLines(s.next) : []),
  ];
}

/** Other explanations that are told; the rest are counted. */
const MOST_TOLD = 5;

/** The other explanations of a suspect, a line each. */
export function rivalLines({ rivals }: Suspect): string[] {
  const told = rivals.slice(0, MOST_TOLD).map((r) => `or: ${explanationWords(r)}`);
  const rest = rivals.length - told.length;
  return rest === 0 ? told : [...told, `or one of ${rest} less likely`];
}

const nextLines = (next: NonNullable<Suspect['next']>): string[] => [
  `   Measure ${next.stake} from ${next.from}:`,
  ...next.wouldRead.map((w) => `   ${w.reading.text} if ${w.words}`),
];

function moveLines(stakes: readonly AsSetStake[], system: LengthSystem): string[] {
  const told = (move: AsSetStake['move'], head: string): string[] => {
    const list = stakes.filter((s) => s.move === move);
    if (list.length === 0) return [];
    const lines = list.map((s) => `   ${s.stake}, ${formatLimit(s.offIn, system)} ${s.toward}`);
    return ['', head, ...lines];
  };
  return [
    ...told('now', 'Pull and set again:'),
    ...told('once-measured-again', 'Measure again; if it is so, pull and set again:'),
  ];
}

function unprovenLines(stakes: readonly AsSetStake[]): string[] {
  const unproven = stakes.filter((s) => s.proof === 'unproven').map((s) => s.stake);
  return unproven.length === 0 ? [] : ['', `No reading controls: ${unproven.join(', ')}`];
}

function certaintyLine(audit: Audit): string {
  const readings = audit.readings === 1 ? '1 reading.' : `${audit.readings} readings.`;
  const { falseAlarmChance: chance, familyLimit } = audit;
  if (chance === 0) return `${readings} None of them controls another.`;
  const doubts =
    chance > 0.5
      ? `${readings} With no slip at all a job of this size may well raise an alarm`
      : `${readings} With no slip at all, at most one job in ${Math.floor(1 / chance)} of this size raises an alarm`;
  return familyLimit > CRITICAL
    ? `${doubts}, and at most one in 20 one beyond ${familyLimit.toFixed(2)} sigma, where a doubt becomes a finding.`
    : `${doubts}.`;
}
