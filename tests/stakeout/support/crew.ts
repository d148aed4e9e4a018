/**
 * A crew that has only the printed plan: it reads texts, pulls tapes and joins stakes. Shares no code
 * with the engine (only the plan's types), so that a mistake there cannot hide here.
 */
import type { Stake, StakePlan } from '../../../src/stakeout/model';

export type Place = readonly [number, number];

/** Feet from a printed length: `127' 3 1/4"` or `38.795 m`. */
export function readText(text: string): number {
  const metric = /^(\d+\.\d{3}) m$/.exec(text);
  if (metric) return Number(metric[1]) / 0.3048;
  const match = /^(\d+)' (\d+)(?: (\d)\/(\d))?"$/.exec(text);
  if (!match) throw new Error(`unreadable length ${text}`);
  const [, feet, inch, over, under] = match;
  return Number(feet) + (Number(inch) + (over ? Number(over) / Number(under) : 0)) / 12;
}

const away = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Where circles about a and b meet, left or right of someone at a facing b. */
function crossCircles(a: Place, r: number, b: Place, s: number, side: 'L' | 'R'): Place {
  const d = away(a, b);
  const t = (r * r - s * s + d * d) / (2 * d);
  const h2 = r * r - t * t;
  if (!(h2 > 0)) throw new Error('the circles do not meet');
  const h = side === 'L' ? Math.sqrt(h2) : -Math.sqrt(h2);
  const e = [(b[0] - a[0]) / d, (b[1] - a[1]) / d] as const;
  return [a[0] + e[0] * t - e[1] * h, a[1] + e[1] * t + e[0] * h];
}

/** Every control and stake where the printed readings put it, starting from the fixed controls. */
export function setOut(plan: StakePlan): Map<string, Place> {
  const at = new Map<string, Place>();
  for (const c of plan.controls) if (c.kind === 'fixed') at.set(c.id, [c.at.x, c.at.y]);
  for (const stake of plan.stakes) {
    if (stake.set.method === 'offset' || stake.set.method === 'chord') {
      at.set(stake.id, squareOff(stake.set, at));
      continue;
    }
    const from = at.get(stake.set.tie1.from)!;
    const first = readText(stake.set.tie1.reading.text);
    if (stake.set.method === 'ties') {
      const second = readText(stake.set.tie2.reading.text);
      at.set(
        stake.id,
        crossCircles(from, first, at.get(stake.set.tie2.from)!, second, stake.set.side),
      );
    } else {
      const toward = at.get(stake.set.lineTo)!;
      const k = ((stake.set.side === 'T' ? 1 : -1) * first) / away(from, toward);
      at.set(stake.id, [from[0] + k * (toward[0] - from[0]), from[1] + k * (toward[1] - from[1])]);
    }
  }
  return at;
}

/** Along the line between two places, or from its middle, then square to it. */
function squareOff(
  set: Extract<Stake['set'], { method: 'offset' | 'chord' }>,
  at: Map<string, Place>,
): Place {
  const a = at.get(set.method === 'chord' ? set.chordFrom : set.tie1.from)!;
  const b = at.get(set.lineTo)!;
  const d = away(a, b);
  const along = set.method === 'chord' ? d / 2 : readText(set.tie1.reading.text);
  const off = readText(set.offset.text) * (set.side === 'L' ? 1 : -1);
  const e = [(b[0] - a[0]) / d, (b[1] - a[1]) / d] as const;
  return [a[0] + e[0] * along - e[1] * off, a[1] + e[1] * along + e[0] * off];
}

/** The drawn contours as dense closed rings (points at most `step` apart). */
export function drawOutline(plan: StakePlan, at: Map<string, Place>, step = 0.05): Place[][] {
  return plan.contours.map((contour) =>
    contour.pieces.flatMap((piece): Place[] => {
      if (piece.kind === 'string') return between(at.get(piece.from)!, at.get(piece.to)!, step);
      if (piece.kind === 'bend') return bend(piece, at, step);
      const pin = at.get(piece.pin)!;
      const radius = readText(piece.radius.text);
      if (piece.kind === 'circle') return arc(pin, radius, 0, 2 * Math.PI, step);
      const from = at.get(piece.from)!;
      const to = at.get(piece.to)!;
      const start = Math.atan2(from[1] - pin[1], from[0] - pin[0]);
      let turn = Math.atan2(to[1] - pin[1], to[0] - pin[0]) - start;
      if (piece.sweep === 'ccw') while (turn < 0) turn += 2 * Math.PI;
      else while (turn > 0) turn -= 2 * Math.PI;
      const line = arc(pin, radius, start, turn, step);
      const end: Place = [
        pin[0] + radius * Math.cos(start + turn),
        pin[1] + radius * Math.sin(start + turn),
      ];
      return [from, ...line, ...between(end, to, step)];
    }),
  );
}

/** Half the sweep is twice the angle at an end between the chord and the mark. */
function bend(
  piece: Extract<StakePlan['contours'][number]['pieces'][number], { kind: 'bend' }>,
  at: Map<string, Place>,
  step: number,
): Place[] {
  const [a, b] = [at.get(piece.from)!, at.get(piece.to)!];
  const h = away(a, b) / 2;
  const off = readText(piece.offset.text);
  const sweep = 4 * Math.atan(off / h);
  const radius = h / Math.sin(sweep / 2);
  const left = piece.side === 'L' ? 1 : -1;
  const n = [(-left * (b[1] - a[1])) / (2 * h), (left * (b[0] - a[0])) / (2 * h)] as const;
  const c: Place = [
    (a[0] + b[0]) / 2 + (off - radius) * n[0],
    (a[1] + b[1]) / 2 + (off - radius) * n[1],
  ];
  return arc(c, radius, Math.atan2(a[1] - c[1], a[0] - c[0]), -left * sweep, step);
}

function between(a: Place, b: Place, step: number): Place[] {
  const n = Math.max(1, Math.ceil(away(a, b) / step));
  return Array.from({ length: n }, (_, i): Place => [
    a[0] + ((b[0] - a[0]) * i) / n,
    a[1] + ((b[1] - a[1]) * i) / n,
  ]);
}

function arc(centre: Place, r: number, start: number, turn: number, step: number): Place[] {
  const n = Math.max(8, Math.ceil((Math.abs(turn) * r) / step));
  return Array.from({ length: n }, (_, i): Place => {
    const a = start + (turn * i) / n;
    return [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)];
  });
}

export const densify = (ring: readonly { x: number; y: number }[], step = 0.05): Place[] =>
  ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return between([p.x, p.y], [q.x, q.y], step);
  });

/** Largest distance from a point of `from` to its nearest point of `to`, feet: buckets of a foot. */
export function farthest(from: readonly Place[], to: readonly Place[]): number {
  const buckets = new Map<string, Place[]>();
  for (const p of to) {
    const key = `${Math.floor(p[0])} ${Math.floor(p[1])}`;
    const bucket = buckets.get(key);
    if (bucket) bucket.push(p);
    else buckets.set(key, [p]);
  }
  let worst = 0;
  for (const p of from) {
    let best = Infinity;
    const [cx, cy] = [Math.floor(p[0]), Math.floor(p[1])];
    for (let x = cx - 1; x <= cx + 1; x++) {
      for (let y = cy - 1; y <= cy + 1; y++) {
        for (const q of buckets.get(`${x} ${y}`) ?? []) best = Math.min(best, away(p, q));
      }
    }
    worst = Math.max(worst, best);
  }
  return worst;
}

/** 1 − intersection/union of two even-odd figures by scan lines `step` feet apart. */
export function mismatch(a: readonly Place[][], b: readonly Place[][], step = 0.05): number {
  const ys = [...a, ...b].flat().map((p) => p[1]);
  let both = 0;
  let either = 0;
  for (let y = Math.min(...sample(ys)) + step / 2; y < Math.max(...sample(ys)); y += step) {
    const marks = [
      ...crossings(a, y).map((x) => [x, 0] as const),
      ...crossings(b, y).map((x) => [x, 1] as const),
    ];
    marks.sort((p, q) => p[0] - q[0]);
    const inside = [false, false];
    marks.forEach(([x, which], i) => {
      const width = i > 0 ? x - marks[i - 1]![0] : 0;
      if (inside[0] && inside[1]) both += width;
      if (inside[0] || inside[1]) either += width;
      inside[which] = !inside[which];
    });
  }
  return 1 - both / either;
}

/** The extremes, so that spreading a long list into Math.min cannot overflow. */
const sample = (values: number[]): [number, number] => {
  let low = Infinity;
  let high = -Infinity;
  for (const v of values) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return [low, high];
};

function crossings(rings: readonly Place[][], y: number): number[] {
  const out: number[] = [];
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [p, q] = [ring[j]!, ring[i]!];
      if (p[1] > y !== q[1] > y) out.push(p[0] + ((y - p[1]) / (q[1] - p[1])) * (q[0] - p[0]));
    }
  }
  return out;
}
