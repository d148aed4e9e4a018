import { describe, expect, it } from 'vitest';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { Point } from '../../src/geometry/point';
import { regionContains } from '../../src/geometry/region';
import { makeCamera, seePoint } from '../../src/view/camera';
import { grassColour, linearFromSrgb, luminance, REST_LUMINANCE } from '../../src/view/colour';
import { createCoverage } from '../../src/view/coverage';
import { apparentBrightness, michelsonContrast, REST_BRIGHTNESS } from '../../src/view/light';
import type { Picture } from '../../src/view/model';
import { renderSeat } from '../../src/view/render-seat';
import { BEHIND_HOME, box, disc, plainDesign, quietDesign } from './fixtures';

describe('pixel coverage', () => {
  const ring = Array.from({ length: 11 }, (_, i) => {
    const r = i % 2 === 0 ? 17 : 9;
    const a = (2 * Math.PI * i) / 11;
    return { x: 20.3 + r * Math.cos(a), y: 19.6 + r * Math.sin(a) };
  });
  const covered = (...rings: (readonly Point[])[]): Float64Array => {
    const coverage = createCoverage(40, 40);
    for (const r of rings) coverage.addRing(r);
    const out = new Float64Array(1600);
    coverage.sweep((x, y, share) => (out[40 * y + x] = share));
    return out;
  };

  it('is the share of each pixel inside, against 16 by 16 samples', () => {
    const hole = [...disc(20, 20, 5, 40)[0]!].reverse();
    const shares = covered(ring, hole);
    for (let pixel = 0; pixel < 1600; pixel++) {
      let inside = 0;
      for (let k = 0; k < 256; k++) {
        const x = (pixel % 40) + ((k % 16) + 0.5) / 16;
        const y = Math.floor(pixel / 40) + (Math.floor(k / 16) + 0.5) / 16;
        if (regionContains([ring, hole], { x, y })) inside++;
      }
      expect(Math.abs(shares[pixel]! - inside / 256)).toBeLessThan(0.03);
    }
  });

  it('cuts at the edges of the picture', () => {
    const shares = covered([
      { x: -30, y: -30 },
      { x: 90, y: -30 },
      { x: 90, y: 90 },
      { x: -30, y: 90 },
    ]);
    expect(Math.min(...shares)).toBeCloseTo(1, 5);
  });
});

describe('grass colour', () => {
  it('has luminance in proportion to the brightness formula', () => {
    for (const y of [0.36, 0.43, 0.5, 0.57, 0.64]) {
      expect(luminance(grassColour(y)) / REST_LUMINANCE).toBeCloseTo(y / REST_BRIGHTNESS, 3);
    }
  });
});

describe('the picture from a seat', () => {
  const built = buildField(defaultFieldSpec(), 'feet-inches');
  if (!built.ok) throw new Error('the default field builds');
  const field = built.value;
  const [width, height] = [600, 300];
  const camera = makeCamera(BEHIND_HOME, width, height);
  const eye = { at: BEHIND_HOME.at, heightFt: BEHIND_HOME.eyeHeightFt };
  const design = plainDesign(box(-30, 250, 30, 280));
  const picture = renderSeat(field, design, BEHIND_HOME, width, height);

  const luminanceAt = (p: Point, shown: Picture = picture): number => {
    const seen = seePoint(camera, p)!;
    const at = 4 * (Math.floor(seen.y) * width + Math.floor(seen.x));
    const [r, g, b] = [0, 1, 2].map((k) => linearFromSrgb(shown.pixels[at + k]!));
    return luminance([r!, g!, b!]);
  };

  it('is opaque and the same every time', () => {
    expect(picture.pixels).toHaveLength(4 * width * height);
    expect(picture.pixels.every((v, i) => i % 4 !== 3 || v === 255)).toBe(true);
    const again = renderSeat(field, design, BEHIND_HOME, width, height);
    expect(Buffer.from(again.pixels).equals(Buffer.from(picture.pixels))).toBe(true);
  });

  it('shows each band as bright as the formula says, within the grain', () => {
    for (const x of [-45, -35, 5, 15, 45]) {
      const p = { x, y: 230 };
      const away = Math.floor(x / 10) % 2 === 0;
      const wanted = apparentBrightness({ x: 0, y: away ? 1 : -1 }, p, eye) / REST_BRIGHTNESS;
      expect(Math.abs(luminanceAt(p) / REST_LUMINANCE / wanted - 1)).toBeLessThan(0.05);
    }
  });

  it('shows the contrast across a quiet graphic that is judged', () => {
    const quiet = renderSeat(
      field,
      quietDesign(box(-30, 240, 30, 290)),
      BEHIND_HOME,
      width,
      height,
    );
    const inside = luminanceAt({ x: 0, y: 262 }, quiet);
    const outside = luminanceAt({ x: 45, y: 262 }, quiet);
    const p = { x: 0, y: 262 };
    const wanted = michelsonContrast(
      apparentBrightness({ x: 0, y: -1 }, p, eye),
      apparentBrightness({ x: 0, y: 1 }, p, eye),
    );
    expect(inside).toBeLessThan(outside);
    expect(Math.abs(michelsonContrast(inside, outside) - wanted)).toBeLessThan(0.04);
  });

  it('keeps a balanced pattern at rest brightness on the whole, within 1 %', () => {
    let sum = 0;
    let count = 0;
    for (let x = -98; x < 98; x += 4) {
      for (let y = 190; y < 240; y += 5) {
        sum += luminanceAt({ x, y });
        count++;
      }
    }
    expect(Math.abs(sum / count / REST_LUMINANCE - 1)).toBeLessThan(0.01);
  });

  it('shows clay as clay and chalk as chalk', () => {
    const colourAt = (p: Point): number[] => {
      const seen = seePoint(camera, p)!;
      const at = 4 * (Math.floor(seen.y) * width + Math.floor(seen.x));
      return [...picture.pixels.slice(at, at + 3)];
    };
    const [r, g, b] = colourAt({ x: 0, y: 140 });
    expect(r).toBeGreaterThan(g!);
    expect(g).toBeGreaterThan(b!);
    const grass = colourAt({ x: 5, y: 100 });
    expect(grass[1]).toBeGreaterThan(grass[0]!);
  });
});
