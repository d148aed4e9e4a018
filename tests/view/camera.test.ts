import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointDistance } from '../../src/geometry/point';
import { groundAt, makeCamera, NEAR_FT, seePoint, seeRing } from '../../src/view/camera';
import { checkSeat } from '../../src/view/check-seat';
import { defaultSeats } from '../../src/view/default-seats';
import { BEHIND_HOME, seat } from './fixtures';

describe('the camera at a seat', () => {
  it('sees a ground point where a ray through that pixel meets the ground', () => {
    const coordinate = fc.double({ min: -300, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.double({ min: 5, max: 120, noNaN: true }),
        (x, y, h) => {
          const camera = makeCamera(seat(-60, -90, h), 1200, 600);
          const seen = seePoint(camera, { x, y });
          fc.pre(seen !== null);
          return pointDistance(groundAt(camera, seen.x, seen.y)!, { x, y }) < 1e-6;
        },
      ),
      { seed: 26 },
    );
  });

  it('keeps the point looked at in the middle and uprights upright', () => {
    const camera = makeCamera(BEHIND_HOME, 1200, 600);
    expect(seePoint(camera, BEHIND_HOME.lookAt)!.x).toBeCloseTo(600, 9);
    const foot = seePoint(camera, { x: 80, y: 300 })!;
    const top = seePoint(camera, { x: 80, y: 300 }, 30)!;
    expect(top.x).toBeCloseTo(foot.x, 9);
    // An object as high as the eye reaches exactly to the horizon.
    expect(top.y).toBeCloseTo(camera.horizonY, 9);
    expect(seePoint(camera, { x: 100, y: 300 })!.x).toBeGreaterThan(600);
  });

  it('sees nothing behind it and cuts rings at the near plane', () => {
    const camera = makeCamera(BEHIND_HOME, 1200, 600);
    expect(seePoint(camera, { x: 0, y: -100 })).toBeNull();
    const across = [
      { x: -5, y: -100, up: 0 },
      { x: 5, y: -100, up: 0 },
      { x: 5, y: 100, up: 0 },
      { x: -5, y: 100, up: 0 },
    ];
    const seen = seeRing(camera, across);
    expect(seen).toHaveLength(4);
    for (const p of seen) expect(p.depthFt).toBeGreaterThanOrEqual(NEAR_FT);
    expect(
      seeRing(
        camera,
        across.map((p) => ({ ...p, y: p.y - 200 })),
      ),
    ).toEqual([]);
  });

  it('has no ground above the horizon', () => {
    const camera = makeCamera(BEHIND_HOME, 1200, 600);
    expect(groundAt(camera, 600, camera.horizonY - 1)).toBeNull();
  });
});

describe('seats', () => {
  it('start valid, with file-name safe ids', () => {
    for (const s of defaultSeats()) {
      expect(checkSeat(s, 'seats.0')).toEqual([]);
      expect(s.id).toMatch(/^[a-z0-9-]+$/);
    }
  });

  it('are refused when nothing could be seen from them', () => {
    const codes = (s: typeof BEHIND_HOME): string[] => checkSeat(s, 'seats.0').map((p) => p.code);
    expect(codes({ ...BEHIND_HOME, eyeHeightFt: 0 })).toEqual(['seat-height']);
    expect(codes({ ...BEHIND_HOME, eyeHeightFt: NaN })).toEqual(['seat-height']);
    expect(codes({ ...BEHIND_HOME, at: BEHIND_HOME.lookAt })).toEqual(['seat-look']);
  });
});
