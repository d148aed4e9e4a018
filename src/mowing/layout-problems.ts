/** What the layout of the swaths leaves undone, in words. */
import { problem, type Problem } from '../base/result';
import type { Design } from '../design/model';
import type { SwathLayout } from './swath-model';

/** Share of the graphic that planned passes should cover, and that they may lay outside it. */
const COVERED_ENOUGH = 0.95;
const OUTSIDE_ENOUGH = 0.01;
/** Feet lost to the machine's body in a patch before it is worth a word. */
const LOST_WORTH_NOTING = 0.5;

/** Warnings `graphic-uncovered`, `laid-outside` and `pass-trimmed` (edge laps overlap, so not they). */
export function layoutProblems(layout: SwathLayout, design: Design): Problem[] {
  return [...coverProblem(layout), ...outsideProblem(layout), ...bodyProblem(layout, design)];
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

function coverProblem(layout: SwathLayout): Problem[] {
  if (layout.graphicCovered >= COVERED_ENOUGH) return [];
  const places = layout.uncovered.slice(0, 3).map((u) => u.place);
  return [
    problem(
      'graphic-uncovered',
      'design.graphic',
      `Passes cover ${percent(layout.graphicCovered)} of the graphic; left are ${places.join(', ')}`,
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
      `Passes lay ${percent(layout.laidOutside)} of the graphic’s area outside its outline`,
      'choose a narrower tool, or make the graphic larger',
      'warning',
    ),
  ];
}

function bodyProblem(layout: SwathLayout, design: Design): Problem[] {
  const borders = new Set(design.patches.filter((p) => p.kind === 'border').map((p) => p.id));
  const lost = layout.blocked.filter((b) => !borders.has(b.patch));
  const feet = lost.reduce((n, b) => n + b.lostFt, 0);
  if (feet <= LOST_WORTH_NOTING) return [];
  const patches = [...new Set(lost.map((b) => b.patch))];
  const named =
    patches.length > 4 ? `${patches.slice(0, 4).join(', ')} and more` : patches.join(', ');
  return [
    problem(
      'pass-trimmed',
      'mowing',
      `Passes are ${Math.round(feet)} ft short in all, to keep bodies off skin, fence and keep-outs: ${named}`,
      'add an edge lap, or trim those ends by hand',
      'warning',
    ),
  ];
}
