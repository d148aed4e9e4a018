/** Lengths, times and shares of a driven route. */
import type { Design } from '../design/model';
import { disturbedShare } from './disturbed-share';
import { fieldEfficiency } from './field-efficiency';
import type { FinishedLays } from './finished-lays';
import { driveFt, driveSeconds } from './leg-sums';
import type { Leg, Machine, Pass, PassPlan, Phase } from './model';
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
  lays: FinishedLays,
): PassPlan {
  const used = given.machines.filter((m) => passes.some((p) => p.machine === m.id));
  return {
    machines: used,
    passes,
    legs,
    mowFt: driveFt(legs, 'mow'),
    turnFt: driveFt(legs, 'turn'),
    runFt: driveFt(legs, 'run'),
    overLayFt: overLayFt(lays, passes, legs),
    graphicCovered: layout.graphicCovered,
    uncovered: layout.uncovered,
    laidOutside: layout.laidOutside,
    totals: used.flatMap((m) => totalsOf(m, passes, legs)),
    efficiency: used.map((m) => fieldEfficiency(m, legs)),
    disturbed: disturbedShare(given.design, legs),
  };
}

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
      mowFt: driveFt(here, 'mow'),
      seconds: driveSeconds(here),
    };
  });
}
