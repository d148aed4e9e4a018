/** What an audit leaves behind: `as-set.csv`, `outline-as-set.csv`, `audit.json`. */
import { carryAsSet } from '../audit/carry-as-set';
import type { Audit } from '../audit/model';
import type { StakePlan } from '../stakeout/model';
import { writeCsv } from './csv';
import { outlineCsv } from './stake-files';

const AS_SET_COLUMNS =
  'stake,kind,x_ft,y_ft,off_in,toward,semi_major_95_in,semi_minor_95_in,bearing_deg,proof,' +
  'smallest_slip_in,suspect,move';
const GAP_COLUMNS = 'gap_in,step_in,changed,within';

const yes = (value: boolean): string => (value ? 'yes' : 'no');

const MOVE = { no: 'no', now: 'yes', 'once-measured-again': 'measure again' } as const;

const moved = (audit: Audit, move: keyof typeof MOVE): string[] =>
  audit.stakes.filter((s) => s.move === move).map((s) => s.stake);

/** One row per stake in setting order: where it stands by all readings together. */
export function asSetCsv(audit: Audit | null): string {
  return writeCsv(
    AS_SET_COLUMNS.split(','),
    (audit?.stakes ?? []).map((s) => [
      s.stake,
      s.kind,
      s.at.x,
      s.at.y,
      s.offIn,
      s.toward,
      s.semiMajor95In,
      s.semiMinor95In,
      s.bearingDeg,
      s.proof,
      s.smallestSlipIn,
      yes(s.suspect),
      MOVE[s.move],
    ]),
  );
}

/** The rows of `outline.csv` with the radii and offsets that fit the stakes as they stand, and the gaps. */
export function outlineAsSetCsv(plan: StakePlan | null, audit: Audit | null): string {
  const pieces = audit?.outline ?? [];
  const drawn = plan && audit && carryAsSet(plan, audit);
  const [header, ...rows] = outlineCsv(drawn).trimEnd().split('\r\n');
  const lines = rows.map((row, i) => {
    const p = pieces[i]!;
    return `${row},${p.gapIn},${p.stepIn},${yes(p.changed)},${yes(p.within)}`;
  });
  return [`${header},${GAP_COLUMNS}`, ...lines].join('\r\n') + '\r\n';
}

/** What was found, in the names of the tables. */
export function auditJson(audit: Audit): string {
  const body = {
    verdict: audit.verdict,
    readings: audit.readings,
    degrees_of_freedom: audit.degreesOfFreedom,
    chi_square: audit.chiSquare,
    chance: audit.chance,
    family_limit: audit.familyLimit,
    false_alarm_chance: audit.falseAlarmChance,
    tapes: audit.tapes,
    suspects: audit.suspects.map((s) => ({
      sure: s.sure,
      strong: s.strong,
      standardised: s.standardised,
      likeliest: explanationJson(s.likeliest),
      rivals: s.rivals.map(explanationJson),
      next: s.next && {
        stake: s.next.stake,
        from: s.next.from,
        sigmas: s.next.sigmas,
        would_read: s.next.wouldRead.map((w) => ({ text: w.reading.text, if: w.words })),
      },
    })),
    unproven: audit.stakes.filter((s) => s.proof === 'unproven').map((s) => s.stake),
    move: moved(audit, 'now'),
    move_once_measured_again: moved(audit, 'once-measured-again'),
  };
  return `${JSON.stringify(body, null, 2)}\n`;
}

const explanationJson = (e: Audit['suspects'][number]['likeliest']) => ({
  kind: e.kind,
  stake: e.stake,
  reading: e.reading,
  line: e.line,
  too_long_in: e.tooLongIn,
  words: e.words,
});

/** The files of an audit by name. */
export const auditFiles = (plan: StakePlan, audit: Audit): Readonly<Record<string, string>> => ({
  'as-set.csv': asSetCsv(audit),
  'outline-as-set.csv': outlineAsSetCsv(plan, audit),
  'audit.json': auditJson(audit),
});
