/** How much line is drawn on the turf. */
import { invariant } from '../base/result';
import type { Feet } from '../base/units';
import { arcBetween, segmentLength } from '../geometry/arc';
import { pointDistance, type Point } from '../geometry/point';
import { bendArc } from '../stakeout/bend';
import type { OutlinePiece, StakePlan } from '../stakeout/model';

/** Length of all strings, swings, bends and circles as set out. */
export const outlineDrawnFt = (stakes: StakePlan): Feet =>
  outlinePieceFts(stakes).reduce((sum, ft) => sum + ft, 0);

/** Length of every piece of the outline as set out, contour by contour. */
export function outlinePieceFts(stakes: StakePlan): Feet[] {
  const places = new Map<string, Point>();
  for (const { id, at } of [...stakes.controls, ...stakes.stakes]) places.set(id, at);
  const place = (id: string): Point => {
    const at = places.get(id);
    invariant(at, `outline names stake ${id}, which is not in the plan`);
    return at;
  };
  const pieces = stakes.contours.flatMap((contour) => contour.pieces);
  return pieces.map((piece) => pieceLength(piece, place));
}

function pieceLength(piece: OutlinePiece, place: (id: string) => Point): Feet {
  if (piece.kind === 'circle') return 2 * Math.PI * piece.radius.ft;
  const from = place(piece.from);
  const to = place(piece.to);
  if (piece.kind === 'string') return pointDistance(from, to);
  if (piece.kind === 'bend') {
    return segmentLength(bendArc(from, to, piece.offset.ft, piece.side));
  }
  return segmentLength(arcBetween(place(piece.pin), from, to, piece.sweep === 'ccw' ? 1 : -1));
}
