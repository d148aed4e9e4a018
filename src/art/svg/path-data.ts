/** The `d` attribute: every path command to lines and cubic curves. */
import svgpath from 'svgpath';
import { degrees } from '../../base/units';
import { point, type Point } from '../../geometry/point';
import { cubicTo, lineTo, quadraticTo, type Curve, type Outline, type Subpath } from '../outline';
import { arcTo } from './elliptical-arc';
import { isSane } from './numbers';

export interface PathData {
  readonly outline: Outline;
  /** The path had a mistake; the outline stops there, as SVG 1.1 F.2 asks. */
  readonly broken: boolean;
}

/** Reads path data; a mistake ends the outline at the last whole command. */
export function readPathData(d: string): PathData {
  if (d.trim() === '' || d.trim() === 'none') return { outline: [], broken: false };
  const path = svgpath(d);
  // svgpath reports a mistake in `err`, which its types leave out.
  let broken = (path as unknown as { readonly err: string }).err !== '';
  const pen = createPen();
  path
    .abs()
    .unshort()
    .iterate((segment, _, x, y) => {
      const [command, ...values] = segment as [string, ...number[]];
      if (broken && !values.every(isSane)) return;
      if (values.every(isSane)) drawSegment(pen, command, values, point(x, y));
      else broken = true;
    });
  return { outline: pen.finish(), broken };
}

interface Pen {
  move(to: Point): void;
  draw(from: Point, curves: readonly Curve[]): void;
  close(): void;
  finish(): Subpath[];
}

function createPen(): Pen {
  const subs: Subpath[] = [];
  let start: Point | null = null;
  let curves: Curve[] = [];
  const end = (closed: boolean): void => {
    if (start && (closed || curves.length > 0)) subs.push({ start, curves, closed });
    start = null;
    curves = [];
  };
  return {
    move(to) {
      end(false);
      start = to;
    },
    draw(from, next) {
      start ??= from;
      curves.push(...next);
    },
    close: () => end(true),
    finish() {
      end(false);
      return subs;
    },
  };
}

function drawSegment(pen: Pen, command: string, n: readonly number[], at: Point): void {
  const end = point(n[n.length - 2] ?? at.x, n[n.length - 1] ?? at.y);
  if (command === 'M') pen.move(end);
  else if (command === 'Z' || command === 'z') pen.close();
  else pen.draw(at, curvesOf(command, n, at, end));
}

function curvesOf(command: string, n: readonly number[], at: Point, end: Point): Curve[] {
  const [n0 = 0, n1 = 0, n2 = 0, n3 = 0] = n;
  switch (command) {
    case 'H':
      return [lineTo(point(n0, at.y))];
    case 'V':
      return [lineTo(point(at.x, n0))];
    case 'C':
      return [cubicTo(point(n0, n1), point(n2, n3), end)];
    case 'Q':
      return [quadraticTo(at, point(n0, n1), end)];
    case 'A': {
      const flags = { large: n3 !== 0, sweep: n[4] !== 0 };
      return arcTo(at, { rx: n0, ry: n1, turn: degrees(n2), ...flags }, end);
    }
    default:
      return [lineTo(end)];
  }
}
