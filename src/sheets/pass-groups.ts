/** Passes as they are handed to a driver: one machine and phase at a time, in driving order. */
import { formatFeetInches, formatMetres, type LengthSystem } from '../base/quantity';
import { feetToMetres } from '../base/units';
import { pointDistance, pointSubtract } from '../geometry/point';
import { polylineLength } from '../geometry/polyline';
import { bearingDifference, vectorBearing } from '../geometry/angle';
import type { Leg, Machine, Pass, PassPlan, Phase } from '../mowing/model';

export interface PassGroup {
  readonly machine: Machine;
  readonly phase: Phase;
  readonly passes: readonly Pass[];
  /** Legs of the group in driving order, turns and empty runs included. */
  readonly legs: readonly Leg[];
  /** Whether the count of stakes comes before it. */
  readonly afterHold: boolean;
  readonly thenText: ReadonlyMap<number, string>;
  /** Passes after which the machine backs up. */
  readonly backs: ReadonlySet<number>;
}

export const PHASE_WORDS: Readonly<Record<Phase, string>> = {
  erase: 'rubbing out the old pattern',
  background: 'background',
  graphic: 'graphic',
  edge: 'edge of the graphic',
  border: 'borders and clean-up laps',
  carry: 'carrying',
};

/** Turn of the phases after the count: the order of work, whichever machine is free first. */
const AFTER_COUNT: readonly Phase[] = ['graphic', 'edge', 'border'];

/** Groups before the count in driving order, those after it in the order of work. */
export function groupPasses(plan: PassPlan, system: LengthSystem): PassGroup[] {
  const turn = (group: PassGroup) => (group.afterHold ? AFTER_COUNT.indexOf(group.phase) + 1 : 0);
  return drivenGroups(plan, system)
    .map((group, index) => ({ group, index }))
    .sort((a, b) => turn(a.group) - turn(b.group) || a.index - b.index)
    .map(({ group }) => group);
}

function drivenGroups(plan: PassPlan, system: LengthSystem): PassGroup[] {
  const legs = [...plan.legs].sort((a, b) => a.startS - b.startS || a.seq - b.seq);
  const hold = legs.find((leg) => leg.kind === 'hold');
  const keys = [...new Set(legs.filter((leg) => leg.kind === 'mow').map(keyOf))];
  return keys.flatMap((key) => {
    const own = legs.filter((leg) => keyOf(leg) === key);
    const machine = plan.machines.find((m) => m.id === own[0]!.machine);
    const passes = plan.passes.filter((pass) => keyOf(pass) === key);
    if (!machine || passes.length === 0) return [];
    const { phase } = own[0]!;
    const afterHold = hold !== undefined && own[0]!.startS >= hold.startS;
    const all = legs.filter((leg) => leg.machine === machine.id);
    const thenText = thenTexts(all, system);
    return [{ machine, phase, passes, legs: own, afterHold, thenText, backs: backsAfter(all) }];
  });
}

const keyOf = (of: { readonly machine: string; readonly phase: Phase }): string =>
  `${of.machine} ${of.phase}`;

/** After the last pass before the count: the next pass waits for the signature. */
const LEAVE = 'off grass, hold';

/** An empty run, in whole feet or metres. */
const drivenLength = (ft: number, system: LengthSystem): string =>
  system === 'metric' ? formatMetres(ft, 0) : wholeLength(ft, system);

/** By pass number: what the driver does after it. */
function thenTexts(legs: readonly Leg[], system: LengthSystem): Map<number, string> {
  const texts = new Map<number, string>();
  let pass: number | null = null;
  let emptyFt = 0;
  let held = false;
  for (const leg of legs) {
    if (leg.kind === 'run') emptyFt += polylineLength(leg.points);
    if (leg.kind === 'hold') held = true;
    if (leg.kind !== 'mow' || leg.pass === null) continue;
    if (pass !== null && pass !== leg.pass) {
      const far = emptyFt > 0 ? `empty ${drivenLength(emptyFt, system)} to` : 'turn to';
      texts.set(pass, held ? LEAVE : `${far} ${leg.pass}`);
    }
    pass = leg.pass;
    emptyFt = 0;
    held = false;
  }
  if (pass !== null) texts.set(pass, 'done');
  return texts;
}

function backsAfter(legs: readonly Leg[]): Set<number> {
  const backs = new Set<number>();
  let pass: number | null = null;
  for (const leg of legs) {
    if (leg.kind === 'mow') pass = leg.pass;
    else if (leg.gear === 'reverse' && pass !== null) backs.add(pass);
  }
  return backs;
}

/** A length to the whole foot or metre (short ones to the decimetre): for driving, not for setting out. */
export function wholeLength(ft: number, system: LengthSystem): string {
  if (system === 'metric') return formatMetres(ft, feetToMetres(ft) < 10 ? 1 : 0);
  return formatFeetInches(Math.round(ft), 1).replace(/ 0"$/, '');
}

/** A pass whose ends are nearer than this share of its length follows a curve. */
const CURVED = 0.85;

export interface LayWord {
  readonly word: 'away' | 'toward' | 'left' | 'right' | 'along';
  /** Degrees clockwise from straight away from home; null along a curve. */
  readonly bearingDeg: number | null;
}

/** Which way the pass is driven, as seen from home plate. */
export function layWord(pass: Pass): LayWord {
  const from = pass.line[0];
  const to = pass.line[pass.line.length - 1];
  if (!from || !to || pointDistance(from, to) < CURVED * pass.lengthFt)
    return { word: 'along', bearingDeg: null };
  const bearingDeg = vectorBearing(pointSubtract(to, from));
  if (bearingDifference(bearingDeg, 0) <= 60) return { word: 'away', bearingDeg };
  if (bearingDifference(bearingDeg, 180) <= 60) return { word: 'toward', bearingDeg };
  return { word: bearingDeg < 180 ? 'right' : 'left', bearingDeg };
}
