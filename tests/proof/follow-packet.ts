/** Crews that have the printed packet alone, and how near to the true art they paint. */
import { drawCauses, fieldOf, newDay, seeded, workThrough } from '../support/field-crew';
import { paint, type Dot, type PaintedStake } from '../support/draw-as-set';
import { nearLine, type Edge } from '../support/near-line';
import type { Xy } from '../support/stranger';
import { artOf, ellipsesOf, errorsOf, summaryOf, type Files } from './read-job';
import { readCrewList } from './read-packet';

export interface CrewTally {
  readonly crews: number;
  /** All of the outline within tolerance + 1.7 × the local 95 % semi-major. */
  readonly within: number;
  /** Largest gap of each crew, in that measure: 1 is just within. */
  readonly worst: readonly number[];
}

/** What issue and sheets promise beside the tolerance. */
const ELLIPSES = 1.7;
/** A stake over its limit is pulled again, at most so often. */
const REPULLS = 3;

export function followPacket(
  lines: readonly string[],
  files: Files,
  crews: number,
  seed: number,
): CrewTally {
  const list = readCrewList(lines);
  const errors = errorsOf(files);
  const field = fieldOf({ ...list, ...errors });
  const semiMajors = new Map(
    ellipsesOf(files).map((e, k) => [field.rows[k]!.stake, e.semiMajorIn]),
  );
  const art = artOf(files);
  const trueLine = nearLine(art.flatMap(ringEdges));
  const artPoints = art.flatMap(halfFeet);
  const tolerance = summaryOf(files).tolerance_in;
  const noise = seeded(seed);
  const day = newDay(field);
  const worst: number[] = [];
  for (let n = 0; n < crews; n++) {
    const z = drawCauses(field, noise);
    workThrough(field, z, day, null, { noise, times: REPULLS });
    const stakes = new Map(
      field.rows.map((row, k): [string, PaintedStake] => {
        const i = field.sheet.fixed.length + k;
        const at: Xy = [day.x[i]!, day.y[i]!];
        return [row.stake, { at, semiMajorIn: semiMajors.get(row.stake)! }];
      }),
    );
    const tape = errors.tapes[0]!;
    const brush = { noise, tape, scale: z[0]! * tape.scale, squareDeg: errors.squareDeg };
    const painted = paint(list.outline, stakes, brush);
    const allowed = (localIn: number) => tolerance + ELLIPSES * localIn;
    worst.push(
      Math.max(
        worstDot(painted.flat(), trueLine, allowed),
        worstPlace(artPoints, painted, allowed),
      ),
    );
  }
  return { crews, within: worst.filter((w) => w <= 1).length, worst };
}

type Line = ReturnType<typeof nearLine>;
type Allowed = (localIn: number) => number;

/** Painted dots against the art. */
function worstDot(dots: readonly Dot[], art: Line, allowed: Allowed): number {
  return dots.reduce(
    (most, d) => Math.max(most, (12 * art.nearest(d.x, d.y).distance) / allowed(d.localIn)),
    0,
  );
}

/** Places of the art against what is painted: nothing of it is left out. */
function worstPlace(
  places: readonly Xy[],
  painted: readonly (readonly Dot[])[],
  allowed: Allowed,
): number {
  const dots = painted.flat();
  let first = 0;
  const edges = painted.flatMap((ring) => {
    const start = first;
    first += ring.length;
    return ring.map((p, i): Edge => {
      const q = ring[(i + 1) % ring.length]!;
      return { ax: p.x, ay: p.y, bx: q.x, by: q.y, tag: start + i };
    });
  });
  const line = nearLine(edges);
  return places.reduce((most, [x, y]) => {
    const { distance, tag } = line.nearest(x, y);
    if (tag < 0) return Infinity;
    return Math.max(most, (12 * distance) / allowed(dots[tag]!.localIn));
  }, 0);
}

const ringEdges = (ring: readonly Xy[]): Edge[] =>
  ring.map((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return { ax: p[0], ay: p[1], bx: q[0], by: q[1], tag: 0 };
  });

/** Places along a ring, half a foot apart or less. */
const halfFeet = (ring: readonly Xy[]): Xy[] =>
  ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const n = Math.max(1, Math.ceil(2 * Math.hypot(q[0] - p[0], q[1] - p[1])));
    return Array.from({ length: n }, (_, k): Xy => [
      p[0] + ((q[0] - p[0]) * k) / n,
      p[1] + ((q[1] - p[1]) * k) / n,
    ]);
  });
