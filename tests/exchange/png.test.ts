import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { encodePng } from '../../src/exchange/png';
import type { Picture } from '../../src/view/model';

function noise(width: number, height: number, alpha: (i: number) => number): Picture {
  const random = seededRandom(7);
  const pixels = Uint8ClampedArray.from({ length: 4 * width * height }, (_, i) =>
    i % 4 === 3 ? alpha(i) : random.integer(256),
  );
  return { width, height, pixels };
}

/** Read back by an SVG renderer's own PNG reader. */
function readBack(png: Uint8Array, { width, height }: Picture): Uint8Array {
  const data = `data:image/png;base64,${Buffer.from(png).toString('base64')}`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image href="${data}" width="${width}" height="${height}" image-rendering="optimizeSpeed"/></svg>`;
  return new Uint8Array(new Resvg(svg).render().pixels);
}

describe('PNG files', () => {
  it('come back pixel for pixel from another reader', () => {
    const picture = noise(53, 31, () => 255);
    const png = encodePng(picture);
    expect(png[25]).toBe(2);
    expect(readBack(png, picture)).toEqual(new Uint8Array(picture.pixels));
  });

  it('keep what is clear', () => {
    const picture = noise(16, 9, (i) => (i % 8 === 3 ? 0 : 255));
    const png = encodePng(picture);
    expect(png[25]).toBe(6);
    const back = readBack(png, picture);
    for (let i = 0; i < back.length; i += 4) {
      expect(back[i + 3]).toBe(picture.pixels[i + 3]);
      if (back[i + 3] === 255) expect(back[i]).toBe(picture.pixels[i]);
    }
  });

  // The published checksum of an empty IEND chunk, ISO/IEC 15948: AE 42 60 82.
  it('carry the standard checksum', () => {
    const png = encodePng(noise(1, 1, () => 255));
    expect([...png.slice(-4)]).toEqual([0xae, 0x42, 0x60, 0x82]);
  });
});
