/** Draws a printed sheet's marks on canvas, as the PDF writer draws them on paper. */
import type { Mark, Sheet, Stroke } from '../../sheets/marks';

const FONT = {
  regular: '500 SIZEpx "Archivo Variable"',
  bold: '700 SIZEpx "Archivo Variable"',
  heading: '600 SIZEpx "Besley Variable"',
} as const;

const grey = (g: number): string => {
  const v = Math.round(g * 255);
  return `rgb(${v} ${v} ${v})`;
};

/** The context must be scaled so that one unit is one paper point. */
export function drawSheet(ctx: CanvasRenderingContext2D, sheet: Sheet): void {
  ctx.fillStyle = '#fff';
  ctx.fillRect(0, 0, sheet.width, sheet.height);
  for (const mark of sheet.marks) drawMark(ctx, mark);
}

function setStroke(ctx: CanvasRenderingContext2D, stroke: Stroke): void {
  ctx.strokeStyle = grey(stroke.grey);
  ctx.lineWidth = stroke.width;
  ctx.setLineDash([...(stroke.dash ?? [])]);
}

function drawMark(ctx: CanvasRenderingContext2D, mark: Mark): void {
  if (mark.kind === 'text') {
    ctx.fillStyle = grey(mark.grey);
    ctx.font = FONT[mark.font].replace('SIZE', String(mark.size));
    ctx.textAlign = mark.align === 'centre' ? 'center' : mark.align;
    ctx.fillText(mark.text, mark.at.x, mark.at.y);
  } else if (mark.kind === 'polyline') {
    ctx.beginPath();
    mark.points.forEach((p, i) => (i === 0 ? ctx.moveTo(p.x, p.y) : ctx.lineTo(p.x, p.y)));
    if (mark.closed) ctx.closePath();
    setStroke(ctx, mark.stroke);
    ctx.stroke();
  } else if (mark.kind === 'fill') {
    ctx.beginPath();
    for (const ring of mark.rings) {
      ring.forEach((p, i) => (i === 0 ? ctx.moveTo(p.x, p.y) : ctx.lineTo(p.x, p.y)));
      ctx.closePath();
    }
    ctx.fillStyle = grey(mark.grey);
    ctx.fill('evenodd');
  } else if (mark.kind === 'circle') {
    ctx.beginPath();
    ctx.arc(mark.centre.x, mark.centre.y, mark.radius, 0, 2 * Math.PI);
    if (mark.fill !== null) {
      ctx.fillStyle = grey(mark.fill);
      ctx.fill();
    }
    if (mark.stroke) {
      setStroke(ctx, mark.stroke);
      ctx.stroke();
    }
  } else {
    ctx.save();
    ctx.beginPath();
    const { minX, minY, maxX, maxY } = mark.clip;
    ctx.rect(minX, minY, maxX - minX, maxY - minY);
    ctx.clip();
    for (const inner of mark.marks) drawMark(ctx, inner);
    ctx.restore();
  }
}
