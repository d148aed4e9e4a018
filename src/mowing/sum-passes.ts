/** Lengths, times and shares of a driven route. */
import type { Feet } from '../base/units';
import { polylineLength } from '../geometry/polyline';
import type { Design } from '../design/model';
import { disturbedShare } from './disturbed-share';
import type { LayMap } from './lay-map';
import { cutFt, swathFt } from './machines';
import type { Leg, Machine, Pass, PassPlan, Phase } from './model';
import { reachedEfficiency } from './mowing-time';
import { overLayFt } from './over-lay';
import type { SwathLayout } from './swath-model';

interface Given {
  readonly design: Design;
  readonly machines: readonly Machine[];
}

/** The plan of driven legs with its sums; shares of the graphic come from the layout. */
export function sumPasses(
  given: Given,
  layout: SwathLayout,
  passes: readonly Pass[],
  legs: readonly Leg[],
  lays: LayMap,
): PassPlan {
  const used = given.machines.filter((m) => passes.some((p) => p.machine === m.id));
  return {
    machines: used,
    passes,
    legs,
    mowFt: lengthOf(legs, 'mow'),
    turnFt: lengthOf(legs, 'turn'),
    runFt: lengthOf(legs, 'run'),
    overLayFt: overLayFt(lays, passes, legs),
    graphicCovered: layout.graphicCovered,
    uncovered: layout.uncovered,
    laidOutside: layout.laidOutside,
    totals: used.flatMap((m) => totalsOf(m, passes, legs)),
    efficiency: used.map((m) => ({ machine: m.id, reached: efficiencyOf(m, legs) })),
    disturbed: disturbedShare(given.design, legs),
  };
}

const lengthOf = (legs: readonly Leg[], kind: Leg['kind']): Feet =>
  legs.reduce((n, leg) => (leg.kind === kind ? n + polylineLength(leg.points) : n), 0);

function totalsOf(
  machine: Machine,
  passes: readonly Pass[],
  legs: readonly Leg[],
): PassPlan['totals'][number][] {
  const own = legs.filter((leg) => leg.machine === machine.id && leg.kind !== 'hold');
  const phases = [...new Set<Phase>(own.map((leg) => leg.phase))];
  return phases.map((phase) => {
    const here = own.filter((leg) => leg.phase === phase);
    return {
      machine: machine.id,
      phase,
      passes: passes.filter((p) => p.machine === machine.id && p.phase === phase).length,
      mowFt: lengthOf(here, 'mow'),
      seconds: here.reduce((n, leg) => n + leg.seconds, 0),
    };
  });
}

/** Field efficiency on the grass: way from and to the gate and the count left out. */
function efficiencyOf(machine: Machine, legs: readonly Leg[]): number {
  const own = legs.filter(
    (leg) => leg.machine === machine.id && leg.kind !== 'hold' && leg.phase !== 'carry',
  );
  const seconds = own.reduce((n, leg) => n + leg.seconds, 0);
  const area = lengthOf(own, 'mow') * swathFt(machine);
  return reachedEfficiency(area, seconds, cutFt(machine), machine.cuttingMph);
}
