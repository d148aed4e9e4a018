import { describe, expect, it } from 'vitest';
import { buildField } from '../../src/field/build-field';
import type { FieldSpec } from '../../src/field/model';
import { circleFence, specWith } from './fixtures';

const f = (bearingDeg: number, distanceFt: number) => ({ bearingDeg, distanceFt });
const keepOut = (change: Partial<FieldSpec['keepOuts'][number]>) => ({
  id: 'head-1',
  name: 'Sprinkler head',
  centre: { x: 0, y: 250 },
  radiusFt: 1,
  ...change,
});
const pole = (distanceFt: number, sigmaIn = 1) => ({ left: { distanceFt, sigmaIn }, right: null });

const CASES: readonly (readonly [string, Partial<FieldSpec>, string, string])[] = [
  ['two fence points', { fence: [f(-45, 330), f(45, 330)] }, 'fence-too-few', 'field.fence'],
  ['no fence', { fence: [] }, 'fence-too-few', 'field.fence'],
  [
    'bearings out of order',
    { fence: [f(-45, 330), f(20, 380), f(0, 400), f(45, 330)] },
    'fence-order',
    'field.fence[2].bearingDeg',
  ],
  [
    'a bearing twice',
    { fence: [f(-45, 330), f(0, 400), f(0, 390), f(45, 330)] },
    'fence-order',
    'field.fence[2].bearingDeg',
  ],
  [
    'a fence across itself',
    { fence: [f(-45, 330), f(20, 350), f(-20, 400), f(0, 250), f(45, 330)] },
    'fence-crosses',
    'field.fence[0]',
  ],
  [
    'short of the left pole',
    { fence: [f(-40, 330), f(0, 400), f(45, 330)] },
    'fence-ends',
    'field.fence[0].bearingDeg',
  ],
  [
    'short of the right pole',
    { fence: [f(-45, 330), f(0, 400), f(44, 330)] },
    'fence-ends',
    'field.fence[2].bearingDeg',
  ],
  [
    'a bearing behind home',
    { fence: [f(-45, 330), f(0, 400), f(145, 330)] },
    'fence-bearing',
    'field.fence[2].bearingDeg',
  ],
  [
    'a fence inside the bases',
    { fence: circleFence(80, 90) },
    'fence-distance',
    'field.fence[0].distanceFt',
  ],
  ['a fence on the skin', { fence: circleFence(150, 160) }, 'fence-inside-bases', 'field.fence'],
  [
    'a fence a mile out',
    { fence: circleFence(330, 5280) },
    'fence-distance',
    'field.fence[1].distanceFt',
  ],
  [
    'a distance that is no number',
    { fence: circleFence(330, NaN) },
    'fence-distance',
    'field.fence[1].distanceFt',
  ],
  [
    'an endless distance',
    { fence: circleFence(Infinity, 400) },
    'fence-distance',
    'field.fence[0].distanceFt',
  ],
  [
    'a negative distance',
    { fence: circleFence(-330, 400) },
    'fence-distance',
    'field.fence[0].distanceFt',
  ],
  ['a negative track', { trackWidthFt: -1 }, 'track-width', 'field.trackWidthFt'],
  ['a track that is no number', { trackWidthFt: NaN }, 'track-width', 'field.trackWidthFt'],
  ['an absurd track', { trackWidthFt: 200 }, 'track-width', 'field.trackWidthFt'],
  [
    'a track wider than the outfield',
    { trackWidthFt: 58, fence: circleFence(190, 205) },
    'track-too-wide',
    'field.trackWidthFt',
  ],
  ['a negative skin', { skinRadiusFt: -95 }, 'skin-radius', 'field.skinRadiusFt'],
  ['a skin that is no number', { skinRadiusFt: NaN }, 'skin-radius', 'field.skinRadiusFt'],
  ['a skin that misses the bases', { skinRadiusFt: 50 }, 'skin-radius', 'field.skinRadiusFt'],
  ['negative foul ground', { foulWidthFt: -5 }, 'foul-width', 'field.foulWidthFt'],
  ['foul ground without end', { foulWidthFt: Infinity }, 'foul-width', 'field.foulWidthFt'],
  ['a negative sigma', { controlSigmaIn: -0.5 }, 'control-sigma', 'field.controlSigmaIn'],
  ['a pole of negative sigma', { poles: pole(330, -1) }, 'pole-sigma', 'field.poles.left.sigmaIn'],
  ['a pole at home', { poles: pole(0) }, 'pole-distance', 'field.poles.left.distanceFt'],
  [
    'a keep-out of no size',
    { keepOuts: [keepOut({ radiusFt: 0 })] },
    'keep-out-radius',
    'field.keepOuts[0].radiusFt',
  ],
  [
    'a negative keep-out',
    { keepOuts: [keepOut({ radiusFt: -2 })] },
    'keep-out-radius',
    'field.keepOuts[0].radiusFt',
  ],
  [
    'a keep-out nowhere',
    { keepOuts: [keepOut({ centre: { x: NaN, y: 0 } })] },
    'keep-out-place',
    'field.keepOuts[0].centre',
  ],
  [
    'a keep-out in the street',
    { keepOuts: [keepOut({ centre: { x: 0, y: 450 } })] },
    'keep-out-outside',
    'field.keepOuts[0].centre',
  ],
  [
    'two keep-outs of one name',
    { keepOuts: [keepOut({}), keepOut({})] },
    'keep-out-repeated',
    'field.keepOuts[1].id',
  ],
  ['an unknown book', { book: 'cricket' as never }, 'book-unknown', 'field.book'],
  ['a base nobody makes', { baseSizeIn: 16 as never }, 'base-size', 'field.baseSizeIn'],
];

describe('a field', () => {
  it.each(CASES)('is refused for %s', (_, change, code, where) => {
    const built = buildField(specWith(change), 'feet-inches');
    expect(built.ok).toBe(false);
    const found = built.problems.find((p) => p.code === code && p.where === where);
    expect(found, JSON.stringify(built.problems)).toBeDefined();
    expect(found!.what).not.toBe('');
    expect(found!.fix).not.toBe('');
  });

  it('has all its problems named at once', () => {
    const built = buildField(
      specWith({
        trackWidthFt: -3,
        foulWidthFt: -1,
        controlSigmaIn: NaN,
        fence: [f(-45, 330), f(45, 330)],
        poles: pole(-4, -1),
      }),
      'feet-inches',
    );
    expect(built.problems.map((p) => p.code)).toEqual([
      'fence-too-few',
      'track-width',
      'foul-width',
      'control-sigma',
      'pole-distance',
      'pole-sigma',
    ]);
  });

  it('is built with a warning when a measured pole differs from the fence list', () => {
    const built = buildField(specWith({ poles: pole(336) }), 'feet-inches');
    expect(built.ok).toBe(true);
    expect(built.problems.map((p) => [p.code, p.severity])).toEqual([
      ['pole-disagrees', 'warning'],
    ]);
    expect(buildField(specWith({ poles: pole(334.9) }), 'feet-inches').problems).toEqual([]);
  });

  it('never throws, whatever the numbers', () => {
    const odd = [NaN, Infinity, -Infinity, -1, 0, 1e9, 59.99, 330];
    for (const a of odd) {
      for (const b of odd) {
        for (const shape of ['smooth', 'straight'] as const) {
          const spec = specWith({
            fence: [f(-45, a), f(b, 400), f(45, 330)],
            fenceShape: shape,
            trackWidthFt: b,
            skinRadiusFt: a,
          });
          expect(() => buildField(spec, 'feet-inches')).not.toThrow();
        }
      }
    }
  });
});
