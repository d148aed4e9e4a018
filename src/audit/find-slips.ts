/** Finds slips one after the other, each with the explanations that the readings cannot rule out. */
import { fail, problem, succeed, type Result } from '../base/result';
import { CRITICAL } from '../adjust/reliability';
import type { StakePlan } from '../stakeout/model';
import type { AuditNetwork } from './audit-network';
import { explainGross } from './gross-slips';
import { explain, RIVAL_MARGIN, standing, type Candidate, type Standing } from './explain';
import { familyLimitOf } from './family-limit';
import type { Explanation, MeasuredReading, SlipKind, Suspect } from './model';
import { adjustedSigma, nextReading, plannedSigma, type SigmaOf } from './next-reading';

/** More than this and the readings are not of this plan. */
const MOST_SLIPS = 20;
/** Explanations that the next reading is chosen to tell apart. */
const MOST_COMPARED = 6;

export interface Found {
  /** The network with every likeliest explanation taken into account. */
  readonly standing: Standing;
  /** Before any slip of inches was taken into account. */
  readonly first: Standing;
  /** Strong ones first. */
  readonly suspects: readonly Suspect[];
  /** Standardised residual that at most one job in twenty goes beyond without a slip. */
  readonly familyLimit: number;
}

/** Problems: those of `adjustNetwork`; `readings-do-not-fit` after `MOST_SLIPS` slips. */
export function findSlips(
  plan: StakePlan,
  start: AuditNetwork,
  readings: readonly MeasuredReading[],
): Result<Found> {
  let net = start;
  const named: Named[] = [];
  for (let gross = explainGross(plan, net); gross; gross = explainGross(plan, net)) {
    if (named.length >= MOST_SLIPS) return fail(NOTHING_FITS);
    named.push(
      name(plan, net, gross.candidates, readings, {
        size: gross.size,
        strong: true,
        sigmaOf: plannedSigma(plan, gross.candidates[0]!.placeOf),
      }),
    );
    net = settledAt(gross.candidates[0]!);
  }
  for (let first: Standing | null = null; ;) {
    const now = standing(plan, net);
    if (!now.ok) return now;
    first ??= now.value;
    const familyLimit = familyLimitOf(first.adjustment);
    const worst = worstRow(now.value);
    const size = worstSize(now.value);
    if (size <= CRITICAL) {
      return succeed({ ...readmit(now.value, named, start), first, familyLimit });
    }
    if (named.length >= MOST_SLIPS) return fail(NOTHING_FITS);
    const found = explain(now.value, worst);
    const candidates = size > familyLimit ? found : smallErrorsFirst(found);
    named.push(
      name(plan, net, candidates, readings, {
        size,
        strong: size > familyLimit,
        sigmaOf: adjustedSigma(now.value),
      }),
    );
    net = settledAt(candidates[0]!);
  }
}

interface Named {
  readonly suspect: Suspect;
  readonly keys: readonly string[];
}

/** What was taken out early is tried again beside the rest: it may only have been drawn along. */
function readmit(
  last: Standing,
  named: readonly Named[],
  start: AuditNetwork,
): Pick<Found, 'standing' | 'suspects'> {
  let now = last;
  let left = named;
  for (const one of named.length > 1 ? named.filter(({ suspect }) => isTakenOut(suspect)) : []) {
    const back = start.rows.filter((r) => one.keys.includes(r.key));
    const others = now.net.rows.filter((r) => !one.keys.includes(r.key));
    if (back.length === 0) continue;
    const tried = standing(now.plan, { ...now.net, rows: [...others, ...back] });
    if (!tried.ok || worstSize(tried.value) > CRITICAL) continue;
    now = tried.value;
    left = left.filter((n) => n !== one);
  }
  const suspects = left.map((n) => n.suspect).sort((a, b) => b.standardised - a.standardised);
  const strong = suspects.filter((s) => s.strong);
  return { standing: now, suspects: [...strong, ...suspects.filter((s) => !s.strong)] };
}

const isTakenOut = ({ likeliest: { kind } }: Suspect): boolean =>
  kind === 'tie' || kind === 'reading' || kind === 'moved';

const NOTHING_FITS = problem(
  'readings-do-not-fit',
  'the readings',
  `more than ${MOST_SLIPS} of them fit neither the plan nor each other`,
  'check that they belong to this plan, in this unit, and that stake numbers were read right',
);

/** The explanation's network, from where it puts things. */
const settledAt = ({ net, placeOf }: Candidate): AuditNetwork => ({
  ...net,
  points: net.points.map((p) => (p.covariance || p.fixed ? p : { ...p, at: placeOf(p.id) })),
});

function worstRow({ adjustment }: Standing): number {
  let worst = -1;
  adjustment.readings.forEach((r, i) => {
    const most = worst < 0 ? 0 : Math.abs(adjustment.readings[worst]!.standardised);
    if (Math.abs(r.standardised) > most) worst = i;
  });
  return worst;
}

function worstSize(s: Standing): number {
  const worst = worstRow(s);
  return worst < 0 ? 0 : Math.abs(s.adjustment.readings[worst]!.standardised);
}

/** A doubt is laid to an error of its amount before a mix-up that fits as well by chance. */
function smallErrorsFirst(sorted: readonly Candidate[]): Candidate[] {
  const limit = sorted[0]!.explanation.cost + RIVAL_MARGIN;
  const near = sorted.filter((c) => c.explanation.cost <= limit);
  const small = near.filter((c) => isByAmount(c.explanation));
  return [...small, ...sorted.filter((c) => !small.includes(c))];
}

/** The likeliest explanation with those that come near it. */
function name(
  plan: StakePlan,
  net: AuditNetwork,
  candidates: readonly Candidate[],
  readings: readonly MeasuredReading[],
  found: { readonly size: number; readonly strong: boolean; readonly sigmaOf: SigmaOf },
): Named {
  const limit = Math.min(...candidates.map((c) => c.explanation.cost)) + RIVAL_MARGIN;
  const close = candidates
    .filter((c) => c.explanation.cost <= limit)
    .map((c) => withLine(c, net, readings));
  const told = cheapestOfEach(close);
  const [likeliest, ...rivals] = told.map((c) => c.explanation);
  const compared = told.slice(0, MOST_COMPARED);
  return {
    keys: told[0]!.keys,
    suspect: {
      likeliest: likeliest!,
      rivals,
      sure: sureOf(told),
      strong: found.strong,
      standardised: found.size,
      next: rivals.length > 0 ? nextReading(plan, compared, found.sigmaOf) : null,
    },
  };
}

function withLine(
  c: Candidate,
  net: AuditNetwork,
  readings: readonly MeasuredReading[],
): Candidate {
  const row = net.rows.find((r) => r.key === c.keys[0]);
  const line = row && row.measured !== null ? readings[row.measured]!.line : null;
  return { ...c, explanation: { ...c.explanation, line } };
}

/** One slip by another amount is no other explanation; `sorted` by cost. */
function cheapestOfEach(sorted: readonly Candidate[]): Candidate[] {
  const first = new Map<string, Candidate>();
  for (const c of sorted) {
    const slip = slipOf(c);
    if (!first.has(slip)) first.set(slip, c);
  }
  return [...first.values()];
}

/** What was done, whatever its amount; mix-ups have none and are told apart by their words. */
function slipOf(c: Candidate): string {
  const { kind, stake, words } = c.explanation;
  return `${kind} ${stake} ${readingKey(c)} ${isByAmount(c.explanation) ? '' : words}`;
}

const BY_AMOUNT: readonly SlipKind[] = ['tie', 'reading', 'moved', 'control'];
const isByAmount = ({ kind }: Explanation): boolean => BY_AMOUNT.includes(kind);

const readingKey = ({ explanation: e, blamed }: Candidate): string =>
  blamed ?? `${e.kind} ${e.stake}`;

function sureOf([likeliest, ...rivals]: readonly Candidate[]): Suspect['sure'] {
  const wrong = readingKey(likeliest!);
  if (rivals.every((r) => readingKey(r) === wrong)) return 'reading';
  const { stake } = likeliest!.explanation;
  const same = stake !== null && rivals.every((r) => r.explanation.stake === stake);
  return same ? 'stake' : 'neither';
}
