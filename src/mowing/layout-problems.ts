/** What the layout of the swaths leaves undone, in words. */
import { problem, type Problem } from '../base/result';
import type { Design } from '../design/model';
import { trimmedProblem } from './lost-ground';
import type { SwathLayout } from './swath-model';

/** Share of the graphic that planned passes should cover, and that they may lay outside it. */
const COVERED_ENOUGH = 0.95;
const OUTSIDE_ENOUGH = 0.01;

/** Warnings `graphic-uncovered`, `laid-outside` and `pass-trimmed` (edge laps overlap, so not they). */
export function layoutProblems(layout: SwathLayout, design: Design): Problem[] {
  return [
    ...coverProblem(layout),
    ...outsideProblem(layout),
    ...trimmedProblem('mowing', 'both machines', layout.blocked, design),
  ];
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function coverProblem(layout: SwathLayout): Problem[] {
  if (layout.graphicCovered >= COVERED_ENOUGH) return [];
  const places = layout.uncovered.slice(0, 3).map((u) => u.place);
  return [
    problem(
      'graphic-uncovered',
      'design.graphic',
      `passes cover ${percent(layout.graphicCovered)} of the graphic; left are ${places.join(', ')}`,
      'make the graphic larger, choose a narrower tool, or brush those places by hand',
      'warning',
    ),
  ];
}

function outsideProblem(layout: SwathLayout): Problem[] {
  if (layout.laidOutside <= OUTSIDE_ENOUGH) return [];
  return [
    problem(
      'laid-outside',
      'design.graphic',
      `passes lay ${percent(layout.laidOutside)} of the graphic’s area outside its outline`,
      'choose a narrower tool, or make the graphic larger',
      'warning',
    ),
  ];
}
