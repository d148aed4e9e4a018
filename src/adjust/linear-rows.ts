/** The equations of a network at given coordinates: what each reading should read, and how it answers. */
import type { Point } from '../geometry/point';
import { pointSubtract, vectorCross, vectorDot, vectorLeft } from '../geometry/point';
import { SINGULAR } from '../geometry/tolerance';
import type { PointCovariance } from './ellipse';
import { standardEllipse } from './ellipse';
import {
  isLineReading,
  type LinearRow,
  type LineReading,
  type NetworkPoint,
  type NetworkReading,
  type TapeScale,
} from './network-model';
import { orderPoints } from './order-points';

/** The unknowns of a network by number. */
export interface Unknowns {
  readonly count: number;
  /** Places of x and y; −1 for a held coordinate. */
  readonly points: ReadonlyMap<string, readonly [number, number]>;
  readonly scales: ReadonlyMap<string, number>;
}

/** Coordinates and scales at which the equations are taken. */
export interface State {
  readonly at: ReadonlyMap<string, Point>;
  readonly scale: ReadonlyMap<string, number>;
}

/** Numbers the unknown coordinates so that the factor's rows are short, then the tapes' scales. */
export function numberUnknowns(
  points: readonly NetworkPoint[],
  tapes: readonly TapeScale[],
  readings: readonly NetworkReading[],
): Unknowns {
  let count = 0;
  const byId = new Map(points.map((p) => [p.id, p]));
  const places = new Map<string, readonly [number, number]>();
  for (const id of orderPoints([...byId.keys()], readings)) {
    const { fixed } = byId.get(id)!;
    const x = fixed === true || fixed === 'x' ? -1 : count++;
    const y = fixed === true || fixed === 'y' ? -1 : count++;
    places.set(id, [x, y]);
  }
  const scales = new Map(tapes.map((t) => [t.id, count++]));
  return { count, points: places, scales };
}

type Place = LinearRow['places'][number];

/** A reading's equation. */
export function readingRow(r: NetworkReading, unknowns: Unknowns, state: State): LinearRow {
  const { value, parts } = isLineReading(r) ? beside(r, state) : apart(r, state);
  const scale = 1 + (r.tape === undefined ? 0 : (state.scale.get(r.tape) ?? 0));
  const places = parts.flatMap(([id, by]) => pointPlaces(unknowns, id, by, scale));
  const scalePlace = r.tape === undefined ? undefined : unknowns.scales.get(r.tape);
  if (scalePlace !== undefined) places.push({ at: scalePlace, by: -value / (scale * scale) });
  return { residual: value / scale - r.distance, sigma: r.sigma, places };
}

function pointPlaces(unknowns: Unknowns, id: string, by: Point, scale: number): Place[] {
  const [x, y] = unknowns.points.get(id)!;
  const out: Place[] = [];
  if (x >= 0) out.push({ at: x, by: by.x / scale });
  if (y >= 0) out.push({ at: y, by: by.y / scale });
  return out;
}

interface Measured {
  readonly value: number;
  readonly parts: readonly (readonly [string, Point])[];
}

/** Points that coincide are taken to lie apart along x: the next step parts them. */
function direction(a: Point, b: Point): { readonly length: number; readonly unit: Point } {
  const d = pointSubtract(b, a);
  const length = Math.hypot(d.x, d.y);
  return { length, unit: length > 0 ? { x: d.x / length, y: d.y / length } : { x: 1, y: 0 } };
}

const negative = (p: Point): Point => ({ x: -p.x, y: -p.y });

function apart(r: { readonly from: string; readonly to: string }, { at }: State): Measured {
  const { length, unit } = direction(at.get(r.from)!, at.get(r.to)!);
  return {
    value: length,
    parts: [
      [r.from, negative(unit)],
      [r.to, unit],
    ],
  };
}

/** Turning the line by a small angle about `from` moves its far end square to it. */
function beside(r: LineReading, { at }: State): Measured {
  const a = at.get(r.from)!;
  const { length, unit } = direction(a, at.get(r.to)!);
  const left = vectorLeft(unit);
  const toPoint = pointSubtract(at.get(r.point)!, a);
  const along = vectorDot(unit, toPoint);
  const across = vectorCross(unit, toPoint);
  const lever = length > 0 ? 1 / length : 0;
  const middle = r.kind === 'middle' ? 0.5 : 0;
  const value = r.kind === 'across' ? across : along - middle * length;
  const byPoint = r.kind === 'across' ? left : unit;
  const turn = (r.kind === 'across' ? -along : across) * lever;
  const byTo = { x: turn * left.x - middle * unit.x, y: turn * left.y - middle * unit.y };
  const byFrom = { x: -byPoint.x - byTo.x, y: -byPoint.y - byTo.y };
  return {
    value,
    parts: [
      [r.point, byPoint],
      [r.to, byTo],
      [r.from, byFrom],
    ],
  };
}

/** What is known of a point beforehand, along the axes of its ellipse: two independent equations. */
export function priorRows(
  p: NetworkPoint,
  covariance: PointCovariance,
  unknowns: Unknowns,
  state: State,
): LinearRow[] {
  const now = state.at.get(p.id)!;
  const ellipse = standardEllipse(covariance);
  const axis = { x: Math.cos(ellipse.angle), y: Math.sin(ellipse.angle) };
  const least = Math.sqrt(SINGULAR) * ellipse.semiMajor;
  const off = pointSubtract(now, p.at);
  return [
    { unit: axis, sigma: ellipse.semiMajor },
    { unit: vectorLeft(axis), sigma: Math.max(least, ellipse.semiMinor) },
  ].map(({ unit, sigma }) => ({
    residual: vectorDot(unit, off),
    sigma,
    places: pointPlaces(unknowns, p.id, unit, 1),
  }));
}

/** What is known of a tape's scale beforehand. */
export const scaleRow = (
  t: TapeScale,
  sigma: number,
  unknowns: Unknowns,
  state: State,
): LinearRow => ({
  residual: state.scale.get(t.id)!,
  sigma,
  places: [{ at: unknowns.scales.get(t.id)!, by: 1 }],
});
