/** The outline's picture, its arcs worked out by another program (svgpath) and held against the contract. */
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { outlinePath } from '../../src/crew/outline-path';
import type { CrewLine } from '../../src/exchange/crew-data';

type Spot = readonly [number, number];
/** Field to picture: y turns over, 1 step is 2 dots. */
const screen = ({ x, y }: { x: number; y: number }) => ({ x: 2 * x, y: -2 * y });

/** Points along the drawn path, back in the field. */
function drawn(path: string): Spot[] {
  const points: Spot[] = [];
  svgpath(path)
    .abs()
    .unarc()
    .iterate(([kind, ...n], _, x, y) => {
      if (kind !== 'C') points.push([n[n.length - 2]! / 2, -n[n.length - 1]! / 2]);
      else {
        for (let t = 0.25; t <= 1; t += 0.25) {
          const cubic = (a: number, b: number, c: number, d: number) =>
            (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t * t * (1 - t) * c + t ** 3 * d;
          points.push([cubic(x, n[0]!, n[2]!, n[4]!) / 2, -cubic(y, n[1]!, n[3]!, n[5]!) / 2]);
        }
      }
    });
  return points;
}

const none = { from: '', to: '', pin: '', steps: 0, turn: '' } as const;
const at = new Map([
  ['1', { x: 100, y: 0 }],
  ['2', { x: 0, y: 100 }],
  ['3', { x: 0, y: 0 }],
]);
const draw = (...lines: CrewLine[]) => drawn(outlinePath(lines, at, screen));

describe('the outline in the picture', () => {
  it.each(['ccw', 'cw'] as const)('swings %s about the pin', (turn) => {
    const ends = turn === 'ccw' ? { from: '1', to: '2' } : { from: '2', to: '1' };
    const points = draw({ ...none, kind: 'swing', ...ends, pin: '3', steps: 100, turn });
    expect(points.length).toBeGreaterThan(3);
    for (const [x, y] of points) expect(Math.hypot(x, y)).toBeCloseTo(100, 0);
  });

  it.each([
    ['L', -30],
    ['R', 30],
  ] as const)('bends to the %s of the way from one stake to the next', (turn, x) => {
    // From 3 straight up to 2: left is toward minus x; the middle lies 30 steps off (middle ordinate).
    const points = draw({ ...none, kind: 'bend', from: '3', to: '2', steps: 30, turn });
    const far = points.reduce((a, b) => (Math.abs(a[0]) > Math.abs(b[0]) ? a : b));
    expect(far[0]).toBeCloseTo(x, 0);
    expect(far[1]).toBeCloseTo(50, 0);
  });

  it('joins pieces that follow each other to one shape, and starts anew elsewhere', () => {
    const string = (from: string, to: string): CrewLine => ({ ...none, kind: 'string', from, to });
    const path = outlinePath([string('1', '2'), string('2', '3'), string('1', '3')], at, screen);
    expect(path.match(/M/g)).toHaveLength(2);
    expect(path).toBe('M200.0 0.0L0.0 -200.0L0.0 0.0M200.0 0.0L0.0 0.0');
  });

  it('draws whole circles, and nothing whose stakes are not on the phone', () => {
    const circle = draw({ ...none, kind: 'circle', pin: '3', steps: 40, turn: 'ccw' });
    for (const [x, y] of circle) expect(Math.hypot(x, y)).toBeCloseTo(40, 0);
    expect(outlinePath([{ ...none, kind: 'string', from: '1', to: '9' }], at, screen)).toBe('');
  });
});
