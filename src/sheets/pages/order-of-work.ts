/** The strip at the foot of the overview: the order of work, which is a safety rule. */
import { wrapText } from '../fit-text';
import { boxRing, inkBox, inkRing, inkStroke, inkText } from '../ink';
import type { Kit } from '../kit';
import type { Mark } from '../marks';
import { arrowHead } from '../symbols';

interface Step {
  readonly head: string;
  readonly text: string;
  readonly hold?: true;
}

const STAKED: readonly Step[] = [
  { head: 'Background', text: 'Mow or rub out. Machine leaves the grass.' },
  { head: 'Set out', text: 'Controls, then stakes, round by round.' },
  { head: 'Mark', text: 'Piece by piece: string or swing, dots on the turf, string off.' },
  { head: 'Lift', text: 'Strings, pins, stakes: all out of the grass.' },
  { head: 'Hold point', text: 'Stakes out = stakes in. Signed.', hold: true },
  { head: 'Graphic', text: 'Graphic, edge, then borders. Clean up.' },
];
const PLAIN: readonly Step[] = [
  { head: 'Background', text: 'Mow the bands in the order of their numbers.' },
  { head: 'Borders', text: 'Clean-up laps last.' },
];

const GAP = 12;

/** Marks with the strip's top at `y`. */
export function orderOfWork(kit: Kit, y: number): Mark[] {
  const { left, right } = kit.paper;
  const steps = withGuides(kit, kit.plan.stakes ? STAKED : PLAIN);
  const width = (right - left - GAP * (steps.length - 1)) / steps.length;
  const title = inkText(left, y + 11, 'Order of work', { size: 12, font: 'heading' });
  const boxes = steps.flatMap((step, i) => {
    const x = left + i * (width + GAP);
    const arrow = arrowHead({ x: x - 2, y: y + 50 }, 1, 0, 8);
    return [...(i > 0 ? [arrow] : []), ...stepMarks(kit, step, i + 1, x, y + 20, width)];
  });
  return [title, ...boxes];
}

/** Where passes are strung, the first step says so. */
function withGuides(kit: Kit, [first, ...others]: readonly Step[]): readonly Step[] {
  if (!first || kit.plan.guides.strings.length === 0) return first ? [first, ...others] : [];
  const text = kit.plan.stakes
    ? 'Dot edges, string first passes, mow. Machine leaves the grass.'
    : 'Dot the edges, string the first passes one at a time, then mow in the order of the numbers.';
  return [{ ...first, text }, ...others];
}

function stepMarks(kit: Kit, step: Step, number: number, x: number, y: number, width: number) {
  const frame = boxRing({ minX: x, maxX: x + width, minY: y, maxY: y + 68 });
  const lines = wrapText(kit.metrics, step.text, 8.5, 'regular', width - 10);
  return [
    inkRing(frame, inkStroke(step.hold ? 2.4 : 0.8)),
    inkText(x + 5, y + 13, `${number} ${step.head}`, { size: 9.5, font: 'bold' }),
    ...lines.map((line, i) => inkText(x + 5, y + 26 + i * 10.5, line, { size: 8.5 })),
    inkBox(x + width - 14, y + 55, 9, 9),
  ];
}
