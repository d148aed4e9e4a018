/** Letters and parts of the outline: a contour with the holes in it. */
import type { Point } from '../geometry/point';
import { ringContains, ringSignedArea } from '../geometry/polyline';
import type { Contour, OutlinePiece, StakePlan } from '../stakeout/model';
import { pieceLine } from './draw-outline';
import { standingPoints } from './kit';

export interface OutlinePart {
  readonly graphic: string;
  readonly contours: readonly Contour[];
}

/** Parts in the order of their first contours; a graphic keeps its parts together. */
export function outlineParts(stakes: StakePlan): OutlinePart[] {
  const at = standingPoints(stakes);
  const rings = new Map(
    stakes.contours.map((contour) => [
      contour,
      contour.pieces.flatMap((piece) => pieceLine(piece, at).slice(0, -1)),
    ]),
  );
  const graphics = [...new Set(stakes.contours.map((contour) => contour.graphic))];
  return graphics.flatMap((graphic) => {
    const contours = stakes.contours.filter((contour) => contour.graphic === graphic);
    const heads = new Map(contours.map((one) => [one, headOf(one, contours, rings)]));
    const order = [...new Set(heads.values())];
    return order.map((head) => ({
      graphic,
      contours: contours.filter((one) => heads.get(one) === head),
    }));
  });
}

/** The largest contour round this one, or itself. */
function headOf(
  one: Contour,
  contours: readonly Contour[],
  rings: ReadonlyMap<Contour, readonly Point[]>,
): Contour {
  const ring = (contour: Contour) => rings.get(contour)!;
  const size = (contour: Contour) => Math.abs(ringSignedArea(ring(contour)));
  const start = ring(one)[0]!;
  const round = contours.filter((other) => other !== one && ringContains(ring(other), start));
  return round.reduce((best, other) => (size(other) > size(best) ? other : best), one);
}

/** Stakes and pins that a part's pieces name, each once. */
export const partStakes = (part: OutlinePart): string[] => [
  ...new Set(part.contours.flatMap((contour) => contour.pieces.flatMap(pieceStakes))),
];

const pieceStakes = (piece: OutlinePiece): string[] => [
  ...('from' in piece ? [piece.from, piece.to] : []),
  ...('pin' in piece ? [piece.pin] : []),
];
