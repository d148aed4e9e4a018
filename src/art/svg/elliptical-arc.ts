/**
 * Elliptical arcs to cubic curves, after SVG 1.1 appendix F.6 (implementation notes) and the usual
 * tangent-length rule for circular arcs. A piece of at most 1/16 turn is within 7e-8 of its radius.
 */
import { affineApply, type Affine } from '../../geometry/affine';
import { point, type Point } from '../../geometry/point';
import { cubicTo, lineTo, type Curve } from '../outline';

/** The largest piece, radians. */
const PIECE = Math.PI / 8;

export interface ArcShape {
  readonly rx: number;
  readonly ry: number;
  /** Turn of the ellipse's x axis, radians. */
  readonly turn: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/** The arc from `from` to `to` as SVG's `A` defines it, radii scaled up when they are too short. */
export function arcTo(from: Point, arc: ArcShape, to: Point): Curve[] {
  if (from.x === to.x && from.y === to.y) return [];
  const rx = Math.abs(arc.rx);
  const ry = Math.abs(arc.ry);
  if (rx === 0 || ry === 0) return [lineTo(to)];
  const { frame, startAngle, sweepAngle } = arcCentre(from, { ...arc, rx, ry }, to);
  const curves = ellipseCurves(frame, startAngle, sweepAngle);
  return [...curves.slice(0, -1), { ...curves[curves.length - 1]!, to }];
}

interface CentredArc {
  /** Maps the unit circle to the ellipse. */
  readonly frame: Affine;
  readonly startAngle: number;
  readonly sweepAngle: number;
}

/** F.6.5 and F.6.6: from end points to centre. */
function arcCentre(from: Point, arc: ArcShape, to: Point): CentredArc {
  const cos = Math.cos(arc.turn);
  const sin = Math.sin(arc.turn);
  const dx = (from.x - to.x) / 2;
  const dy = (from.y - to.y) / 2;
  const x1 = cos * dx + sin * dy;
  const y1 = -sin * dx + cos * dy;
  const stretch = Math.sqrt(Math.max(1, (x1 / arc.rx) ** 2 + (y1 / arc.ry) ** 2));
  const rx = arc.rx * stretch;
  const ry = arc.ry * stretch;
  const ux = x1 / rx;
  const uy = y1 / ry;
  const length2 = ux * ux + uy * uy;
  const side = arc.large === arc.sweep ? -1 : 1;
  const reach = side * Math.sqrt(Math.max(0, 1 - length2) / length2);
  const cu = reach * uy;
  const cv = -reach * ux;
  const startAngle = Math.atan2(uy - cv, ux - cu);
  const endAngle = Math.atan2(-uy - cv, -ux - cu);
  const centre = {
    x: cos * rx * cu - sin * ry * cv + (from.x + to.x) / 2,
    y: sin * rx * cu + cos * ry * cv + (from.y + to.y) / 2,
  };
  return {
    frame: { a: cos * rx, b: sin * rx, c: -sin * ry, d: cos * ry, e: centre.x, f: centre.y },
    startAngle,
    sweepAngle: sweepOf(startAngle, endAngle, arc.sweep),
  };
}

function sweepOf(start: number, end: number, sweep: boolean): number {
  const turn = end - start;
  if (sweep && turn < 0) return turn + 2 * Math.PI;
  if (!sweep && turn > 0) return turn - 2 * Math.PI;
  return turn;
}

/** An arc of the unit circle, mapped by `frame`, in pieces of at most 1/16 turn. */
export function ellipseCurves(frame: Affine, startAngle: number, sweepAngle: number): Curve[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(sweepAngle) / PIECE));
  const step = sweepAngle / pieces;
  const reach = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: pieces }, (_, i) => {
    const a = startAngle + i * step;
    const b = a + step;
    const c1 = point(Math.cos(a) - reach * Math.sin(a), Math.sin(a) + reach * Math.cos(a));
    const c2 = point(Math.cos(b) + reach * Math.sin(b), Math.sin(b) - reach * Math.cos(b));
    const end = point(Math.cos(b), Math.sin(b));
    return cubicTo(affineApply(frame, c1), affineApply(frame, c2), affineApply(frame, end));
  });
}
