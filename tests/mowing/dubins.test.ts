import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { driveEnd, poseAlong, type Pose } from '../../src/mowing/drive';
import { findTurns, shortestTurn, turnStretches } from '../../src/mowing/dubins';

const RADIUS = 6;
const AHEAD: Pose = { x: 0, y: 0, heading: Math.PI / 2 };
const backAt = (d: number): Pose => ({ x: d, y: 0, heading: -Math.PI / 2 });
const backing = (d: number) =>
  Math.min(
    ...findTurns(AHEAD, backAt(d), RADIUS, true)
      .filter((turn) => turn.backs)
      .map((turn) => turn.lengthFt),
  );

describe('turns', () => {
  it('turns between parallel passes by the closed forms', () => {
    // U, bulb and three-point turn between parallel passes: plane geometry of circles of one radius,
    // d the spacing: d + (π−2)R; R(3π − 4 asin((2R+d)/4R)); (π+2)R − d.
    for (const d of [12, 14, 20, 60]) {
      expect(shortestTurn(AHEAD, backAt(d), RADIUS).lengthFt).toBeCloseTo(
        d + (Math.PI - 2) * RADIUS,
        9,
      );
    }
    for (const d of [0.5, 2, 4.917, 9.83, 11.9]) {
      const bulb = RADIUS * (3 * Math.PI - 4 * Math.asin((2 * RADIUS + d) / (4 * RADIUS)));
      expect(shortestTurn(AHEAD, backAt(d), RADIUS).lengthFt).toBeCloseTo(bulb, 9);
      expect(backing(d)).toBeCloseTo((Math.PI + 2) * RADIUS - d, 9);
    }
  });

  it('gives the worked figures for R 8 ft: bulb 52.5 ft, three-point 36.1 ft at 5 ft; U 25.1 ft at 16 ft', () => {
    const figures = (d: number) => {
      const turns = findTurns(AHEAD, backAt(d), 8, true);
      const least = (back: boolean) =>
        Math.min(...turns.filter((t) => t.backs === back).map((t) => t.lengthFt));
      return [least(false).toFixed(1), least(true).toFixed(1)];
    };
    expect(figures(5)).toEqual(['52.5', '36.1']);
    expect(figures(16)[0]).toBe('25.1');
  });

  it('ends every word on the wanted pose', () => {
    const random = seededRandom(20260711);
    const spot = () => ({
      x: 60 * random.uniform() - 30,
      y: 60 * random.uniform() - 30,
      heading: 2 * Math.PI * random.uniform(),
    });
    let words = 0;
    for (let i = 0; i < 400; i++) {
      const [from, to] = [spot(), spot()];
      for (const turn of findTurns(from, to, RADIUS, true)) {
        words++;
        const end = driveEnd({ start: from, stretches: turnStretches(turn, RADIUS) });
        expect(Math.hypot(end.x - to.x, end.y - to.y), turn.word).toBeLessThan(0.001);
        expect(Math.cos(end.heading - to.heading), turn.word).toBeGreaterThan(0.999999);
      }
    }
    expect(words).toBeGreaterThan(2400);
  });

  it('is never longer than any way found by dense search over three stretches', () => {
    const random = seededRandom(7);
    for (let i = 0; i < 6; i++) {
      const from = { x: 0, y: 0, heading: 0 };
      const to = {
        x: 24 * random.uniform() - 12,
        y: 24 * random.uniform() - 12,
        heading: 2 * Math.PI * random.uniform(),
      };
      const best = shortestTurn(from, to, RADIUS).lengthFt;
      const found = searchThreeStretches(from, to);
      expect(found, `pose ${i}`).toBeGreaterThan(best - 0.75);
      expect(found, `pose ${i}`).toBeLessThan(best + 6);
    }
  });
});

/**
 * Shortest of left/straight/right triples on a coarse lattice of arc angles whose end comes within
 * half a foot and five degrees of the wanted pose. Brute force: no closed form is used.
 */
function searchThreeStretches(from: Pose, to: Pose): number {
  const step = Math.PI / 36;
  let best = Infinity;
  const curves = [1 / RADIUS, 0, -1 / RADIUS];
  for (const a of curves) {
    for (const c of curves) {
      for (const b of curves) {
        if (a === 0 || c === 0 || a === b || b === c) continue;
        for (let i = 0; i < 72; i++) {
          const first = poseAlong(
            from,
            { curvature: a, lengthFt: i * step * RADIUS, gear: 1 },
            i * step * RADIUS,
          );
          const most = b === 0 ? 80 : 72;
          for (let j = 0; j < most; j++) {
            const length = b === 0 ? j * 0.5 : j * step * RADIUS;
            const second = poseAlong(first, { curvature: b, lengthFt: length, gear: 1 }, length);
            const turn = Math.sign(c) * (to.heading - second.heading);
            const left = ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
            const total = i * step * RADIUS + length + left * RADIUS;
            if (total >= best) continue;
            const end = poseAlong(
              second,
              { curvature: c, lengthFt: left * RADIUS, gear: 1 },
              left * RADIUS,
            );
            if (Math.hypot(end.x - to.x, end.y - to.y) < 0.5) best = total;
          }
        }
      }
    }
  }
  return best;
}
