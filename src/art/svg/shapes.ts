/** The basic shapes to outlines, in their own user space. */
import { point, type Point } from '../../geometry/point';
import { lineTo, type Outline, type Subpath } from '../outline';
import { attribute, type SvgElement } from './element';
import { arcTo, ellipseCurves } from './elliptical-arc';
import { readLength, readNumbers } from './numbers';
import { readPathData } from './path-data';

/** Size of the nearest viewport, which percentages are of. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** `unreadable`: a number is wrong. `broken`: drawn up to a mistake. */
export interface Shape {
  readonly outline: Outline;
  readonly flaw: 'none' | 'unreadable' | 'broken';
}

const sound = (outline: Outline): Shape => ({ outline, flaw: 'none' });
const NOTHING = sound([]);
const UNREADABLE: Shape = { outline: [], flaw: 'unreadable' };

/** The elements that draw something. */
export const SHAPE_TAGS: ReadonlySet<string> = new Set([
  'path',
  'rect',
  'circle',
  'ellipse',
  'line',
  'polyline',
  'polygon',
]);

/** The outline of a shape element. Sizes of zero draw nothing; negative ones are unreadable. */
export function shapeOutline(element: SvgElement, extent: Extent): Shape {
  switch (element.tag) {
    case 'path':
      return pathShape(element);
    case 'rect':
      return rectShape(element, extent);
    case 'circle':
    case 'ellipse':
      return ellipseShape(element, extent);
    case 'line':
      return lineShape(element, extent);
    default:
      return polyShape(element);
  }
}

function pathShape(element: SvgElement): Shape {
  const { outline, broken } = readPathData(attribute(element, 'd') ?? '');
  return { outline, flaw: broken ? 'broken' : 'none' };
}

type Axis = 'x' | 'y' | 'both';

/** A length attribute; NaN when it is there and cannot be read. */
function length(element: SvgElement, name: string, axis: Axis, extent: Extent): number | undefined {
  const text = attribute(element, name);
  if (text === undefined || text.trim() === 'auto') return undefined;
  return readLength(text, wholeOf(axis, extent)) ?? NaN;
}

/** What a percentage is of (SVG 1.1, 7.10). */
export function wholeOf(axis: Axis, extent: Extent): number {
  if (axis === 'x') return extent.width;
  if (axis === 'y') return extent.height;
  return Math.hypot(extent.width, extent.height) / Math.SQRT2;
}

const unreadable = (...values: readonly number[]): boolean => values.some(Number.isNaN);

function rectShape(element: SvgElement, extent: Extent): Shape {
  const x = length(element, 'x', 'x', extent) ?? 0;
  const y = length(element, 'y', 'y', extent) ?? 0;
  const width = length(element, 'width', 'x', extent) ?? 0;
  const height = length(element, 'height', 'y', extent) ?? 0;
  const rx = length(element, 'rx', 'x', extent);
  const ry = length(element, 'ry', 'y', extent);
  if (unreadable(x, y, width, height, rx ?? 0, ry ?? 0)) return UNREADABLE;
  if (width < 0 || height < 0) return UNREADABLE;
  if (width === 0 || height === 0) return NOTHING;
  const round = { rx: cornerRadius(rx, ry, width), ry: cornerRadius(ry, rx, height) };
  return sound([roundedRectangle(x, y, width, height, round.rx, round.ry)]);
}

/** A missing or negative radius takes the other one's value; none is over half the side. */
function cornerRadius(own: number | undefined, other: number | undefined, side: number): number {
  const value = own !== undefined && own >= 0 ? own : other;
  return Math.min(Math.max(0, value ?? 0), side / 2);
}

function roundedRectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  rx: number,
  ry: number,
): Subpath {
  const right = x + width;
  const bottom = y + height;
  const corners = [point(x, y), point(right, y), point(right, bottom), point(x, bottom)];
  if (rx === 0 || ry === 0) return closedThrough(corners);
  const arc = { rx, ry, turn: 0, large: false, sweep: true };
  const edges: readonly (readonly [Point, Point])[] = [
    [point(x + rx, y), point(right - rx, y)],
    [point(right, y + ry), point(right, bottom - ry)],
    [point(right - rx, bottom), point(x + rx, bottom)],
    [point(x, bottom - ry), point(x, y + ry)],
  ];
  const curves = edges.flatMap(([, to], i) => [
    lineTo(to),
    ...arcTo(to, arc, edges[(i + 1) % 4]![0]),
  ]);
  return { start: edges[0]![0], curves, closed: true };
}

const closedThrough = (points: readonly Point[]): Subpath => ({
  start: points[0]!,
  curves: points.slice(1).map(lineTo),
  closed: true,
});

function ellipseShape(element: SvgElement, extent: Extent): Shape {
  const cx = length(element, 'cx', 'x', extent) ?? 0;
  const cy = length(element, 'cy', 'y', extent) ?? 0;
  const circle = element.tag === 'circle';
  const own = {
    rx: length(element, circle ? 'r' : 'rx', circle ? 'both' : 'x', extent),
    ry: length(element, circle ? 'r' : 'ry', circle ? 'both' : 'y', extent),
  };
  const rx = own.rx ?? own.ry ?? 0;
  const ry = own.ry ?? own.rx ?? 0;
  if (unreadable(cx, cy, rx, ry) || rx < 0 || ry < 0) return UNREADABLE;
  if (rx === 0 || ry === 0) return NOTHING;
  const frame = { a: rx, b: 0, c: 0, d: ry, e: cx, f: cy };
  const curves = ellipseCurves(frame, 0, 2 * Math.PI);
  return sound([{ start: point(cx + rx, cy), curves, closed: true }]);
}

function lineShape(element: SvgElement, extent: Extent): Shape {
  const [x1, y1, x2, y2] = (['x1', 'y1', 'x2', 'y2'] as const).map(
    (name) => length(element, name, name.startsWith('x') ? 'x' : 'y', extent) ?? 0,
  ) as [number, number, number, number];
  if (unreadable(x1, y1, x2, y2)) return UNREADABLE;
  return sound([{ start: point(x1, y1), curves: [lineTo(point(x2, y2))], closed: false }]);
}

/** An odd number out is a mistake; the pairs before it are drawn (SVG 1.1, 9.7). */
function polyShape(element: SvgElement): Shape {
  const numbers = readNumbers(attribute(element, 'points') ?? '');
  if (!numbers) return UNREADABLE;
  const points: Point[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) points.push(point(numbers[i]!, numbers[i + 1]!));
  if (points.length < 2) return NOTHING;
  const sub = { ...closedThrough(points), closed: element.tag === 'polygon' };
  return { outline: [sub], flaw: numbers.length % 2 === 0 ? 'none' : 'broken' };
}
