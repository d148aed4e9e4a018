/** Guide strings over the bands that they keep straight: string, end stakes, their numbers. */
import type { Point } from '../../geometry/point';
import { COLOUR } from './colours';
import { placeLabels, type Box } from './labels';
import type { PaintJob } from './paint';
import { diamond } from './symbols';

type Place = (p: Point) => Point;

/** Drawn with the passes of the bands alone; `taken` grows by the stakes' numbers. */
export function drawGuides(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  taken: Box[],
  place: Place,
): void {
  const { strings } = job.plan.guides;
  ctx.lineCap = 'butt';
  for (const { from, to } of strings) {
    for (const [colour, width] of [
      [COLOUR.white, 6],
      [COLOUR.ink, 3],
    ] as const) {
      ctx.strokeStyle = colour;
      ctx.lineWidth = width;
      const [a, b] = [place(from.at), place(to.at)];
      ctx.beginPath();
      ctx.moveTo(a.x, a.y);
      ctx.lineTo(b.x, b.y);
      ctx.stroke();
    }
  }
  const ends = strings.flatMap(({ from, to }) => [
    { stake: from, other: to },
    { stake: to, other: from },
  ]);
  for (const { stake } of ends) diamond(ctx, place(stake.at), 5);
  const items = ends.map(({ stake, other }) => {
    const [at, far] = [place(stake.at), place(other.at)];
    return { id: stake.id, at, away: { x: at.x - far.x, y: at.y - far.y } };
  });
  placeLabels(ctx, items, taken, job.size, {
    font: '650 12px "Archivo Variable"',
    plate: 0.95,
    rings: 3,
  });
}
