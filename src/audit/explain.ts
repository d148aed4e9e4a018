/** Explanations of what does not fit, each with the misfit that it leaves. */
import { adjustNetwork } from '../adjust/adjust-network';
import { freeRows, stepped, type Freed } from '../adjust/free-rows';
import type { Adjustment, NetworkPoint, NetworkReading } from '../adjust/network-model';
import { CRITICAL, DROP_COST } from '../adjust/reliability';
import { feetToInches } from '../base/units';
import { pointDistance, type Point } from '../geometry/point';
import type { StakePlan } from '../stakeout/model';
import { alternatives, type Alternative } from './alternatives';
import type { AuditNetwork, AuditRow } from './audit-network';
import type { Explanation } from './model';
import { howFar, readingWords, settingWords, towardWords } from './words';

/** A network adjusted, with where everything then stands. */
export interface Standing {
  readonly plan: StakePlan;
  readonly net: AuditNetwork;
  readonly adjustment: Adjustment;
  readonly placeOf: (id: string) => Point;
}

/** An explanation with what follows from it. */
export interface Candidate {
  readonly explanation: Explanation;
  /** The network without what is wrong. */
  readonly net: AuditNetwork;
  /** Where things then stand. */
  readonly placeOf: (id: string) => Point;
  /** Keys of the rows taken out or changed. */
  readonly keys: readonly string[];
  /** Key of the one row that is wrong; null when no single one is. */
  readonly blamed: string | null;
}

/** Explanations whose cost is within this of the best cannot be ruled out: a likelihood of 1 in 20. */
export const RIVAL_MARGIN = 2 * Math.log(20);
/**
 * What a definite mix-up is favoured by over an unknown amount that fits as well: it would fit by
 * chance about once in eight. Assumption.
 */
export const DEFINITE = 2 * Math.log(8);
/** Mix-ups whose whole network is adjusted; the rest fit worse beside the stake itself. */
const TRIED = 4;
/** Stakes whose mix-ups are tried. */
const TRIED_STAKES = 6;

/** Adjusts the network from the places it has. */
export function standing(plan: StakePlan, net: AuditNetwork) {
  const result = adjustNetwork(
    net.points,
    net.rows.map((r) => r.reading),
    { tapes: net.tapes, start: 'given' },
  );
  if (!result.ok) return result;
  const adjustment = result.value;
  const at = new Map(net.points.map((p) => [p.id, p.at]));
  for (const p of adjustment.points) at.set(p.id, p.at);
  const value: Standing = { plan, net, adjustment, placeOf: (id) => at.get(id)! };
  return { ok: true as const, value };
}

/** Explanations of the worst misfit, likeliest first. */
export function explain(s: Standing, worst: number): Candidate[] {
  const suspects = suspectRows(s.adjustment, worst);
  const stakes = suspectStakes(s, suspects);
  const found = [
    ...suspects.map((i) => oneReading(s, i)),
    ...stakes.flatMap((id) => movedStake(s, id)),
    ...suspectControls(s, suspects).flatMap((id) => movedControl(s, id)),
    ...mixUps(s, stakes.slice(0, TRIED_STAKES)),
    ...suspects.flatMap((i) => readFromAnother(s, i)),
  ];
  return found.sort((a, b) => a.explanation.cost - b.explanation.cost);
}

/** Rows nearly as far out as the worst: those that explain as much, and those drawn along. */
function suspectRows(a: Adjustment, worst: number): number[] {
  const most = a.readings[worst]!.standardised ** 2;
  return a.readings
    .map((r, i) => ({ i, size: r.standardised ** 2 }))
    .filter(({ i, size }) => i === worst || size > Math.max(DROP_COST, most - 2 * DROP_COST))
    .sort((p, q) => q.size - p.size)
    .map(({ i }) => i);
}

function suspectStakes(s: Standing, suspects: readonly number[]): string[] {
  const known = new Set(s.plan.stakes.map((stake) => stake.id));
  const ids = suspects.flatMap((i) => {
    const { sets, reading } = s.net.rows[i]!;
    return sets === null ? [reading.to, reading.from] : [sets];
  });
  return [...new Set(ids)].filter((id) => known.has(id));
}

const suspectControls = (s: Standing, suspects: readonly number[]): string[] =>
  s.adjustment.priors.filter((id) =>
    suspects.some((i) => {
      const { from, to } = s.net.rows[i]!.reading;
      return from === id || to === id;
    }),
  );

const without = (net: AuditNetwork, keys: readonly string[]): AuditNetwork => ({
  ...net,
  rows: net.rows.filter((r) => !keys.includes(r.key)),
});

const placesAfter = (s: Standing, freed: Freed) => (id: string) =>
  stepped(s.adjustment, id, s.placeOf(id), freed.step);

function oneReading(s: Standing, i: number): Candidate {
  const row = s.net.rows[i]!;
  const freed = freeRows(s.adjustment, [i]);
  const tooLongIn = feetToInches(freed.slips[0]!);
  const { system } = s.plan.spec;
  const measured = row.measured !== null;
  return {
    explanation: {
      kind: measured ? 'reading' : 'tie',
      stake: row.sets,
      reading: { from: row.reading.from, to: row.sets ?? row.reading.to, text: row.text },
      line: null,
      tooLongIn,
      words: measured
        ? readingWords(row, tooLongIn, system)
        : settingWords(row.reading, row.text, tooLongIn, system),
      cost: s.adjustment.chiSquare - freed.drop + DROP_COST,
    },
    net: without(s.net, [row.key]),
    placeOf: placesAfter(s, freed),
    keys: [row.key],
    blamed: row.key,
  };
}

function movedStake(s: Standing, id: string): Candidate[] {
  const own = s.net.rows.flatMap((r, i) => (r.sets === id ? [i] : []));
  if (own.length < 2) return [];
  const freed = freeRows(s.adjustment, own);
  const keys = own.map((i) => s.net.rows[i]!.key);
  const placeOf = placesAfter(s, freed);
  const [was, is] = [s.plan.stakes.find((p) => p.id === id)!.at, placeOf(id)];
  const off = { x: is.x - was.x, y: is.y - was.y };
  const by = howFar(feetToInches(Math.hypot(off.x, off.y)), s.plan.spec.system);
  return [
    {
      explanation: {
        kind: 'moved',
        stake: id,
        reading: null,
        line: null,
        tooLongIn: null,
        words: `it stands ${by} ${towardWords(was, off)} of where both its readings put it`,
        cost: s.adjustment.chiSquare - freed.drop + 2 * DROP_COST,
      },
      net: without(s.net, keys),
      placeOf,
      keys,
      blamed: null,
    },
  ];
}

/** The control's own place is let go: its coordinates are then what the tapes from it say. */
function movedControl(s: Standing, id: string): Candidate[] {
  const at = s.net.rows.length + 2 * s.adjustment.priors.indexOf(id);
  const point = s.net.points.find((p) => p.id === id);
  if (!point?.covariance) return [];
  const freed = freeRows(s.adjustment, [at, at + 1]);
  const placeOf = placesAfter(s, freed);
  const is = placeOf(id);
  const by = howFar(feetToInches(pointDistance(is, point.at)), s.plan.spec.system);
  const points = s.net.points.map((p): NetworkPoint =>
    p.id === id ? { id, at: is, fixed: false } : p,
  );
  return [
    {
      explanation: {
        kind: 'control',
        stake: id,
        reading: null,
        line: null,
        tooLongIn: null,
        words: `the tapes agree with a place ${by} off where the plan has it`,
        cost: s.adjustment.chiSquare - freed.drop + 2 * DROP_COST,
      },
      net: { ...s.net, points },
      placeOf,
      keys: [`control ${id}`],
      blamed: null,
    },
  ];
}

/** Mix-ups of the stakes' settings: the best few beside the stake are tried in the whole network. */
function mixUps(s: Standing, stakes: readonly string[]): Candidate[] {
  const rated = stakes.flatMap((id) => {
    const stake = s.plan.stakes.find((p) => p.id === id)!;
    const rows = s.net.rows.filter((r) => r.sets === id).map((r) => r.reading);
    if (rows.length < 2) return [];
    const planned = misfitAt(s, id, s.placeOf(id)) + misfitOfSetting(s, id);
    return alternatives(s.plan, stake, [rows[0]!, rows[1]!], s.placeOf)
      .map((alternative) => ({ alternative, misfit: misfitAt(s, id, alternative.at) }))
      .filter(({ misfit }) => misfit < planned);
  });
  rated.sort((p, q) => p.misfit - q.misfit);
  return rated.slice(0, TRIED).flatMap(({ alternative }) => tryMixUp(s, alternative));
}

/** Misfit of the readings made to or from a stake, were it at `at`. */
function misfitAt(s: Standing, id: string, at: Point): number {
  let sum = 0;
  for (const { reading, measured } of s.net.rows) {
    if (measured === null || (reading.from !== id && reading.to !== id)) continue;
    const other = s.placeOf(reading.from === id ? reading.to : reading.from);
    sum += ((pointDistance(at, other) - reading.distance) / (LOOSER * reading.sigma)) ** 2;
  }
  return sum;
}

/** The stake and its neighbour err as well as the tape between them. */
const LOOSER = 3;

const misfitOfSetting = (s: Standing, id: string): number =>
  s.net.rows.reduce(
    (sum, r, i) => (r.sets === id ? sum + s.adjustment.readings[i]!.standardised ** 2 : sum),
    0,
  );

function tryMixUp(s: Standing, mixUp: Alternative): Candidate[] {
  const { stake } = mixUp;
  let next = 0;
  const changed = s.net.rows.map((r): AuditRow =>
    r.sets === stake ? { ...r, reading: mixUp.readings[next++]! } : r,
  );
  const points = s.net.points.map((p) => ({ ...p, at: p.id === stake ? mixUp.at : p.at }));
  const net = { ...s.net, points, rows: changed };
  const tried = standing(s.plan, net);
  if (!tried.ok) return [];
  const rows = changed.filter((r) => r.sets === stake);
  const blamed =
    mixUp.blame === null ? null : s.net.rows.find((r) => r.key === rows[mixUp.blame!]!.key)!;
  return [
    {
      explanation: {
        kind: mixUp.kind,
        stake,
        reading: blamed && {
          from: mixUp.meant ?? blamed.reading.from,
          to: stake,
          text: blamed.text,
        },
        line: null,
        tooLongIn: null,
        words: mixUp.words,
        cost: tried.value.adjustment.chiSquare + DROP_COST - DEFINITE,
      },
      net,
      placeOf: tried.value.placeOf,
      keys: rows.map((r) => r.key),
      blamed: blamed?.key ?? null,
    },
  ];
}

/** A reading made on the field that fits when it was made from another control. */
function readFromAnother(s: Standing, i: number): Candidate[] {
  const row = s.net.rows[i]!;
  const { from, to } = row.reading;
  if (row.measured === null) return [];
  const freed = freeRows(s.adjustment, [i]);
  const placeOf = placesAfter(s, freed);
  const ends = [
    { meant: from, stays: to },
    { meant: to, stays: from },
  ].filter(({ meant }) => s.plan.controls.some((c) => c.id === meant));
  return ends.flatMap(({ meant, stays }) =>
    s.plan.controls
      .filter((c) => c.id !== meant && c.id !== stays)
      .filter((c) => {
        const off = pointDistance(placeOf(c.id), placeOf(stays)) - row.reading.distance;
        return Math.abs(off) < CRITICAL * LOOSER * row.reading.sigma;
      })
      .flatMap((c) => tryRead(s, row, meant, c.id)),
  );
}

function tryRead(s: Standing, row: AuditRow, meant: string, instead: string): Candidate[] {
  const ends = { from: row.reading.from, to: row.reading.to };
  const reading: NetworkReading = {
    ...row.reading,
    from: ends.from === meant ? instead : ends.from,
    to: ends.to === meant ? instead : ends.to,
  };
  const net = {
    ...s.net,
    rows: s.net.rows.map((r) => (r.key === row.key ? { ...r, reading } : r)),
  };
  const tried = standing(s.plan, net);
  if (!tried.ok) return [];
  const words = `the reading of ${ends.to} from ${ends.from}, ${row.text}, fits when it was made with ${instead} for ${meant}`;
  return [
    {
      explanation: {
        kind: 'read-from-another',
        stake: null,
        reading: { ...ends, text: row.text },
        line: null,
        tooLongIn: null,
        words,
        cost: tried.value.adjustment.chiSquare + DROP_COST - DEFINITE,
      },
      net,
      placeOf: tried.value.placeOf,
      keys: [row.key],
      blamed: row.key,
    },
  ];
}
