/** A picture in the making, in linear light. */
import type { Point } from '../geometry/point';
import { srgbFromLinear, type Colour } from './colour';
import { createCoverage, type Coverage } from './coverage';
import type { Picture } from './model';

export interface Canvas {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue per pixel. */
  readonly light: Float32Array;
  readonly coverage: Coverage;
}

/** A black canvas of `width` × `height` pixels. */
export const createCanvas = (width: number, height: number): Canvas => ({
  width,
  height,
  light: new Float32Array(width * height * 3),
  coverage: createCoverage(width, height),
});

/** Colour of a pixel, asked for only where something is seen. */
export type Shade = (x: number, y: number) => Colour;

/** Lays rings (in pixels) over what is there. */
export function paintOver(
  canvas: Canvas,
  rings: readonly (readonly Point[])[],
  shade: Colour | Shade,
): void {
  for (const ring of rings) canvas.coverage.addRing(ring);
  const colourAt: Shade = typeof shade === 'function' ? shade : () => shade;
  canvas.coverage.sweep((x, y, covered) => {
    blend(canvas.light, 3 * (y * canvas.width + x), colourAt(x, y), covered);
  });
}

function blend(light: Float32Array, at: number, colour: Colour, covered: number): void {
  for (let k = 0; k < 3; k++) light[at + k]! += covered * (colour[k]! - light[at + k]!);
}

/** Areas that share edges, gathered so that no seam of what lies below shows along them. */
export interface Mosaic {
  readonly paint: (rings: readonly (readonly Point[])[], shade: Shade) => void;
  /** Lays the finished mosaic over the canvas. */
  readonly finish: () => void;
}

/** An empty mosaic the size of the canvas. */
export function startMosaic(canvas: Canvas): Mosaic {
  const light = new Float32Array(canvas.light.length);
  const share = new Float32Array(canvas.width * canvas.height);
  return {
    paint: (rings, shade) => {
      for (const ring of rings) canvas.coverage.addRing(ring);
      canvas.coverage.sweep((x, y, covered) => {
        const pixel = y * canvas.width + x;
        const colour = shade(x, y);
        share[pixel]! += covered;
        for (let k = 0; k < 3; k++) light[3 * pixel + k]! += covered * colour[k]!;
      });
    },
    finish: () => {
      share.forEach((sum, pixel) => {
        if (sum === 0) return;
        const covered = Math.min(1, sum);
        const at = 3 * pixel;
        const mean: Colour = [light[at]! / sum, light[at + 1]! / sum, light[at + 2]! / sum];
        blend(canvas.light, at, mean, covered);
      });
    },
  };
}

const STEPS = 8192;

/** The canvas as 8-bit sRGB, opaque. */
export function developPicture({ width, height, light }: Canvas): Picture {
  const table = Uint8ClampedArray.from({ length: STEPS + 1 }, (_, i) =>
    Math.round(srgbFromLinear(i / STEPS)),
  );
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let i = 0, at = 0; i < light.length; i += 3, at += 4) {
    for (let k = 0; k < 3; k++) {
      const v = Math.min(1, Math.max(0, light[i + k]!));
      pixels[at + k] = table[Math.round(v * STEPS)]!;
    }
  }
  return { width, height, pixels };
}
