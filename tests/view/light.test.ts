import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unitFromBearing } from '../../src/geometry/angle';
import {
  apparentBrightness,
  michelsonContrast,
  REST_BRIGHTNESS,
  VIEW_STRENGTH,
} from '../../src/view/light';

const EYE = { at: { x: 0, y: -60 }, heightFt: 30 };
const FAR = { x: 0, y: 270 };
const AWAY = { x: 0, y: 1 };
const TOWARD = { x: 0, y: -1 };
const contrast = (sun?: Parameters<typeof apparentBrightness>[3]): number => {
  const light = apparentBrightness(AWAY, FAR, EYE, sun);
  const dark = apparentBrightness(TOWARD, FAR, EYE, sun);
  return (light - dark) / (light + dark);
};

describe('how bright leaning grass looks', () => {
  // Sign: crop-science societies' public blog 2018-10-22; grounds-mag "Establish mowing patterns".
  it('is light laid away from the viewer, dark laid toward him', () => {
    expect(apparentBrightness(AWAY, FAR, EYE)).toBeGreaterThan(REST_BRIGHTNESS);
    expect(apparentBrightness(TOWARD, FAR, EYE)).toBeLessThan(REST_BRIGHTNESS);
    expect(contrast()).toBeGreaterThanOrEqual(0.25);
  });

  it('reverses from the opposite side, by the same amount', () => {
    const mirrored = { at: { x: 0, y: 600 }, heightFt: 30 };
    const sum = apparentBrightness(AWAY, FAR, EYE) + apparentBrightness(AWAY, FAR, mirrored);
    expect(sum).toBeCloseTo(2 * REST_BRIGHTNESS, 9);
  });

  it('shows no contrast in passes square to the line of sight', () => {
    const east = apparentBrightness({ x: 1, y: 0 }, FAR, EYE);
    const west = apparentBrightness({ x: -1, y: 0 }, FAR, EYE);
    expect(michelsonContrast(east, west)).toBeLessThan(1e-9);
  });

  it('goes with the cosine of the angle between lay and line of sight', () => {
    const lift = (deg: number): number =>
      apparentBrightness(unitFromBearing(deg), FAR, EYE) - REST_BRIGHTNESS;
    for (const deg of [15, 30, 45, 60, 75, 90, 120, 150]) {
      expect(lift(deg) / lift(0)).toBeCloseTo(Math.cos((deg * Math.PI) / 180), 12);
    }
  });

  it('fades looking down: nothing straight below', () => {
    const contrastFrom = (heightFt: number): number => {
      const eye = { at: EYE.at, heightFt };
      return apparentBrightness(AWAY, FAR, eye) - apparentBrightness(TOWARD, FAR, eye);
    };
    expect(contrastFrom(300)).toBeLessThan(contrastFrom(30));
    expect(contrastFrom(5000)).toBeLessThan(contrastFrom(300));
    expect(apparentBrightness(AWAY, EYE.at, EYE)).toBe(REST_BRIGHTNESS);
  });

  it('has full contrast kV at a grazing look', () => {
    const eye = { at: { x: 0, y: -100_000 }, heightFt: 30 };
    const light = apparentBrightness(AWAY, FAR, eye);
    const dark = apparentBrightness(TOWARD, FAR, eye);
    expect(michelsonContrast(light, dark)).toBeCloseTo(VIEW_STRENGTH.value, 6);
  });

  it('keeps its sign under any sun', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.double({ min: 0, max: Math.PI / 2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (azimuth, elevation, clear) => contrast({ azimuth, elevation, clear }) > 0.15,
      ),
      { seed: 25 },
    );
  });
});
