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

/** Sets all stakes out `draws` times with erring controls and tapes; how each stake scatters. */
export function simulateCrews(plan: StakePlan, draws: number, noise: Noise): Map<string, Spread> {
  const { readingSigmaIn, proportional } = plan.spec.tape;
  const pull = (ft: number) =>
    ft + noise.normal() * Math.hypot(readingSigmaIn / 12, proportional * ft);
  const tally = new Map(
    plan.stakes.map((s) => [
      s.id,
      { n: 0, inside: 0, x: 0, y: 0, xx: 0, xy: 0, yy: 0, w: 0, ww: 0 },
    ]),
  );
  for (let k = 0; k < draws; k++) {
    const at = new Map<string, Pair>();
    for (const c of plan.controls) {
      if (c.kind !== 'fixed') continue;
      const s = Math.sqrt(c.covariance.xx) / 12;
      at.set(c.id, [c.at.x + noise.normal() * s, c.at.y + noise.normal() * s]);
    }
    for (const s of plan.stakes) {
      const a = at.get(s.set.tie1.from)!;
      const d1 = pull(s.set.tie1.reading.ft);
      let p: Pair;
      if (s.set.method === 'line') {
        const b = at.get(s.set.lineTo)!;
        const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
        const sign = s.set.side === 'T' ? 1 : -1;
        const e: Pair = [(b[0] - a[0]) / l, (b[1] - a[1]) / l];
        const off = noise.normal() * Math.hypot(0.25 / 12, s.set.tie1.reading.ft / 4000);
        p = [a[0] + sign * d1 * e[0] - off * e[1], a[1] + sign * d1 * e[1] + off * e[0]];
      } else {
        const b = at.get(s.set.tie2.from)!;
        const d2 = pull(s.set.tie2.reading.ft);
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
      const w = (pull(Math.hypot(p[0] - q[0], p[1] - q[1])) - s.check.reading.ft) * 12;
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
