/** The likely person-minutes of each step of the set-out, from the labour rates. */
import type { StakeoutSpec } from '../stakeout/model';
import type { CrewMinutes } from '../stakeout/minutes';
import { LEAST_TO_SET_OUT } from './check-labour';
import type { LabourSpec } from './model';
import { MINUTES_PER_RATE, type RateId } from './rates';
import { sizeRate } from './size-rate';

/**
 * Rate × people for every step, with `crew` at the tapes. A stake has its share of sorting and pulling,
 * a string its pulling. A crew that `estimateHours` refuses is taken as the fewest that can set out.
 */
export function crewMinutes(spec: LabourSpec, crew: StakeoutSpec['crew']): CrewMinutes {
  const people = Math.max(LEAST_TO_SET_OUT, Math.floor(spec.people) || 0);
  const each = (id: RateId): number => {
    const sized = sizeRate(id, id, spec, people, Math.min(crew, people));
    return sized.rate.likely * MINUTES_PER_RATE[sized.rate.unit] * sized.people;
  };
  const handling = each('prepare') + each('pull');
  return {
    ties: each('set-stakes') + handling,
    line: each('set-stakes') + handling,
    short: each('set-short') + handling,
    stringEach: each('tie-strings') + each('pull'),
    stringPerFt: each('pull-strings'),
    swing: each('draw-swings'),
    bend: each('draw-bends'),
    moveTapes: each('move-tapes'),
  };
}
