/** The plan's own ties, as pulled, and the readings made on the field as one network. Feet. */
import type { NetworkPoint, NetworkReading, TapeScale } from '../adjust/network-model';
import { halvingSigmaIn } from '../adjust/offset-point';
import { sightingSigmaIn, tapeSigmaIn } from '../adjust/precise-point';
import { degrees, inches, type Feet } from '../base/units';
import type { Control } from '../field/model';
import type { SetMethod, Stake, StakePlan, Tie } from '../stakeout/model';
import { SQUARE_SIGMA_DEG } from '../stakeout/short-methods';
import { checkTape, tapesAtHand, type HeldTape } from '../stakeout/tapes';
import type { MeasuredReading } from './model';

/** One reading of the network and where it comes from. */
export interface AuditRow {
  /** `set 12 1`, `set 12 2` for a stake's setting; `read 3` for the third reading made on the field. */
  readonly key: string;
  readonly reading: NetworkReading;
  /** The stake that it set; null for a reading made on the field. */
  readonly sets: string | null;
  /** Place in the list of readings made on the field; null for a setting. */
  readonly measured: number | null;
  /** As printed or written. */
  readonly text: string;
}

export interface AuditNetwork {
  readonly points: readonly NetworkPoint[];
  readonly rows: readonly AuditRow[];
  readonly tapes: readonly TapeScale[];
}

/** Every stake with the two readings that set it, every reading made on the field, every control. */
export function auditNetwork(plan: StakePlan, measured: readonly MeasuredReading[]): AuditNetwork {
  const at = new Map([...plan.controls, ...plan.stakes].map((p) => [p.id, p.at]));
  return {
    points: [
      ...plan.controls.filter((c) => c.kind === 'fixed').map(controlPoint),
      ...plan.stakes.map((s): NetworkPoint => ({ id: s.id, at: s.at, fixed: false })),
    ],
    rows: [
      ...plan.stakes.flatMap((s) => settingRows(s, plan, (id) => at.get(id)!)),
      ...measured.map((m, i) => measuredRow(m, i, plan)),
    ],
    tapes: tapesAtHand(plan.spec).flatMap((t): TapeScale[] =>
      t.scaleSigma ? [{ id: tapeId(t), sigma: t.scaleSigma }] : [],
    ),
  };
}

/** A control without any error of its own is held. */
function controlPoint(c: Control): NetworkPoint {
  const { xx, xy, yy } = c.covariance;
  const held = !(xx > 0) && !(yy > 0);
  const covariance = { xx: xx / 144, xy: xy / 144, yy: yy / 144 };
  return { id: c.id, at: c.at, fixed: held, ...(held ? {} : { covariance }) };
}

const tapeId = (t: HeldTape): string => `tape ${t.held ?? 1}`;

/** The tape's error over `ft` feet, and the scale that it shares with its other pulls. */
function pulled(tape: HeldTape, ft: Feet): { readonly sigma: Feet; readonly tape?: string } {
  const sigma = inches(tapeSigmaIn(tape, Math.abs(ft)));
  return tape.scaleSigma ? { sigma, tape: tapeId(tape) } : { sigma };
}

const tieTape = (plan: StakePlan, tie: Pick<Tie, 'tape'>): HeldTape =>
  tapesAtHand(plan.spec)[(tie.tape ?? 1) - 1]!;

function measuredRow(m: MeasuredReading, index: number, plan: StakePlan): AuditRow {
  return {
    key: `read ${index}`,
    reading: { from: m.from, to: m.stake, distance: m.ft, ...pulled(checkTape(plan.spec), m.ft) },
    sets: null,
    measured: index,
    text: m.text,
  };
}

type PlaceOf = (id: string) => { readonly x: number; readonly y: number };

/** The readings that set a stake, two of them. */
export function settingRows(stake: Stake, plan: StakePlan, placeOf: PlaceOf): AuditRow[] {
  const rows = settingReadings(stake.id, stake.set, plan, placeOf);
  return rows.map(([reading, text], i) => ({
    key: `set ${stake.id} ${i + 1}`,
    reading,
    sets: stake.id,
    measured: null,
    text,
  }));
}

type Said = readonly [NetworkReading, string];

function settingReadings(id: string, set: SetMethod, plan: StakePlan, placeOf: PlaceOf): Said[] {
  switch (set.method) {
    case 'ties':
      return [set.tie1, set.tie2].map((tie) => tieReading(id, tie, plan));
    case 'line':
      return lineReadings(id, set, plan);
    case 'offset':
      return offsetReadings(id, set, plan);
    case 'chord':
      return chordReadings(id, set, plan, placeOf);
  }
}

function tieReading(id: string, tie: Tie, plan: StakePlan): Said {
  const { ft, text } = tie.reading;
  return [{ from: tie.from, to: id, distance: ft, ...pulled(tieTape(plan, tie), ft) }, text];
}

function lineReadings(
  point: string,
  set: Extract<SetMethod, { method: 'line' }>,
  plan: StakePlan,
): Said[] {
  const { ft, text } = set.tie1.reading;
  const line = { point, from: set.tie1.from, to: set.lineTo };
  const along = set.side === 'T' ? ft : -ft;
  const sigma = inches(sightingSigmaIn(ft));
  return [
    [{ kind: 'along', ...line, distance: along, ...pulled(tieTape(plan, set.tie1), ft) }, text],
    [{ kind: 'across', ...line, distance: 0, sigma }, `in line from ${line.from} to ${line.to}`],
  ];
}

function offsetReadings(
  point: string,
  set: Extract<SetMethod, { method: 'offset' }>,
  plan: StakePlan,
): Said[] {
  const { ft, text } = set.tie1.reading;
  const line = { point, from: set.tie1.from, to: set.lineTo };
  const pull = pulled(tieTape(plan, set.tie1), ft);
  const sigma = Math.hypot(pull.sigma, set.offset.ft * squareSigma(plan));
  return [
    [{ kind: 'along', ...line, distance: ft, ...pull, sigma }, text],
    offsetRow(line, set.offset, set.side, tieTape(plan, set.tie1)),
  ];
}

function chordReadings(
  point: string,
  set: Extract<SetMethod, { method: 'chord' }>,
  plan: StakePlan,
  placeOf: PlaceOf,
): Said[] {
  const line = { point, from: set.chordFrom, to: set.lineTo };
  const tape = tieTape(plan, {});
  const [a, b] = [placeOf(line.from), placeOf(line.to)];
  const halving = inches(halvingSigmaIn(tape, Math.hypot(b.x - a.x, b.y - a.y)));
  const sigma = Math.hypot(halving, set.offset.ft * squareSigma(plan));
  return [
    [{ kind: 'middle', ...line, distance: 0, sigma }, `the middle of ${line.from} to ${line.to}`],
    offsetRow(line, set.offset, set.side, tape),
  ];
}

function offsetRow(
  line: { readonly point: string; readonly from: string; readonly to: string },
  offset: Tie['reading'],
  side: 'L' | 'R',
  tape: HeldTape,
): Said {
  const distance = side === 'L' ? offset.ft : -offset.ft;
  return [{ kind: 'across', ...line, distance, ...pulled(tape, offset.ft) }, offset.text];
}

const squareSigma = (plan: StakePlan): number =>
  degrees(SQUARE_SIGMA_DEG[plan.spec.square ?? 'square']);
