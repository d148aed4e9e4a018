/** The outline of strings, swings, bends and circles as the path of a picture (SVG path data). */
import type { Point } from '../geometry/point';
import type { CrewLine } from '../exchange/crew-data';

/** From the field (tape steps, y up) to the picture (y down): turned, moved and scaled alike. */
export type ToScreen = (p: Point) => Point;

/** A point of a path, to a tenth of a dot. */
export const spot = (p: Point): string => `${p.x.toFixed(1)} ${p.y.toFixed(1)}`;

/** Pieces between stakes whose places are known; empty when there are none. */
export function outlinePath(
  lines: readonly CrewLine[],
  at: ReadonlyMap<string, Point>,
  screen: ToScreen,
): string {
  // A piece that goes on where the one before ended belongs to the same filled shape.
  return lines
    .map((line, i) => {
      const path = linePath(line, at, screen);
      const goesOn = line.from !== '' && lines[i - 1]?.to === line.from;
      return goesOn ? path.replace(/^M[^LA]*/, '') : path;
    })
    .join('');
}

function linePath(line: CrewLine, at: ReadonlyMap<string, Point>, screen: ToScreen): string {
  const [from, to, pin] = [line.from, line.to, line.pin].map((id) => at.get(id));
  const scale = scaleOf(screen);
  if (line.kind === 'circle') return pin ? circlePath(screen(pin), line.steps * scale) : '';
  if (!from || !to) return '';
  const start = `M${spot(screen(from))}`;
  const end = spot(screen(to));
  const radius = radiusOf(line, from, to) * scale;
  if (radius === 0) return `${start}L${end}`;
  // A curve that bulges to its left, going on, turns clockwise.
  const clockwise = line.turn === 'cw' || line.turn === 'L';
  return `${start}A${radius.toFixed(1)} ${radius.toFixed(1)} 0 0 ${clockwise ? 1 : 0} ${end}`;
}

/** Radius in tape steps; 0 for a string. */
function radiusOf(line: CrewLine, from: Point, to: Point): number {
  if (line.kind === 'string' || line.steps === 0) return 0;
  if (line.kind === 'swing') return line.steps;
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  return (half * half + line.steps * line.steps) / (2 * line.steps);
}

function scaleOf(screen: ToScreen): number {
  const a = screen({ x: 0, y: 0 });
  const b = screen({ x: 1000, y: 0 });
  return Math.hypot(b.x - a.x, b.y - a.y) / 1000;
}

const circlePath = (c: Point, r: number): string =>
  `M${spot({ x: c.x - r, y: c.y })}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
