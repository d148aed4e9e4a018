/**
 * The outline as a crew paints it between stakes where they really stand: strings, swings about their
 * pins, bends by hand, circles, each with its own errors. Shares no code with the engine. Feet.
 */
import { readingFeet, type OutlineRow, type Xy } from './stranger';
import type { Noise, TapeErrors } from './field-crew';

/** A painted dot, and how well the file says its place is known: inches. */
export interface Dot {
  readonly x: number;
  readonly y: number;
  readonly localIn: number;
}

export interface PaintedStake {
  readonly at: Xy;
  /** Printed semi-major of its 95 % ellipse. */
  readonly semiMajorIn: number;
}

export interface Brush {
  readonly noise: Noise;
  readonly tape: TapeErrors;
  /** The tape is this much longer than it says, of its length. */
  readonly scale: number;
  readonly squareDeg: number;
}

/** Dots stand this close together. */
const STEP_FT = 0.5;
/** A dot beside its string or arc, one sigma: common practice, no source. */
const DOT_FT = 0.25 / 12;

export function paint(
  rows: readonly OutlineRow[],
  stakes: ReadonlyMap<string, PaintedStake>,
  brush: Brush,
): Dot[][] {
  const contours = new Map<string, OutlineRow[]>();
  for (const row of rows) {
    contours.set(row.contour, [...(contours.get(row.contour) ?? []), row]);
  }
  return [...contours.values()].map((pieces) =>
    pieces.flatMap((p) => paintPiece(p, stakes, brush)),
  );
}

function paintPiece(
  row: OutlineRow,
  stakes: ReadonlyMap<string, PaintedStake>,
  brush: Brush,
): Dot[] {
  const stake = (id: string): PaintedStake => {
    const found = stakes.get(id);
    if (!found) throw new Error(`contour ${row.contour} names ${id}, which is not set`);
    return found;
  };
  if (row.kind === 'circle') return paintCircle(row, stake(row.pin), brush);
  const [a, b] = [stake(row.from), stake(row.to)];
  if (row.kind === 'string') return paintString(a, b, brush);
  if (row.kind === 'swing') return paintSwing(row, a, b, stake(row.pin), brush);
  return paintBend(row, a, b, brush);
}

const pull = (ft: number, { noise, tape, scale }: Brush): number =>
  ft * (1 + scale) + noise.normal() * Math.hypot(tape.readingIn / 12, tape.proportional * ft);

const dot = (x: number, y: number, nx: number, ny: number, localIn: number, b: Brush): Dot => {
  const off = DOT_FT * b.noise.normal();
  return { x: x + off * nx, y: y + off * ny, localIn };
};

const between = (a: PaintedStake, b: PaintedStake, t: number): number =>
  (1 - t) * a.semiMajorIn + t * b.semiMajorIn;

function paintString(a: PaintedStake, b: PaintedStake, brush: Brush): Dot[] {
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const length = Math.hypot(dx, dy);
  const n = Math.max(1, Math.ceil(length / STEP_FT));
  return Array.from({ length: n }, (_, i) => {
    const t = i / n;
    const [x, y] = [a.at[0] + t * dx, a.at[1] + t * dy];
    return dot(x, y, -dy / length, dx / length, between(a, b, t), brush);
  });
}

interface Arc {
  readonly centre: Xy;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

function paintArc(arc: Arc, localAt: (t: number) => number, brush: Brush): Dot[] {
  const n = Math.max(2, Math.ceil((Math.abs(arc.sweep) * arc.radius) / STEP_FT));
  return Array.from({ length: n + 1 }, (_, i) => {
    const angle = arc.start + (arc.sweep * i) / n;
    const [nx, ny] = [Math.cos(angle), Math.sin(angle)];
    const [x, y] = [arc.centre[0] + arc.radius * nx, arc.centre[1] + arc.radius * ny];
    return dot(x, y, nx, ny, localAt(i / n), brush);
  });
}

function paintCircle(row: OutlineRow, pin: PaintedStake, brush: Brush): Dot[] {
  const radius = pull(readingFeet(row.radius), brush);
  const arc = { centre: pin.at, radius, start: 0, sweep: 2 * Math.PI };
  return paintArc(arc, () => pin.semiMajorIn, brush).slice(0, -1);
}

const bearing = (from: Xy, to: Xy): number => Math.atan2(to[1] - from[1], to[0] - from[0]);
const TURN = 2 * Math.PI;
const ahead = (angle: number): number => ((angle % TURN) + TURN) % TURN;

function paintSwing(
  row: OutlineRow,
  a: PaintedStake,
  b: PaintedStake,
  pin: PaintedStake,
  brush: Brush,
): Dot[] {
  const start = bearing(pin.at, a.at);
  const ccw = ahead(bearing(pin.at, b.at) - start);
  const asked = row.sweep === 'ccw' ? ccw : ccw - TURN;
  // Never more than half a turn is printed: an arc of nearly a whole one is one drawn back to front.
  const sweep = Math.abs(asked) > 1.5 * Math.PI ? asked - Math.sign(asked) * TURN : asked;
  const radius = pull(readingFeet(row.radius), brush);
  const local = (t: number) => Math.max(pin.semiMajorIn, between(a, b, t));
  const arc = paintArc({ centre: pin.at, radius, start, sweep }, local, brush);
  // The steps from the end stakes to the arc are joined straight: the stake itself is one of its dots.
  return [{ x: a.at[0], y: a.at[1], localIn: a.semiMajorIn }, ...arc];
}

/** The arc from stake to stake through the mark, by the circle about three points. */
function paintBend(row: OutlineRow, a: PaintedStake, b: PaintedStake, brush: Brush): Dot[] {
  const mark = bendMark(row, a, b, brush);
  const centre = centreOf(a.at, mark, b.at);
  if (!centre) return paintString(a, b, brush);
  const start = bearing(centre, a.at);
  const toMark = ahead(bearing(centre, mark) - start);
  const toEnd = ahead(bearing(centre, b.at) - start);
  const sweep = toMark < toEnd ? toEnd : toEnd - TURN;
  const radius = Math.hypot(a.at[0] - centre[0], a.at[1] - centre[1]);
  return paintArc({ centre, radius, start, sweep }, (t) => between(a, b, t), brush).slice(0, -1);
}

function bendMark(row: OutlineRow, a: PaintedStake, b: PaintedStake, brush: Brush): Xy {
  const [dx, dy] = [b.at[0] - a.at[0], b.at[1] - a.at[1]];
  const length = Math.hypot(dx, dy);
  const skew = (brush.noise.normal() * brush.squareDeg * Math.PI) / 180;
  const left = { L: 1, R: -1 }[row.side];
  if (left === undefined) throw new Error(`bend from ${row.from}: no such side ${row.side}`);
  const off = left * pull(readingFeet(row.offset), brush);
  const along = pull(length / 2, { ...brush, scale: 0 });
  const [ex, ey] = [dx / length, dy / length];
  const [s, c] = [along - off * Math.sin(skew), off * Math.cos(skew)];
  return [a.at[0] + s * ex - c * ey, a.at[1] + s * ey + c * ex];
}

function centreOf(a: Xy, m: Xy, b: Xy): Xy | null {
  const [px, py] = [m[0] - a[0], m[1] - a[1]];
  const [qx, qy] = [b[0] - a[0], b[1] - a[1]];
  const det = 2 * (px * qy - py * qx);
  if (det === 0) return null;
  const [pp, qq] = [px * px + py * py, qx * qx + qy * qy];
  return [a[0] + (qy * pp - py * qq) / det, a[1] + (px * qq - qx * pp) / det];
}
