/** What the guide lines of a plan take: marks to set, strings to put up. */
import type { Feet } from '../base/units';
import type { GuidePlan } from '../guide/model';
import { stringTurns } from '../guide/string-turns';
import type { PassPlan } from '../mowing/model';

export interface GuideWork {
  /** Dots on the edges of the grass, of band edges and guide stakes. */
  readonly marks: number;
  /** Times that a string goes up, once for every pass along it. */
  readonly turns: number;
  readonly longestFt: Feet;
}

/** Counted in the order of the plan. */
export function guideWork(guides: GuidePlan, passes: Pick<PassPlan, 'passes'>): GuideWork {
  return {
    marks: guides.tables.reduce((sum, table) => sum + table.marks.length, 0),
    turns: stringTurns(guides, passes).length,
    longestFt: Math.max(0, ...guides.strings.map((string) => string.lengthFt)),
  };
}
