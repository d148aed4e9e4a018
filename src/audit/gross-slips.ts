/**
 * Slips of feet rather than inches. Equations made straight about the plan do not hold for them, so each
 * explanation is worked out from the start: every stake is placed again from its readings in setting
 * order, and counted against the readings made on the field.
 */
import { DROP_COST } from '../adjust/reliability';
import type { NetworkReading } from '../adjust/network-model';
import { feetToInches, inches } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import type { Stake, StakePlan } from '../stakeout/model';
import { alternatives } from './alternatives';
import type { AuditNetwork, AuditRow } from './audit-network';
import { DEFINITE, type Candidate } from './explain';
import type { Explanation } from './model';
import { placeSetting, type PlaceOf, type SettingPair } from './place-setting';
import { settingMarks } from './setting-marks';
import { readingWords, settingWords } from './words';

/** A reading is grossly off beyond both. */
const GROSS_FT = 1.5;
const GROSS_SIGMAS = 8;
/** Steps of Newton's method for a tape's slip. */
const NEWTON_STEPS = 12;
/** A tape is not read wrong by more than lies between any two marks of a job's part of the field. */
const LONGEST_SLIP_FT = 250;

interface Misfit {
  readonly row: AuditRow;
  readonly off: number;
  readonly sigma: number;
}

type Changes = ReadonlyMap<string, { readonly pair: SettingPair; readonly at: Point }>;

/** Places every stake in setting order; `changes` are stakes set otherwise than the network says. */
function placeAll(plan: StakePlan, net: AuditNetwork, changes: Changes): Map<string, Point> {
  const at = new Map<string, Point>(net.points.map((p) => [p.id, p.at]));
  const pairs = settingPairs(net);
  for (const stake of plan.stakes) {
    const change = changes.get(stake.id);
    const pair = change?.pair ?? pairs.get(stake.id);
    if (!pair) continue;
    const near = change?.at ?? at.get(stake.id)!;
    const place = placeSetting(pair, (id) => at.get(id)!, near);
    if (place) at.set(stake.id, place);
  }
  return at;
}

function settingPairs(net: AuditNetwork): Map<string, SettingPair> {
  const rows = new Map<string, NetworkReading[]>();
  for (const { sets, reading } of net.rows) {
    if (sets !== null) rows.set(sets, [...(rows.get(sets) ?? []), reading]);
  }
  return new Map(
    [...rows].flatMap(([id, [a, b]]): [string, SettingPair][] => (a && b ? [[id, [a, b]]] : [])),
  );
}

/** How far each reading made on the field is from where things were placed. */
function misfits(plan: StakePlan, net: AuditNetwork, at: ReadonlyMap<string, Point>): Misfit[] {
  const spread = new Map(
    [...plan.controls, ...plan.stakes].map((p) => [p.id, p.covariance.xx + p.covariance.yy]),
  );
  return net.rows.flatMap((row) => {
    if (row.measured === null) return [];
    const { from, to, distance, sigma } = row.reading;
    const places = inches(Math.sqrt(spread.get(from)! + spread.get(to)!));
    const off = pointDistance(at.get(from)!, at.get(to)!) - distance;
    return [{ row, off, sigma: Math.hypot(sigma, places) }];
  });
}

/** Misfit with none counting for more than a reading that is given up. */
const costOf = (list: readonly Misfit[]): number =>
  list.reduce((sum, m) => sum + Math.min((m.off / m.sigma) ** 2, DROP_COST), 0);

const isGross = (m: Misfit): boolean =>
  Math.abs(m.off) > Math.max(GROSS_FT, GROSS_SIGMAS * m.sigma);

export interface Gross {
  /** Likeliest first. */
  readonly candidates: readonly Candidate[];
  /** The worst reading's misfit in its sigmas. */
  readonly size: number;
}

/** Explanations of what is grossly off; null when nothing is. */
export function explainGross(plan: StakePlan, net: AuditNetwork): Gross | null {
  const at = placeAll(plan, net, new Map());
  const now = misfits(plan, net, at);
  const gross = now.filter(isGross);
  if (gross.length === 0) return null;
  const worst = gross.reduce((a, b) =>
    Math.abs(b.off / b.sigma) > Math.abs(a.off / a.sigma) ? b : a,
  );
  const placeOf: PlaceOf = (id) => at.get(id)!;
  const stakes = ancestry(plan, [worst.row.reading.from, worst.row.reading.to]);
  const job = { plan, net, placeOf, gross };
  const candidates = [
    wrongReading(job, worst, costOf(now)),
    ...stakes.flatMap((stake) => mixUps(job, stake)),
    ...stakes.flatMap((stake) => longTapes(job, stake)),
  ].sort((a, b) => a.explanation.cost - b.explanation.cost);
  return { candidates, size: Math.abs(worst.off / worst.sigma) };
}

interface Job {
  readonly plan: StakePlan;
  readonly net: AuditNetwork;
  readonly placeOf: PlaceOf;
  readonly gross: readonly Misfit[];
}

/** The stakes themselves and every stake that they were set from. */
function ancestry(plan: StakePlan, ids: readonly string[]): Stake[] {
  const marks = new Set(ids.flatMap((id) => [...settingMarks(plan, id)]));
  return plan.stakes.filter((s) => marks.has(s.id));
}

const moved = (net: AuditNetwork, at: ReadonlyMap<string, Point>): AuditNetwork => ({
  ...net,
  points: net.points.map((p) => (p.covariance || p.fixed ? p : { ...p, at: at.get(p.id)! })),
});

function wrongReading(job: Job, worst: Misfit, cost: number): Candidate {
  const { row } = worst;
  const tooLongIn = -feetToInches(worst.off);
  return {
    explanation: {
      kind: 'reading',
      stake: null,
      reading: { from: row.reading.from, to: row.reading.to, text: row.text },
      line: null,
      tooLongIn,
      words: readingWords(row, tooLongIn, job.plan.spec.system),
      cost,
    },
    net: { ...job.net, rows: job.net.rows.filter((r) => r !== row) },
    placeOf: job.placeOf,
    keys: [row.key],
    blamed: row.key,
  };
}

/** The network with a stake set otherwise, and what that leaves; null when it cannot be set so. */
function setOtherwise(job: Job, stake: string, pair: SettingPair, at: Point) {
  const places = placeAll(job.plan, job.net, new Map([[stake, { pair, at }]]));
  let next = 0;
  const rows = job.net.rows.map((r) => (r.sets === stake ? { ...r, reading: pair[next++]! } : r));
  const net = { ...job.net, rows };
  return {
    net: moved(net, places),
    placeOf: (id: string) => places.get(id)!,
    cost: costOf(misfits(job.plan, net, places)) + DROP_COST,
  };
}

function mixUps(job: Job, stake: Stake): Candidate[] {
  const rows = job.net.rows.filter((r) => r.sets === stake.id);
  if (rows.length < 2) return [];
  const pair: SettingPair = [rows[0]!.reading, rows[1]!.reading];
  return alternatives(job.plan, stake, pair, job.placeOf).map((a) => {
    const { net, placeOf, cost } = setOtherwise(job, stake.id, a.readings, a.at);
    const blamed = a.blame === null ? null : rows[a.blame]!;
    const explanation: Explanation = {
      kind: a.kind,
      stake: stake.id,
      reading: blamed && {
        from: a.meant ?? blamed.reading.from,
        to: stake.id,
        text: blamed.text,
      },
      line: null,
      tooLongIn: null,
      words: a.words,
      cost: cost - DEFINITE,
    };
    const keys = rows.map((r) => r.key);
    return { explanation, net, placeOf, keys, blamed: blamed?.key ?? null };
  });
}

/** One reading of the setting wrong by what a grossly wrong reading to the stake asks for. */
function longTapes(job: Job, stake: Stake): Candidate[] {
  const rows = job.net.rows.filter((r) => r.sets === stake.id);
  if (rows.length < 2) return [];
  const pair: SettingPair = [rows[0]!.reading, rows[1]!.reading];
  const near = job.gross.filter(({ row }) => touches(row, stake.id));
  return ([0, 1] as const).flatMap((which) =>
    near.flatMap((m) => {
      const found = solveSlip(job, stake, pair, which, m);
      return found ? [longTape(job, stake, rows, which, found)] : [];
    }),
  );
}

const touches = ({ reading }: AuditRow, id: string): boolean =>
  reading.from === id || reading.to === id;

const withDistance = (pair: SettingPair, which: 0 | 1, distance: number): SettingPair =>
  which === 0 ? [{ ...pair[0], distance }, pair[1]] : [pair[0], { ...pair[1], distance }];

/** The reading that puts the stake where the field's reading has it, by Newton's method. */
function solveSlip(job: Job, stake: Stake, pair: SettingPair, which: 0 | 1, m: Misfit) {
  const { from, to, distance } = m.row.reading;
  const other = job.placeOf(from === stake.id ? to : from);
  const planned = pair[which].distance;
  const offAt = (d: number): number | null => {
    const p = placeSetting(withDistance(pair, which, d), job.placeOf, job.placeOf(stake.id));
    return p && pointDistance(p, other) - distance;
  };
  let d = planned;
  for (let i = 0; i < NEWTON_STEPS; i++) {
    const step = newtonStep(offAt, d);
    if (step === null) return null;
    d -= step;
  }
  const off = offAt(d);
  if (off === null || Math.abs(off) > m.sigma || Math.abs(d - planned) > LONGEST_SLIP_FT)
    return null;
  return { pair: withDistance(pair, which, d), by: d - planned };
}

const NUDGE_FT = 0.01;

function newtonStep(offAt: (d: number) => number | null, d: number): number | null {
  const [off, next] = [offAt(d), offAt(d + NUDGE_FT)];
  if (off === null || next === null) return null;
  const slope = (next - off) / NUDGE_FT;
  return Math.abs(slope) > NUDGE_FT ? off / slope : null;
}

function longTape(
  job: Job,
  stake: Stake,
  rows: readonly AuditRow[],
  which: 0 | 1,
  found: { readonly pair: SettingPair; readonly by: number },
): Candidate {
  const row = rows[which]!;
  const { net, placeOf, cost } = setOtherwise(job, stake.id, found.pair, job.placeOf(stake.id));
  const tooLongIn = -feetToInches(found.by);
  return {
    explanation: {
      kind: 'tie',
      stake: stake.id,
      reading: { from: row.reading.from, to: stake.id, text: row.text },
      line: null,
      tooLongIn,
      words: settingWords(row.reading, row.text, tooLongIn, job.plan.spec.system),
      cost,
    },
    net: { ...net, rows: net.rows.filter((r) => r.key !== row.key) },
    placeOf,
    keys: [row.key],
    blamed: row.key,
  };
}
