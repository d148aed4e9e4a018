import { describe, expect, it } from 'vitest';
import { isShort, methodControls } from '../../src/stakeout/ties';
import { seededRandom } from '../../src/base/random';
import {
  densify,
  drawOutline,
  farthest,
  mismatch,
  readText,
  setOut,
  type Place,
} from './support/crew';
import { nearTouching } from './support/nasty-art';
import { outlineFigures } from './support/outline-figures';
import {
  defaultField,
  emblemRegion,
  planned,
  SPEC,
  wordRegion,
  type Planned,
} from './support/plans';

const away = (a: Place, b: Place) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const place = (p: { x: number; y: number }): Place => [p.x, p.y];

/** Two of these scripts' words by a seeded draw of letters. */
function drawnWord(seed: number): string {
  const random = seededRandom(seed);
  const letters = 'abcdefghiklmnoprstuvy';
  const pick = () => letters[random.integer(letters.length)]!;
  return pick().toUpperCase() + Array.from({ length: 2 }, pick).join('');
}

const CASES: readonly [string, () => Planned][] = [
  ['Lanterns in script', () => planned(wordRegion('Lanterns', 'pacifico'))],
  ['an emblem of arcs', () => planned(emblemRegion())],
  [
    'a drawn word, metric',
    () => planned(wordRegion(drawnWord(7), 'kaushan-script', 80), { ...SPEC, system: 'metric' }),
  ],
];

describe.each(CASES)('%s', (_, make) => {
  const { graphic, plan, problems } = make();
  const at = setOut(plan);
  const drawn = drawOutline(plan, at);
  const art = graphic.map((ring) => densify(ring));
  const order = new Map(plan.stakes.map((s, i) => [s.id, i]));
  const controls = new Map(plan.controls.map((c) => [c.id, c]));

  it('draws the art from printed readings alone within tolerance + 1/2 in, both ways', () => {
    const gap =
      Math.max(farthest(art.flat(), drawn.flat()), farthest(drawn.flat(), art.flat())) * 12;
    expect(gap).toBeLessThanOrEqual(SPEC.toleranceIn + 0.5);
    // Both are sampled; the engine measures to edges.
    expect(Math.abs(gap - plan.largestGapIn)).toBeLessThan(0.35);
    expect(problems.filter((p) => p.code !== 'stake-over-target')).toEqual([]);
  });

  it('encloses the same ground: 1 − IoU at most 0.55 × tolerance × perimeter ÷ area', () => {
    const rings = graphic.map((ring) => ring.map(place));
    const perimeter = rings.reduce(
      (sum, ring) => sum + ring.reduce((n, p, i) => n + away(p, ring[(i + 1) % ring.length]!), 0),
      0,
    );
    const area = Math.abs(
      rings.reduce(
        (sum, ring) =>
          sum +
          ring.reduce((n, p, i) => {
            const q = ring[(i + 1) % ring.length]!;
            return n + (p[0] * q[1] - q[0] * p[1]) / 2;
          }, 0),
        0,
      ),
    );
    expect(mismatch(rings, drawn)).toBeLessThanOrEqual(
      (0.55 * (SPEC.toleranceIn / 12) * perimeter) / area,
    );
  });

  it('never crosses, and stands for five grid marks and more with each stake of a word', () => {
    const figures = outlineFigures(plan, graphic, SPEC.toleranceIn);
    expect(figures.crossings).toBe(0);
    if (_.includes('pacifico')) {
      expect(figures.toGrid).toBeLessThanOrEqual(0.22);
      expect(figures.toDouglasPeucker).toBeLessThanOrEqual(0.4);
    }
  });

  it('puts every stake where it says, every printed text being its value', () => {
    for (const stake of plan.stakes)
      expect(away(at.get(stake.id)!, place(stake.at))).toBeLessThan(0.0005);
    for (const c of plan.controls) expect(away(at.get(c.id)!, place(c.at))).toBeLessThan(0.0005);
    const readings = [
      ...plan.stakes.flatMap((s) => [
        ...(s.set.method === 'chord' ? [] : [s.set.tie1.reading]),
        ...(s.set.method === 'offset' || s.set.method === 'chord' ? [s.set.offset] : []),
        ...(s.set.method === 'ties' ? [s.set.tie2.reading] : []),
        s.check.reading,
      ]),
      ...plan.contours.flatMap((c) =>
        c.pieces.flatMap((p) => ('radius' in p ? [p.radius] : 'offset' in p ? [p.offset] : [])),
      ),
    ];
    for (const r of readings) expect(readText(r.text)).toBeCloseTo(r.ft, 9);
  });

  it('keeps every reading within the tape and every pair of circles at 30 to 150 degrees', () => {
    for (const s of plan.stakes) {
      if (s.set.method !== 'chord')
        expect(s.set.tie1.reading.ft).toBeLessThanOrEqual(SPEC.tape.limitFt);
      expect(s.check.reading.ft).toBeLessThanOrEqual(SPEC.tape.limitFt);
      if (s.set.method !== 'ties') continue;
      expect(s.set.tie2.reading.ft).toBeLessThanOrEqual(SPEC.tape.limitFt);
      const [p, a, b] = [at.get(s.id)!, at.get(s.set.tie1.from)!, at.get(s.set.tie2.from)!];
      const turn = Math.atan2(a[1] - p[1], a[0] - p[0]) - Math.atan2(b[1] - p[1], b[0] - p[0]);
      const degrees = (Math.acos(Math.cos(turn)) * 180) / Math.PI;
      expect(degrees).toBeGreaterThanOrEqual(30);
      expect(degrees).toBeLessThanOrEqual(150);
      expect(s.set.intersectionDeg).toBeCloseTo(degrees, 6);
    }
  });

  it('checks each stake from a control or an earlier stake, with the reading that the plan puts there', () => {
    plan.stakes.forEach((s, i) => {
      const source = order.get(s.check.from);
      if (controls.get(s.check.from)?.kind !== 'fixed') expect(source).toBeLessThan(i);
      const pulled = s.set.method === 'line' ? [s.set.tie1.from] : methodControls(s.set);
      expect(pulled).not.toContain(s.check.from);
      expect(
        Math.abs(away(at.get(s.check.from)!, at.get(s.id)!) - s.check.reading.ft) * 12,
      ).toBeLessThan(0.126);
      expect(s.check.limitIn).toBeGreaterThan(3 * 0.25);
    });
  });

  it('stands stakes 8 in apart and set controls 2 ft clear of every other stake', () => {
    const all = plan.stakes.map((s) => ({ ...s, place: at.get(s.id)! }));
    all.forEach((s, i) =>
      all.slice(0, i).forEach((t) => {
        const clear = s.kind === 'control' || t.kind === 'control' ? 2 : 8 / 12;
        expect(away(s.place, t.place)).toBeGreaterThanOrEqual(clear);
      }),
    );
  });

  it('numbers rounds from 1, one pair of controls or short tapes each, nothing used before it is set', () => {
    let round = 0;
    let held = '';
    const known = new Set(plan.controls.filter((c) => c.kind === 'fixed').map((c) => c.id));
    const set = new Set(known);
    for (const s of plan.stakes) {
      const used = methodControls(s.set);
      const standing = isShort(s.set) ? set : known;
      for (const id of used) expect(standing.has(id), `${id} for ${s.id}`).toBe(true);
      const pair = isShort(s.set) ? 'short' : [...used].sort().join(' ');
      if (pair !== held) round++;
      held = pair;
      expect(s.round).toBe(round);
      if (s.kind === 'control') known.add(s.id);
      set.add(s.id);
    }
    expect(plan.rounds.map((r) => r.number)).toEqual(plan.rounds.map((_, i) => i + 1));
    expect(plan.rounds.flatMap((r) => r.stakes)).toEqual(plan.stakes.map((s) => s.id));
    const numbers = plan.stakes.filter((s) => s.kind !== 'control').map((s) => s.id);
    expect(numbers).toEqual(numbers.map((_, i) => String(i + 1)));
  });

  it('swings at most half a turn, 3 ft or more, within 3/4 in of both ends, head to tail', () => {
    for (const contour of plan.contours) {
      contour.pieces.forEach((piece, i) => {
        if (piece.kind === 'circle') return;
        const next = contour.pieces[(i + 1) % contour.pieces.length]!;
        expect(next.kind !== 'circle' && next.from).toBe(piece.to);
        if (piece.kind !== 'swing') return;
        const pin = at.get(piece.pin)!;
        const [a, b] = [at.get(piece.from)!, at.get(piece.to)!];
        for (const end of [a, b])
          expect(Math.abs(away(pin, end) - piece.radius.ft) * 12).toBeLessThanOrEqual(0.75);
        expect(piece.radius.ft).toBeGreaterThanOrEqual(3);
        const cross = (a[0] - pin[0]) * (b[1] - pin[1]) - (a[1] - pin[1]) * (b[0] - pin[0]);
        expect(piece.sweep === 'ccw' ? cross : -cross).toBeGreaterThanOrEqual(0);
      });
    }
  });

  it('uses every stake, and counts what it draws', () => {
    const used = new Set(
      plan.contours.flatMap((c) =>
        c.pieces.flatMap((p) =>
          p.kind === 'circle'
            ? [p.pin]
            : p.kind === 'swing'
              ? [p.from, p.to, p.pin]
              : [p.from, p.to],
        ),
      ),
    );
    for (const s of plan.stakes) if (s.kind !== 'control') expect(used.has(s.id)).toBe(true);
    const pieces = plan.contours.flatMap((c) => c.pieces);
    expect(plan.strings).toBe(pieces.filter((p) => p.kind === 'string').length);
    expect(plan.bends).toBe(pieces.filter((p) => p.kind === 'bend').length);
    expect(plan.swings).toBe(pieces.length - plan.strings - plan.bends!);
  });

  it('names the stakes above the target', () => {
    const over = plan.stakes.filter((s) => s.semiMajor95In > SPEC.target95In).map((s) => s.id);
    expect(plan.overTarget).toEqual(over);
    expect(problems.map((p) => p.code)).toEqual(over.length > 0 ? ['stake-over-target'] : []);
    expect(plan.advice === undefined).toBe(over.length === 0);
  });
});

describe('contours that touch or nearly do', () => {
  it.each([
    [1, 0],
    [2, 0],
    [4, 0.05],
  ])('draw %i, %f ft apart: neither crosses nor strays', (seed, gap) => {
    const { plan, graphic, problems } = planned(nearTouching(seed, gap));
    expect(problems.map((p) => p.code)).toEqual([]);
    expect(outlineFigures(plan, graphic, SPEC.toleranceIn).crossings).toBe(0);
  });

  it('have one pin for circles about one centre', () => {
    const { plan } = planned(emblemRegion());
    const pins = plan.contours.flatMap((c) =>
      c.pieces.flatMap((p) => (p.kind === 'circle' ? [p.pin] : [])),
    );
    // Two rings about the middle, two about the handle, one hole.
    expect(pins.length).toBe(5);
    expect(new Set(pins).size).toBe(3);
  });
});

describe('planning', () => {
  it('gives equal plans for equal input and writes to none of it', () => {
    const graphic = deepFreeze(nearTouching(2, 0.05));
    deepFreeze(defaultField());
    expect(JSON.stringify(planned(graphic).plan)).toBe(JSON.stringify(planned(graphic).plan));
  });
});

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
