/** Crews with tapes that err, working from the printed plan. Shares no code with the engine. */
import type { StakePlan } from '../../../src/stakeout/model';

export interface Noise {
  normal(): number;
}

export interface Spread {
  readonly inside: number;
  readonly draws: number;
  /** 95 % semi-major of the simulated cloud, inches. */
  readonly semiMajor95In: number;
  /** Sigma of the check's reading less the printed one, inches. */
  readonly checkSigmaIn: number;
}

type Pair = [number, number];

/** One sigma of an offset's direction: judged by eye, a carpenter's square, a 3-4-5 triangle. */
const SQUARE_DEG = { eye: 1.5, square: 0.5, triangle: 0.15 } as const;

/** Sets all stakes out `draws` times with erring controls and tapes; how each stake scatters. */
export function simulateCrews(plan: StakePlan, draws: number, noise: Noise): Map<string, Spread> {
  const tapes = [plan.spec.tape, plan.spec.secondTape ?? plan.spec.tape];
  /** One crew's tapes: what a foot of each really is. */
  const scales = [1, 1];
  const errorOf = (tape: number, ft: number) => {
    const { readingSigmaIn, proportional } = tapes[tape]!;
    return noise.normal() * Math.hypot(readingSigmaIn / 12, proportional * ft);
  };
  const pull = (ft: number, tape = 1) => ft * scales[tape - 1]! + errorOf(tape - 1, ft);
  const read = (ft: number, tape = 1) => ft / scales[tape - 1]! + errorOf(tape - 1, ft);
  const tally = new Map(
    plan.stakes.map((s) => [
      s.id,
      { n: 0, inside: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0, w: 0, ww: 0 },
    ]),
  );
  for (let k = 0; k < draws; k++) {
    const at = new Map<string, Pair>();
    tapes.forEach((tape, i) => (scales[i] = 1 + noise.normal() * (tape.scaleSigma ?? 0)));
    for (const c of plan.controls) {
      if (c.kind !== 'fixed') continue;
      const s = Math.sqrt(c.covariance.xx) / 12;
      at.set(c.id, [c.at.x + noise.normal() * s, c.at.y + noise.normal() * s]);
    }
    for (const s of plan.stakes) {
      let p: Pair;
      if (s.set.method === 'offset' || s.set.method === 'chord') {
        const a = at.get(s.set.method === 'chord' ? s.set.chordFrom : s.set.tie1.from)!;
        const b = at.get(s.set.lineTo)!;
        const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
        // The chord is read and half of it pulled back: the tape's scale cancels.
        const along =
          s.set.method === 'chord'
            ? l / 2 + errorOf(0, l) / 2 + errorOf(0, l / 2)
            : pull(s.set.tie1.reading.ft);
        const off = pull(s.set.offset.ft) * (s.set.side === 'L' ? 1 : -1);
        const skew = (noise.normal() * SQUARE_DEG[plan.spec.square ?? 'square'] * Math.PI) / 180;
        const e: Pair = [(b[0] - a[0]) / l, (b[1] - a[1]) / l];
        const n: Pair = [
          -e[1] * Math.cos(skew) - e[0] * Math.sin(skew),
          e[0] * Math.cos(skew) - e[1] * Math.sin(skew),
        ];
        p = [a[0] + along * e[0] + off * n[0], a[1] + along * e[1] + off * n[1]];
      } else if (s.set.method === 'line') {
        const a = at.get(s.set.tie1.from)!;
        const d1 = pull(s.set.tie1.reading.ft, s.set.tie1.tape);
        const b = at.get(s.set.lineTo)!;
        const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const sign = s.set.side === 'T' ? 1 : -1;
        const e: Pair = [(b[0] - a[0]) / l, (b[1] - a[1]) / l];
        const off = noise.normal() * Math.hypot(0.25 / 12, s.set.tie1.reading.ft / 4000);
        p = [a[0] + sign * d1 * e[0] - off * e[1], a[1] + sign * d1 * e[1] + off * e[0]];
      } else {
        const a = at.get(s.set.tie1.from)!;
        const d1 = pull(s.set.tie1.reading.ft, s.set.tie1.tape);
        const b = at.get(s.set.tie2.from)!;
        const d2 = pull(s.set.tie2.reading.ft, s.set.tie2.tape);
        const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const t = (d1 * d1 - d2 * d2 + l * l) / (2 * l);
        const h = Math.sqrt(d1 * d1 - t * t) * (s.set.side === 'L' ? 1 : -1);
        const e: Pair = [(b[0] - a[0]) / l, (b[1] - a[1]) / l];
        p = [a[0] + t * e[0] - h * e[1], a[1] + t * e[1] + h * e[0]];
      }
      at.set(s.id, p);
      const x = (p[0] - s.at.x) * 12;
      const y = (p[1] - s.at.y) * 12;
      const { xx, xy, yy } = s.covariance;
      const q = at.get(s.check.from)!;
      const w =
        (read(Math.hypot(p[0] - q[0], p[1] - q[1]), s.check.tape) - s.check.reading.ft) * 12;
      const sum = tally.get(s.id)!;
      sum.n++;
      // Inside the ellipse of chi-square 5.991 (two degrees of freedom, 95 %).
      if ((yy * x * x - 2 * xy * x * y + xx * y * y) / (xx * yy - xy * xy) <= 5.991465)
        sum.inside++;
      sum.x += x;
      sum.y += y;
      sum.xx += x * x;
      sum.xy += x * y;
      sum.yy += y * y;
      sum.w += w;
      sum.ww += w * w;
    }
  }
  return new Map([...tally].map(([id, s]) => [id, spreadOf(s)]));
}

function spreadOf(s: {
  n: number;
  inside: number;
  x: number;
  y: number;
  xx: number;
  xy: number;
  yy: number;
  w: number;
  ww: number;
}): Spread {
  const xx = s.xx / s.n - (s.x / s.n) ** 2;
  const yy = s.yy / s.n - (s.y / s.n) ** 2;
  const xy = s.xy / s.n - (s.x * s.y) / s.n ** 2;
  const large = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  return {
    inside: s.inside,
    draws: s.n,
    semiMajor95In: Math.sqrt(5.991465 * large),
    checkSigmaIn: Math.sqrt(s.ww / s.n - (s.w / s.n) ** 2),
  };
}
