/**
 * A crew on the grass with tapes that err: sets every stake of a printed list in order and pulls every
 * printed check, with or without one planted slip. Knows the list and the errors of taping, nothing of
 * how the list was made; shares no code with the engine. Feet, and inches where the name says so.
 */

export interface Noise {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
  /** 0 to below − 1. */
  below(n: number): number;
}

/** The generator sfc32 (C. Doty-Humphrey, PractRand, public domain) with the polar method's normals. */
export function seeded(seed: number): Noise {
  let [a, b, c, d] = [0x9e3779b9, 0x243f6a88, seed | 0, 1];
  let spare = NaN;
  const uniform = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 20; i++) uniform();
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const last = spare;
      spare = NaN;
      return last;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s === 0 || s >= 1) continue;
      const k = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * k;
      return u * k;
    }
  };
  return { uniform, normal, below: (n) => Math.floor(uniform() * n) };
}

/** Chance that a standard normal is below x (Abramowitz & Stegun 26.2.17, error under 7.5e-8). */
export function normalBelow(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const series =
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (series * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
  return x > 0 ? 1 - tail : tail;
}

/** One sigma each. */
export interface TapeErrors {
  readonly readingIn: number;
  readonly proportional: number;
  /** One error for all pulls with that tape. */
  readonly scale: number;
}

export interface FixedMark {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Per coordinate. */
  readonly sigmaIn: number;
}

export type Method = 'ties' | 'line' | 'offset' | 'chord';

export interface SetRow {
  readonly stake: string;
  readonly kind: string;
  readonly method: Method;
  readonly from1: string;
  readonly from2: string;
  /** Of `ties`, `line` and `offset`, else 0. */
  readonly first: number;
  /** Of `ties`, else 0. */
  readonly second: number;
  /** Of `offset` and `chord`, else 0. */
  readonly offset: number;
  /** L or R; T (toward) or A (away) on a line. */
  readonly side: string;
  readonly checkFrom: string;
  readonly check: number;
  readonly limitIn: number;
  /** 0 or 1: which kind of tape. */
  readonly tape1: number;
  readonly tape2: number;
  readonly checkTape: number;
}

export interface JobSheet {
  readonly fixed: readonly FixedMark[];
  readonly rows: readonly SetRow[];
  readonly tapes: readonly TapeErrors[];
  /** Of a right angle laid on the grass. */
  readonly squareDeg: number;
}

/** What went wrong at one row. */
export type Slip =
  | {
      readonly kind: 'reading';
      readonly row: number;
      readonly which: 'first' | 'second' | 'offset' | 'check';
      readonly byFt: number;
    }
  | { readonly kind: 'swapped'; readonly row: number }
  | { readonly kind: 'side'; readonly row: number }
  /** An offset's distance along taken from the other end; its side as before, or as seen from there. */
  | { readonly kind: 'end'; readonly row: number; readonly sameSide: boolean }
  /** A tape or string held at another mark than the one named first or second. */
  | { readonly kind: 'held'; readonly row: number; readonly end: 1 | 2; readonly instead: number };

/** Marks are numbered: fixed ones first, then the rows. */
export interface Field {
  readonly sheet: JobSheet;
  readonly ids: readonly string[];
  readonly rows: readonly (SetRow & {
    readonly a: number;
    readonly b: number;
    readonly c: number;
  })[];
  /** Numbers of unit variance that a day is made of. */
  readonly causes: number;
  /** Where the list puts every mark when nothing errs. */
  readonly plannedX: Float64Array;
  readonly plannedY: Float64Array;
}

/** A day's true places, and every check's reading less the printed one, inches. */
export interface Day {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly offIn: Float64Array;
  /** Row whose tapes do not meet, so that work stops there; −1: none. */
  stuck: number;
}

const PER_ROW = 5;

export function fieldOf(sheet: JobSheet): Field {
  const ids = [...sheet.fixed.map((f) => f.id), ...sheet.rows.map((r) => r.stake)];
  const number = new Map(ids.map((id, i) => [id, i]));
  const named = (id: string, row: SetRow): number => {
    const i = number.get(id);
    if (i === undefined) throw new Error(`stake ${row.stake} names ${id}, which is nowhere`);
    return i;
  };
  const rows = sheet.rows.map((r, i) => {
    const [a, b, c] = [named(r.from1, r), named(r.from2, r), named(r.checkFrom, r)];
    if (Math.max(a, b, c) >= sheet.fixed.length + i) {
      throw new Error(`stake ${r.stake} names a mark that does not stand yet`);
    }
    return { ...r, a, b, c };
  });
  const causes = sheet.tapes.length + 2 * sheet.fixed.length + PER_ROW * rows.length;
  const [plannedX, plannedY] = [new Float64Array(ids.length), new Float64Array(ids.length)];
  const field: Field = { sheet, ids, rows, causes, plannedX, plannedY };
  const offIn = new Float64Array(rows.length);
  const day: Day = { x: plannedX, y: plannedY, offIn, stuck: -1 };
  workThrough(field, new Float64Array(causes), day);
  if (day.stuck >= 0) throw new Error(`stake ${rows[day.stuck]!.stake}: its tapes do not meet`);
  return field;
}

export const newDay = (field: Field): Day => ({
  x: new Float64Array(field.ids.length),
  y: new Float64Array(field.ids.length),
  offIn: new Float64Array(field.rows.length),
  stuck: -1,
});

export function drawCauses(field: Field, noise: Noise): Float64Array {
  return Float64Array.from({ length: field.causes }, () => noise.normal());
}

/** A crew that obeys its checks: over the limit, everything of that stake is pulled again. */
export interface Repull {
  readonly noise: Noise;
  /** After so many times the stake is left where it is. */
  readonly times: number;
}

/** Works through the list with the errors `z`; fills `day`. */
export function workThrough(
  field: Field,
  z: Float64Array,
  day: Day,
  slip: Slip | null = null,
  repull: Repull | null = null,
): void {
  const { fixed, tapes } = field.sheet;
  day.stuck = -1;
  fixed.forEach((f, i) => {
    day.x[i] = f.x + (z[tapes.length + 2 * i]! * f.sigmaIn) / 12;
    day.y[i] = f.y + (z[tapes.length + 2 * i + 1]! * f.sigmaIn) / 12;
  });
  for (let k = 0; k < field.rows.length; k++) {
    const here = slip?.row === k ? slip : null;
    for (let tries = 0; ; tries++) {
      if (!setRow(field, k, z, day, here)) {
        day.stuck = k;
        return;
      }
      if (!repull || tries >= repull.times) break;
      if (Math.abs(day.offIn[k]!) <= field.rows[k]!.limitIn) break;
      const start = firstCause(field, k);
      for (let i = 0; i < PER_ROW; i++) z[start + i] = repull.noise.normal();
    }
  }
}

const firstCause = ({ sheet }: Field, k: number): number =>
  sheet.tapes.length + 2 * sheet.fixed.length + PER_ROW * k;

/** Sets row k's stake and pulls its check; false when its tapes do not meet. */
function setRow(field: Field, k: number, z: Float64Array, day: Day, slip: Slip | null): boolean {
  const { tapes, squareDeg, fixed } = field.sheet;
  const row = field.rows[k]!;
  const z0 = firstCause(field, k);
  const error = (cause: number, tape: number, ft: number): number => {
    const { readingIn, proportional } = tapes[tape]!;
    return z[z0 + cause]! * Math.hypot(readingIn / 12, proportional * ft);
  };
  /** True distance at which the tape shows `ft`. */
  const pull = (cause: number, tape: number, ft: number): number =>
    ft * (1 + z[tape]! * tapes[tape]!.scale) + error(cause, tape, Math.abs(ft));
  let { a, b, first, second, offset } = row;
  let turned = row.side === 'L' || row.side === 'T' ? 1 : -1;
  let misread = 0;
  if (slip?.kind === 'reading') {
    if (slip.which === 'first') first += slip.byFt;
    else if (slip.which === 'second') second += slip.byFt;
    else if (slip.which === 'offset') offset += slip.byFt;
    else misread = slip.byFt;
  } else if (slip?.kind === 'swapped') [first, second] = [second, first];
  else if (slip?.kind === 'side') turned = -turned;
  else if (slip?.kind === 'end') {
    [a, b] = [b, a];
    if (slip.sameSide) turned = -turned;
  } else if (slip?.kind === 'held' && slip.end === 1) a = slip.instead;
  else if (slip?.kind === 'held') b = slip.instead;
  const [ax, ay] = [day.x[a]!, day.y[a]!];
  const [dx, dy] = [day.x[b]! - ax, day.y[b]! - ay];
  const base = Math.hypot(dx, dy);
  const [ex, ey] = [dx / base, dy / base];
  let along: number;
  let across: number;
  if (row.method === 'ties') {
    const r1 = pull(0, row.tape1, first);
    const r2 = pull(1, row.tape2, second);
    along = (r1 * r1 - r2 * r2 + base * base) / (2 * base);
    const square = r1 * r1 - along * along;
    if (square < 0 || r1 < 0 || r2 < 0) return false;
    across = turned * Math.sqrt(square);
  } else if (row.method === 'line') {
    along = turned * pull(0, row.tape1, first);
    // Sighting past two marks: a quarter inch and one part in 4000 of the distance.
    across = z[z0 + 1]! * Math.hypot(0.25 / 12, first / 4000);
  } else {
    // A chord is read whole and half of it pulled back: the tape's scale cancels.
    const reach =
      row.method === 'chord'
        ? base / 2 + error(0, row.tape1, base) / 2 + error(3, row.tape1, base / 2)
        : pull(0, row.tape1, first);
    const out = turned * pull(1, row.tape1, offset);
    const skew = (z[z0 + 2]! * squareDeg * Math.PI) / 180;
    along = reach - out * Math.sin(skew);
    across = out * Math.cos(skew);
  }
  const i = fixed.length + k;
  day.x[i] = ax + along * ex - across * ey;
  day.y[i] = ay + along * ey + across * ex;
  const distance = Math.hypot(day.x[i] - day.x[row.c]!, day.y[i] - day.y[row.c]!);
  day.offIn[k] =
    12 * (tapeShows(field, z, row.checkTape, distance, z[z0 + 4]!) + misread - row.check);
  return true;
}

/** What the tape shows over a true distance, `unit` being this pull's error. */
export function tapeShows(
  field: Field,
  z: Float64Array,
  tape: number,
  distance: number,
  unit: number,
): number {
  const { readingIn, proportional, scale } = field.sheet.tapes[tape]!;
  const error = unit * Math.hypot(readingIn / 12, proportional * distance);
  return distance / (1 + z[tape]! * scale) + error;
}

/** One sigma of every check's difference, inches: each cause moved up and down by half a sigma. */
export function checkSigmasIn(field: Field): Float64Array {
  const z = new Float64Array(field.causes);
  const [up, down] = [newDay(field), newDay(field)];
  const sum = new Float64Array(field.rows.length);
  for (let cause = 0; cause < field.causes; cause++) {
    z[cause] = 0.5;
    workThrough(field, z, up);
    z[cause] = -0.5;
    workThrough(field, z, down);
    z[cause] = 0;
    for (let k = 0; k < sum.length; k++) sum[k]! += (up.offIn[k]! - down.offIn[k]!) ** 2;
  }
  return sum.map(Math.sqrt);
}
