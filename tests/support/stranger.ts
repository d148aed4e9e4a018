/**
 * A stranger with the output files and a tape: sets out every stake by its printed readings, joins
 * them, and measures the result against the art. Shares no code with the engine; imports nothing.
 */

export type Xy = readonly [number, number];

/** RFC 4180: quoted fields, doubled quotes, CRLF or LF. Rows as objects by header. */
export function parseCsv(text: string): Record<string, string>[] {
  const rows: string[][] = [[]];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') field += c;
      else if (text[i + 1] === '"') {
        field += '"';
        i++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      rows[rows.length - 1]!.push(field);
      field = '';
    } else if (c === '\n') {
      rows[rows.length - 1]!.push(field);
      field = '';
      rows.push([]);
    } else if (c !== '\r') field += c;
  }
  const [header, ...body] = rows.filter((row) => row.length > 1 || (row[0] ?? '') !== '');
  return body.map((row) => Object.fromEntries(header!.map((name, i) => [name, row[i] ?? ''])));
}

/** The value in feet of a printed reading: `127' 3 1/4"` or `38.795 m`. */
export function readingFeet(text: string): number {
  const metric = /^(\d+\.\d+) m$/.exec(text);
  if (metric) return Number(metric[1]) / 0.3048;
  const match = /^(\d+)' (\d+)(?: (\d+)\/(\d+))?"$/.exec(text);
  if (!match) throw new Error(`a reading that nobody can pull: ${text}`);
  const fraction = match[3] ? Number(match[3]) / Number(match[4]) : 0;
  return Number(match[1]) + (Number(match[2]) + fraction) / 12;
}

export interface StakeRow {
  readonly stake: string;
  readonly method: 'ties' | 'line' | 'offset' | 'chord';
  readonly from1: string;
  readonly reading1: string;
  readonly from2: string;
  /** Empty for all but `ties`. */
  readonly reading2: string;
  /** Of `offset` and `chord`, else empty. */
  readonly offset: string;
  readonly side: string;
  readonly checkFrom: string;
  readonly checkReading: string;
}

export interface OutlineRow {
  readonly contour: string;
  readonly kind: 'string' | 'swing' | 'bend' | 'circle';
  readonly from: string;
  readonly to: string;
  readonly pin: string;
  readonly radius: string;
  readonly sweep: string;
  /** Of a bend, else empty. */
  readonly offset: string;
  readonly side: string;
}

const minus = (a: Xy, b: Xy): Xy => [a[0] - b[0], a[1] - b[1]];
const length = (a: Xy): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);

/** Where the tapes put the stake, from places already known. */
export function setStake(row: StakeRow, known: ReadonlyMap<string, Xy>): Xy {
  const a = place(known, row.from1, row.stake);
  const b = place(known, row.from2, row.stake);
  const base = minus(b, a);
  const d = length(base);
  const e: Xy = [base[0] / d, base[1] / d];
  if (row.method === 'chord') return squareOff(row, a, e, d / 2);
  const r1 = readingFeet(row.reading1);
  if (row.method === 'offset') return squareOff(row, a, e, r1);
  if (row.method === 'line') {
    const way = { T: 1, A: -1 }[row.side];
    if (way === undefined) throw new Error(`stake ${row.stake}: no such side ${row.side}`);
    return [a[0] + way * r1 * e[0], a[1] + way * r1 * e[1]];
  }
  const r2 = readingFeet(row.reading2);
  const along = (r1 * r1 - r2 * r2 + d * d) / (2 * d);
  const square = r1 * r1 - along * along;
  if (square < 0) throw new Error(`stake ${row.stake}: the tapes do not meet`);
  const left = { L: 1, R: -1 }[row.side];
  if (left === undefined) throw new Error(`stake ${row.stake}: no such side ${row.side}`);
  const off = left * Math.sqrt(square);
  return [a[0] + along * e[0] - off * e[1], a[1] + along * e[1] + off * e[0]];
}

/** `along` feet from a in the direction e, then the row's offset square to it. */
function squareOff(row: StakeRow, a: Xy, e: Xy, along: number): Xy {
  const left = { L: 1, R: -1 }[row.side];
  if (left === undefined) throw new Error(`stake ${row.stake}: no such side ${row.side}`);
  const off = left * readingFeet(row.offset);
  return [a[0] + along * e[0] - off * e[1], a[1] + along * e[1] + off * e[0]];
}

function place(known: ReadonlyMap<string, Xy>, id: string, stake: string): Xy {
  const at = known.get(id);
  if (!at) throw new Error(`stake ${stake} is tied to ${id}, which is not set yet`);
  return at;
}

/** Sets every stake in order; returns all places, controls included. */
export function setOut(fixed: ReadonlyMap<string, Xy>, rows: readonly StakeRow[]): Map<string, Xy> {
  const known = new Map(fixed);
  for (const row of rows) known.set(row.stake, setStake(row, known));
  return known;
}

/** Joins the stakes: one closed ring of short chords per contour. */
export function joinOutline(rows: readonly OutlineRow[], at: ReadonlyMap<string, Xy>): Xy[][] {
  const contours = new Map<string, OutlineRow[]>();
  for (const row of rows) {
    contours.set(row.contour, [...(contours.get(row.contour) ?? []), row]);
  }
  return [...contours.values()].map((pieces) => {
    pieces.forEach((piece, i) => {
      const next = pieces[(i + 1) % pieces.length]!;
      if (piece.to !== next.from) throw new Error(`contour ${piece.contour} is not head to tail`);
    });
    return pieces.flatMap((piece) => drawPiece(piece, at));
  });
}

/** Points of a piece, its last point left to the next piece. */
function drawPiece(row: OutlineRow, at: ReadonlyMap<string, Xy>): Xy[] {
  if (row.kind === 'string') return [place(at, row.from, 'outline')];
  if (row.kind === 'bend') return drawBend(row, at);
  const pin = place(at, row.pin, 'outline');
  const r = readingFeet(row.radius);
  if (row.kind === 'circle') return arc(pin, r, 0, 2 * Math.PI).slice(0, -1);
  const from = place(at, row.from, 'outline');
  const to = place(at, row.to, 'outline');
  const start = Math.atan2(from[1] - pin[1], from[0] - pin[0]);
  const end = Math.atan2(to[1] - pin[1], to[0] - pin[0]);
  const turn = 2 * Math.PI;
  const ccw = (((end - start) % turn) + turn) % turn;
  const sweep = row.sweep === 'ccw' ? ccw : ccw - turn;
  return [from, ...arc(pin, r, start, sweep)];
}

/** The mark square to the middle of the two stakes, left or right facing the second. */
export function bendMark(row: OutlineRow, at: ReadonlyMap<string, Xy>): Xy {
  const a = place(at, row.from, 'outline');
  const b = place(at, row.to, 'outline');
  const d = length(minus(b, a));
  const left = { L: 1, R: -1 }[row.side];
  if (left === undefined) throw new Error(`bend from ${row.from}: no such side ${row.side}`);
  const off = left * readingFeet(row.offset);
  return [
    (a[0] + b[0]) / 2 - (off * (b[1] - a[1])) / d,
    (a[1] + b[1]) / 2 + (off * (b[0] - a[0])) / d,
  ];
}

/** The arc from stake to stake through the mark: the circle about the three, by its equations. */
function drawBend(row: OutlineRow, at: ReadonlyMap<string, Xy>): Xy[] {
  const [a, m, b] = [
    place(at, row.from, 'outline'),
    bendMark(row, at),
    place(at, row.to, 'outline'),
  ];
  const [p, q] = [minus(m, a), minus(b, a)];
  const det = 2 * (p[0] * q[1] - p[1] * q[0]);
  const [pp, qq] = [p[0] * p[0] + p[1] * p[1], q[0] * q[0] + q[1] * q[1]];
  const c: Xy = [a[0] + (q[1] * pp - p[1] * qq) / det, a[1] + (p[0] * qq - q[0] * pp) / det];
  const bearing = (z: Xy): number => Math.atan2(z[1] - c[1], z[0] - c[0]);
  const turn = 2 * Math.PI;
  const ahead = (z: Xy): number => (((bearing(z) - bearing(a)) % turn) + turn) % turn;
  const sweep = ahead(m) < ahead(b) ? ahead(b) : ahead(b) - turn;
  return arc(c, length(minus(a, c)), bearing(a), sweep).slice(0, -1);
}

function arc(pin: Xy, r: number, start: number, sweep: number): Xy[] {
  const n = Math.max(2, Math.ceil((Math.abs(sweep) * r) / 0.05));
  return Array.from({ length: n + 1 }, (_, i): Xy => {
    const a = start + (sweep * i) / n;
    return [pin[0] + r * Math.cos(a), pin[1] + r * Math.sin(a)];
  });
}

/** Area, and area shared, of two even-odd figures, by fine scan lines. */
export function compareAreas(
  a: readonly (readonly Xy[])[],
  b: readonly (readonly Xy[])[],
  step = 0.02,
): { readonly a: number; readonly b: number; readonly both: number } {
  const ys = [...a, ...b].flat().map((p) => p[1]);
  const low = ys.reduce((m, y) => Math.min(m, y), Infinity);
  const high = ys.reduce((m, y) => Math.max(m, y), -Infinity);
  const rows = Math.ceil((high - low) / step);
  const inA = spans(a, low, step, rows);
  const inB = spans(b, low, step, rows);
  let areaA = 0;
  let areaB = 0;
  let both = 0;
  for (let i = 0; i < rows; i++) {
    areaA += covered(inA[i]!) * step;
    areaB += covered(inB[i]!) * step;
    both += shared(inA[i]!, inB[i]!) * step;
  }
  return { a: areaA, b: areaB, both };
}

function spans(rings: readonly (readonly Xy[])[], low: number, step: number, rows: number) {
  const cuts: number[][] = Array.from({ length: rows }, () => []);
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [from, to] = p[1] < q[1] ? [p, q] : [q, p];
      const first = Math.max(0, Math.ceil((from[1] - low) / step - 0.5));
      for (let k = first; k < rows; k++) {
        const y = low + (k + 0.5) * step;
        if (y >= to[1]) break;
        cuts[k]!.push(from[0] + ((to[0] - from[0]) * (y - from[1])) / (to[1] - from[1]));
      }
    });
  }
  for (const row of cuts) row.sort((x, y) => x - y);
  return cuts;
}

const covered = (row: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i + 1 < row.length; i += 2) sum += row[i + 1]! - row[i]!;
  return sum;
};

function shared(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < a.length; i += 2) {
    for (let j = 0; j + 1 < b.length; j += 2) {
      sum += Math.max(0, Math.min(a[i + 1]!, b[j + 1]!) - Math.max(a[i]!, b[j]!));
    }
  }
  return sum;
}

export const perimeter = (rings: readonly (readonly Xy[])[]): number =>
  rings.reduce(
    (n, ring) =>
      n + ring.reduce((m, p, i) => m + length(minus(ring[(i + 1) % ring.length]!, p)), 0),
    0,
  );

/** Largest distance from any point of `from`'s outline to `to`'s outline, feet. */
export function largestGap(
  from: readonly (readonly Xy[])[],
  to: readonly (readonly Xy[])[],
): number {
  const cell = 2;
  const grid = new Map<string, [Xy, Xy][]>();
  const key = (x: number, y: number): string => `${Math.floor(x / cell)},${Math.floor(y / cell)}`;
  for (const [p, q] of edges(to, cell / 2)) {
    for (const k of new Set([key(p[0], p[1]), key(q[0], q[1])])) {
      grid.set(k, [...(grid.get(k) ?? []), [p, q]]);
    }
  }
  let worst = 0;
  for (const [p] of edges(from, 0.1)) {
    let best = Infinity;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const [a, b] of grid.get(key(p[0] + dx * cell, p[1] + dy * cell)) ?? []) {
          best = Math.min(best, toSegment(p, a, b));
        }
      }
    }
    worst = Math.max(worst, best);
  }
  return worst;
}

/** The rings' edges, cut to at most `step`. */
function edges(rings: readonly (readonly Xy[])[], step: number): [Xy, Xy][] {
  return rings.flatMap((ring) =>
    ring.flatMap((p, i): [Xy, Xy][] => {
      const q = ring[(i + 1) % ring.length]!;
      const n = Math.max(1, Math.ceil(length(minus(q, p)) / step));
      const at = (k: number): Xy => [
        p[0] + ((q[0] - p[0]) * k) / n,
        p[1] + ((q[1] - p[1]) * k) / n,
      ];
      return Array.from({ length: n }, (_, k): [Xy, Xy] => [at(k), at(k + 1)]);
    }),
  );
}

function toSegment(p: Xy, a: Xy, b: Xy): number {
  const d = minus(b, a);
  const l2 = d[0] * d[0] + d[1] * d[1];
  const v = minus(p, a);
  const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, (v[0] * d[0] + v[1] * d[1]) / l2));
  return length([p[0] - a[0] - t * d[0], p[1] - a[1] - t * d[1]]);
}
