/** The customary grid, on request: square strings over the graphic and where the outline crosses each. */
import { roundReading, type LengthSystem, type Reading } from '../base/quantity';
import type { Feet } from '../base/units';
import type { Point } from '../geometry/point';
import { regionBox, type Region } from '../geometry/region';

/** `up`: away from home plate, along the centre line; `across`: square to it. */
export interface GridString {
  /** U1, U2 … from the left; A1, A2 … from the nearest. */
  readonly name: string;
  readonly way: 'up' | 'across';
  /** Right of the centre line (left: negative), or beyond home plate along it, feet. */
  readonly atFt: Feet;
  /** From the string that all of its marks are measured from: A1 for `up`, U1 for `across`. */
  readonly marks: readonly Reading[];
}

export interface GridSheet {
  readonly spacingFt: Feet;
  /** The grid's edges: the first `up` string and the first `across` string, and the last ones. */
  readonly leftFt: Feet;
  readonly rightFt: Feet;
  readonly nearFt: Feet;
  readonly farFt: Feet;
  readonly strings: readonly GridString[];
}

/**
 * Strings `spacingFt` apart, one on the line through home plate and second base, one through home plate's
 * point square to it, and as many each way as cover the graphic. Null without a graphic.
 */
export function gridSheet(
  graphic: Region,
  spacingFt: Feet,
  system: LengthSystem,
): GridSheet | null {
  const box = regionBox(graphic);
  if (!box) return null;
  const below = (v: number) => Math.floor(v / spacingFt) * spacingFt;
  const above = (v: number) => Math.ceil(v / spacingFt) * spacingFt;
  const [leftFt, rightFt] = [below(box.minX), above(box.maxX)];
  const [nearFt, farFt] = [below(box.minY), above(box.maxY)];
  const up = stations(leftFt, rightFt, spacingFt).map((atFt, i): GridString => {
    const marks = crossings(graphic, (p) => ({ over: p.x, along: p.y }), atFt);
    return stringOf(`U${i + 1}`, 'up', atFt, marks, nearFt, system);
  });
  const across = stations(nearFt, farFt, spacingFt).map((atFt, i): GridString => {
    const marks = crossings(graphic, (p) => ({ over: p.y, along: p.x }), atFt);
    return stringOf(`A${i + 1}`, 'across', atFt, marks, leftFt, system);
  });
  return { spacingFt, leftFt, rightFt, nearFt, farFt, strings: [...up, ...across] };
}

const stations = (from: Feet, to: Feet, step: Feet): Feet[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

function stringOf(
  name: string,
  way: GridString['way'],
  atFt: Feet,
  marks: readonly Feet[],
  fromFt: Feet,
  system: LengthSystem,
): GridString {
  return { name, way, atFt, marks: marks.map((m) => roundReading(m - fromFt, system)) };
}

interface Turned {
  readonly over: Feet;
  readonly along: Feet;
}

/** Where the outline passes from one side of the string to the other, rising. */
function crossings(graphic: Region, turn: (p: Point) => Turned, atFt: Feet): Feet[] {
  const out: Feet[] = [];
  for (const ring of graphic) {
    ring.forEach((p, i) => {
      const a = turn(p);
      const b = turn(ring[(i + 1) % ring.length]!);
      if (a.over > atFt === b.over > atFt) return;
      out.push(a.along + ((atFt - a.over) / (b.over - a.over)) * (b.along - a.along));
    });
  }
  return out.sort((p, q) => p - q);
}
