/** The same radii and offsets for contours of one shape, where the printed stakes allow them. */
import type { LengthSystem, Reading } from '../base/quantity';
import { pointDistance } from '../geometry/point';
import type { Likeness } from './congruent-contours';
import type { DraftContour } from './draft-outline';
import {
  joinContour,
  type JoinedContour,
  type JoinedPiece,
  type JoinedStake,
} from './join-outline';
import { LONGEST_STEP_FT } from './limits';
import type { OutlinePiece } from './model';
import { readingStepFt } from './ties';

/** A common reading is at most this many steps of the tape off a piece's own. */
const MOST_STEPS = 2;

/** Every contour joined, with common readings for those of one shape. */
export function joinOutline(
  contours: readonly DraftContour[],
  printed: readonly (JoinedStake | undefined)[],
  system: LengthSystem,
): JoinedContour[] {
  const joined = contours.map((c) => joinContour(c, printed, system));
  return shareReadings(
    joined,
    contours.map((c) => c.like),
    system,
  );
}

/** Gives the pieces of contours that are alike one reading each; the others stay as they are. */
function shareReadings(
  joined: readonly JoinedContour[],
  likes: readonly (Likeness | null)[],
  system: LengthSystem,
): JoinedContour[] {
  const most = (MOST_STEPS + 0.01) * readingStepFt(system);
  const out = [...joined];
  likes.forEach((like, i) => {
    if (like) return;
    const group = [i, ...likes.flatMap((l, k) => (l?.of === i && alike(out, i, k, l) ? [k] : []))];
    if (group.length > 1) shareGroup(out, group, likes, most);
  });
  return out;
}

const piecesOf = (c: JoinedContour | undefined): readonly JoinedPiece[] => (c?.ok ? c.pieces : []);

/** Whether contour k has the pieces of contour i, kind by kind; a mirrored one runs the other way. */
function alike(
  joined: readonly JoinedContour[],
  i: number,
  k: number,
  { mirrored }: Likeness,
): boolean {
  const [a, b] = [piecesOf(joined[i]), piecesOf(joined[k])];
  if (a.length === 0 || a.length !== b.length) return false;
  return a.every((p, n) => p.piece.kind === b[mirrored ? b.length - 1 - n : n]!.piece.kind);
}

function shareGroup(
  joined: JoinedContour[],
  group: readonly number[],
  likes: readonly (Likeness | null)[],
  most: number,
): void {
  const lists = group.map((k) => [...piecesOf(joined[k])]);
  const at = (g: number, n: number) => (likes[group[g]!]?.mirrored ? lists[g]!.length - 1 - n : n);
  lists[0]!.forEach((_, n) => {
    const pieces = lists.map((list, g) => list[at(g, n)]!);
    const common = commonReading(pieces, most);
    if (common) pieces.forEach((p, g) => (lists[g]![at(g, n)] = withReading(p, common)));
  });
  group.forEach((k, g) => (joined[k] = { ok: true, pieces: lists[g]! }));
}

/** The reading of one of them that suits all, the nearest to the others; null when none does. */
function commonReading(pieces: readonly JoinedPiece[], most: number): Reading | null {
  let best: Reading | null = null;
  let least = Infinity;
  for (const reading of pieces.map((p) => readingOf(p.piece))) {
    if (!reading) return null;
    const off = Math.max(...pieces.map((p) => offBy(p, reading)));
    if (off > most || off >= least) continue;
    least = off;
    best = reading;
  }
  return best;
}

const readingOf = (piece: OutlinePiece): Reading | null => {
  if (piece.kind === 'string') return null;
  return piece.kind === 'bend' ? piece.offset : piece.radius;
};

/** How far the reading is from the piece's own; infinite where its stakes do not allow it. */
function offBy({ piece, from, to, pin }: JoinedPiece, { ft }: Reading): number {
  const fits =
    piece.kind === 'bend'
      ? ft <= pointDistance(from, to) / 2
      : piece.kind === 'circle' ||
        [from, to].every((end) => Math.abs(pointDistance(pin!, end) - ft) <= LONGEST_STEP_FT);
  return fits ? Math.abs(ft - readingOf(piece)!.ft) : Infinity;
}

function withReading(joined: JoinedPiece, reading: Reading): JoinedPiece {
  const { piece } = joined;
  if (piece.kind === 'string') return joined;
  const changed =
    piece.kind === 'bend' ? { ...piece, offset: reading } : { ...piece, radius: reading };
  return { ...joined, piece: changed };
}

/** Which contours have every piece and reading of the one they are like. */
export function sharedShapes(
  joined: readonly JoinedContour[],
  likes: readonly (Likeness | null)[],
): (Likeness | null)[] {
  return likes.map((like, k) => {
    if (!like || !alike(joined, like.of, k, like)) return null;
    const [a, b] = [piecesOf(joined[like.of]), piecesOf(joined[k])];
    const same = a.every((p, n) => {
      const other = b[like.mirrored ? b.length - 1 - n : n]!;
      return readingOf(p.piece)?.ft === readingOf(other.piece)?.ft;
    });
    return same ? like : null;
  });
}
