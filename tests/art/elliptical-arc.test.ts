/** The arc rules of SVG 1.1, appendix F.6, by closed forms. */
import { describe, expect, it } from 'vitest';
import { flattenSubpath } from '../../src/art/flatten-outline';
import { arcTo, type ArcShape } from '../../src/art/svg/elliptical-arc';
import { readPathData } from '../../src/art/svg/path-data';
import { ringSignedArea } from '../../src/geometry/polyline';

const FROM = { x: 0, y: 0 };
const TO = { x: 10, y: 0 };
const arc = (over: Partial<ArcShape>): ArcShape => ({
  rx: 10,
  ry: 10,
  turn: 0,
  large: false,
  sweep: false,
  ...over,
});
const flat = (shape: ArcShape, to = TO) =>
  flattenSubpath({ start: FROM, curves: arcTo(FROM, shape, to), closed: false }, 0.0001);

describe('arcs', () => {
  it('leaves the arc out when the ends are equal (F.6.2)', () => {
    expect(arcTo(FROM, arc({}), FROM)).toEqual([]);
  });

  it.each([{ rx: 0 }, { ry: 0 }])('draws a straight line for a zero radius (F.6.2): %j', (over) => {
    expect(arcTo(FROM, arc(over), TO)).toEqual([{ kind: 'line', to: TO }]);
  });

  it('takes the size of negative radii (F.6.6)', () => {
    expect(arcTo(FROM, arc({ rx: -10, ry: -10 }), TO)).toEqual(arcTo(FROM, arc({}), TO));
  });

  it('scales radii up until they reach (F.6.6): a half circle', () => {
    const points = flat(arc({ rx: 1, ry: 1, sweep: true }));
    for (const p of points) expect(Math.hypot(p.x - 5, p.y)).toBeCloseTo(5, 3);
    expect(Math.abs(ringSignedArea(points))).toBeCloseTo((Math.PI * 25) / 2, 2);
  });

  // Chord 10 in a circle of radius 10 spans 60 degrees: segment r²(θ − sin θ)/2.
  const small = (100 * (Math.PI / 3 - Math.sqrt(3) / 2)) / 2;
  const big = 100 * Math.PI - small;
  it.each([
    [false, false, small],
    [false, true, -small],
    [true, false, big],
    [true, true, -big],
  ])('picks one of four by its flags: large %s sweep %s', (large, sweep, expected) => {
    // y runs down in a drawing: sweep 1 bulges up on the page, toward smaller y.
    expect(ringSignedArea(flat(arc({ large, sweep })))).toBeCloseTo(-expected, 1);
    const bulge = flat(arc({ large, sweep })).map((p) => p.y);
    const side = sweep ? Math.min(...bulge) : Math.max(...bulge);
    const depth = 10 + (large ? 1 : -1) * 10 * Math.cos(Math.PI / 6);
    expect(Math.abs(side)).toBeCloseTo(depth, 2);
  });

  it('turns the ellipse: every point fits its equation', () => {
    const turn = 0.6;
    const points = flat(arc({ rx: 20, ry: 7, turn, large: true, sweep: true }), { x: 8, y: 5 });
    const local = points.map((p) => ({
      u: (p.x * Math.cos(turn) + p.y * Math.sin(turn)) / 20,
      v: (-p.x * Math.sin(turn) + p.y * Math.cos(turn)) / 7,
    }));
    const centre = circumcentre(local[0]!, local[Math.floor(local.length / 3)]!, local.at(-1)!);
    for (const p of local) {
      expect(Math.hypot(p.u - centre.u, p.v - centre.v)).toBeCloseTo(1, 4);
    }
  });

  it('reads packed flags as separate ones', () => {
    const packed = readPathData('M0 0a10 10 0 0110 0z');
    expect(packed).toEqual(readPathData('M0 0 a 10 10 0 0 1 10 0 z'));
    expect(packed.broken).toBe(false);
  });
});

interface Uv {
  readonly u: number;
  readonly v: number;
}

function circumcentre(a: Uv, b: Uv, c: Uv): Uv {
  const d = 2 * (a.u * (b.v - c.v) + b.u * (c.v - a.v) + c.u * (a.v - b.v));
  const [a2, b2, c2] = [a, b, c].map((p) => p.u * p.u + p.v * p.v) as [number, number, number];
  return {
    u: (a2 * (b.v - c.v) + b2 * (c.v - a.v) + c2 * (a.v - b.v)) / d,
    v: (a2 * (c.u - b.u) + b2 * (a.u - c.u) + c2 * (b.u - a.u)) / d,
  };
}
