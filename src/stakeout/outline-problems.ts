/** What is wrong with an outline as it is drawn: details left out or strained, gaps, crossings. */
import { problem, type Problem } from '../base/result';
import { inches } from '../base/units';
import { placeInWords } from '../field/place-in-words';
import type { Draft, DraftContour } from './draft-outline';
import { ROUNDING_ALLOWANCE_IN } from './limits';
import type { StakeoutSpec, StakePlan } from './model';
import type { OutlineReview } from './review-outline';
import type { JoinedContour } from './join-outline';
import { tracePoint } from './trace';

/** An outline as drafted, as drawn between printed stakes, and as reviewed. */
export interface DrawnOutline {
  readonly draft: Draft;
  readonly joined: readonly JoinedContour[];
  readonly review: OutlineReview;
}

/** Warnings `detail-too-small`, `outline-off`, `outline-crosses`. */
export const outlineProblems = (drawn: DrawnOutline, plan: StakePlan): Problem[] => [
  ...detailProblems(drawn, plan.spec),
  ...fitProblems(drawn, plan),
];

/** One problem for all contours left out, one for each that is drawn but strays. */
function detailProblems(best: DrawnOutline, spec: StakeoutSpec): Problem[] {
  const limit = inches(spec.toleranceIn + ROUNDING_ALLOWANCE_IN);
  const strays = best.review.largestGapFt > limit;
  const dropped = best.draft.contours.filter(
    (c, i) => c.pieces.length === 0 || !best.joined[i]!.ok,
  );
  const strained = best.draft.contours.filter((c) => strays && c.strained && !dropped.includes(c));
  return [
    ...(dropped.length > 0 ? [droppedProblem(dropped)] : []),
    ...strained.map(strainedProblem),
  ];
}

const whereContour = (c: DraftContour): string =>
  `contour ${c.trace.contour + 1}, ${placeInWords(tracePoint(c.trace, 0))}`;

const droppedProblem = (dropped: readonly DraftContour[]): Problem =>
  problem(
    'detail-too-small',
    whereContour(dropped[0]!) + (dropped.length > 1 ? `, and ${dropped.length - 1} more` : ''),
    'too small for stakes at least 8 in apart, left out of the outline',
    'make the art larger or take the detail out',
    'warning',
  );

const strainedProblem = (c: DraftContour): Problem =>
  problem(
    'detail-too-small',
    whereContour(c),
    'a detail is too small to follow with stakes at least 8 in apart',
    'make the art larger or take the detail out',
    'warning',
  );

function fitProblems(best: DrawnOutline, plan: StakePlan): Problem[] {
  const out: Problem[] = [];
  const limitIn = plan.spec.toleranceIn + ROUNDING_ALLOWANCE_IN;
  if (plan.largestGapIn > limitIn) {
    out.push(
      problem(
        'outline-off',
        'the outline',
        `as printed it strays ${plan.largestGapIn.toFixed(1)} in from the art, ${limitIn} in are allowed`,
        'raise the tolerance or make the art larger',
        'warning',
      ),
    );
  }
  if (best.review.offences.some((o) => o.crosses)) {
    out.push(
      problem(
        'outline-crosses',
        'the outline',
        'two of its lines cross where the art almost touches itself',
        'lower the tolerance or open the art there',
        'warning',
      ),
    );
  }
  return out;
}
