/**
 * The audit: the plan's own ties as pulled and the readings made on the field, adjusted together; what
 * does not fit is named, with what else it may be; where every stake then stands is carried on to the
 * outline.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { pointDistance } from '../geometry/point';
import type { Region } from '../geometry/region';
import type { StakePlan } from '../stakeout/model';
import { asSetOutline } from './as-set-outline';
import { asSetStakes } from './as-set-stakes';
import { auditNetwork } from './audit-network';
import { falseAlarmChanceOf } from './family-limit';
import { findSlips, type Found } from './find-slips';
import type { AsSetPiece, AsSetStake, Audit, MeasuredReading, Suspect } from './model';
import { settingMarks } from './setting-marks';
import { verdictOf } from './verdict';

/**
 * Audits readings against the stakes of a plan; `graphic` is the art on the grass. Problems:
 * `readings-none`, `reading-unknown` (an id that is neither control nor stake), `reading-bad` (not a
 * distance, or from a mark to itself), `readings-do-not-fit`, and those of `adjustNetwork`.
 */
export function auditReadings(
  plan: StakePlan,
  graphic: Region,
  readings: readonly MeasuredReading[],
): Result<Audit> {
  const problems = readingProblems(plan, readings);
  if (problems.length > 0) return fail(...problems);
  const net = auditNetwork(plan, readings);
  const found = findSlips(plan, net, readings);
  if (!found.ok) return found;
  const outline = asSetOutline(plan, graphic, found.value.standing.placeOf);
  const { standing, first, suspects } = found.value;
  const stakes = markMoves(plan, suspects, asSetStakes(standing, first, suspects), outline);
  return succeed(report(found.value, outline, stakes, readings));
}

function report(
  { standing: s, first, suspects, familyLimit }: Found,
  outline: readonly AsSetPiece[],
  stakes: readonly AsSetStake[],
  readings: readonly MeasuredReading[],
): Audit {
  const { adjustment } = s;
  return {
    verdict: verdictOf(suspects, stakes, readings.length),
    suspects,
    stakes,
    outline,
    readings: readings.length,
    degreesOfFreedom: adjustment.degreesOfFreedom,
    chiSquare: adjustment.chiSquare,
    chance: adjustment.chance,
    familyLimit,
    falseAlarmChance: falseAlarmChanceOf(first.adjustment),
    tapes: adjustment.scales.map((t) => ({ tape: t.id, scale: t.scale, sigma: t.sigma })),
  };
}

/**
 * Of the stakes at a piece that cannot be drawn within the tolerance, the one that is farthest off is
 * to be moved; at once, unless only a doubt has it, or what it was set from, stand there.
 */
function markMoves(
  plan: StakePlan,
  suspects: readonly Suspect[],
  stakes: readonly AsSetStake[],
  outline: readonly AsSetPiece[],
): readonly AsSetStake[] {
  const byId = new Map(stakes.map((s) => [s.stake, s]));
  const toMove = new Set(
    outline
      .filter((p) => !p.within)
      .map((p) =>
        pieceStakes(p)
          .map((id) => byId.get(id)!)
          .reduce((worst, s) => (s.offIn > worst.offIn ? s : worst)),
      )
      .filter((s) => s.toward !== '')
      .map((s) => s.stake),
  );
  const blamed = (strong: boolean) =>
    suspects.filter((s) => s.strong === strong).flatMap((s) => s.likeliest.stake ?? []);
  const [found, doubted] = [blamed(true), blamed(false)];
  const moveOf = (id: string): AsSetStake['move'] => {
    if (!toMove.has(id)) return 'no';
    const hangsOn = settingMarks(plan, id);
    const isDoubt = doubted.some((d) => hangsOn.has(d)) && !found.some((f) => hangsOn.has(f));
    return isDoubt ? 'once-measured-again' : 'now';
  };
  return stakes.map((s) => ({ ...s, move: moveOf(s.stake) }));
}

const pieceStakes = ({ piece }: AsSetPiece): string[] =>
  piece.kind === 'circle'
    ? [piece.pin]
    : [piece.from, piece.to, ...(piece.kind === 'swing' ? [piece.pin] : [])];

function readingProblems(plan: StakePlan, readings: readonly MeasuredReading[]): Problem[] {
  if (readings.length === 0) {
    const fix = 'tape some stakes from a third control or from each other';
    return [problem('readings-none', 'the readings', 'there is none', fix)];
  }
  const places = new Map([...plan.controls, ...plan.stakes].map((p) => [p.id, p.at]));
  return readings.flatMap((r) => {
    const where = `line ${r.line}`;
    const out = [r.stake, r.from]
      .filter((id) => !places.has(id))
      .map((id) => unknownMark(id, where));
    if (!(r.ft > 0) || !Number.isFinite(r.ft) || r.stake === r.from || sameSpot(places, r)) {
      const what = 'it is not a distance between two marks';
      out.push(problem('reading-bad', where, what, 'correct the line'));
    }
    return out;
  });
}

/** Problem `reading-unknown`. */
export const unknownMark = (id: string, where: string): Problem =>
  problem(
    'reading-unknown',
    where,
    `there is no stake or control "${id.slice(0, 40)}"`,
    'use the numbers of the stake sheets',
  );

function sameSpot(
  places: ReadonlyMap<string, { readonly x: number; readonly y: number }>,
  r: MeasuredReading,
): boolean {
  const [a, b] = [places.get(r.stake), places.get(r.from)];
  return a !== undefined && b !== undefined && !(pointDistance(a, b) > 0);
}
