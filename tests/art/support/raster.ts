/** The raster oracle: what a general-purpose SVG renderer paints, as coverage per pixel. */
import { Resvg } from '@resvg/resvg-js';
import { affineApply, affineDeterminant, type Affine } from '../../../src/geometry/affine';
import type { Region } from '../../../src/geometry/region';

export interface Coverage {
  /** Share of each pixel that is painted black, 0 to 1. */
  readonly values: Float64Array;
  readonly width: number;
  readonly height: number;
  /** Pixels per user unit. */
  readonly scale: number;
}

/** Black paint on a white page, `width` pixels wide; or any paint at all when `opaque`. */
export function renderCoverage(
  svg: string,
  width: number,
  fontFiles: string[] = [],
  opaque = false,
): Coverage {
  const resvg = new Resvg(svg, {
    ...(opaque ? {} : { background: '#ffffff' }),
    fitTo: { mode: 'width', value: width },
    font: { fontFiles, loadSystemFonts: false },
  });
  const units = resvg.width;
  const image = resvg.render();
  // The getter copies the whole bitmap every time, so it is read once.
  const pixels = image.pixels;
  const values = new Float64Array(image.width * image.height);
  for (let i = 0; i < values.length; i++)
    values[i] = opaque ? pixels[4 * i + 3]! / 255 : 1 - pixels[4 * i]! / 255;
  return { values, width: image.width, height: image.height, scale: image.width / units };
}

export function pageOf(svg: string): { readonly width: number; readonly height: number } {
  const { width, height } = new Resvg(svg);
  return { width, height };
}

/** A region (art frame) drawn back on the page that it came from. */
export function regionAsSvg(
  region: Region,
  frame: Affine,
  page: { readonly width: number; readonly height: number },
): string {
  const back = inverse(frame);
  const d = region
    .map((ring) => {
      const points = ring.map((p) => affineApply(back, p));
      return `M${points.map((p) => `${p.x.toFixed(9)} ${p.y.toFixed(9)}`).join('L')}Z`;
    })
    .join('');
  const { width, height } = page;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><path fill-rule="evenodd" d="${d}"/></svg>`;
}

function inverse(m: Affine): Affine {
  const det = affineDeterminant(m);
  return {
    a: m.d / det,
    b: -m.b / det,
    c: -m.c / det,
    d: m.a / det,
    e: (m.c * m.f - m.d * m.e) / det,
    f: (m.b * m.e - m.a * m.f) / det,
  };
}

export const coverageSum = (c: Coverage): number => c.values.reduce((n, v) => n + v, 0);

/** Shared coverage over joint coverage, 0 to 1. */
export function overlapShare(a: Coverage, b: Coverage): number {
  let shared = 0;
  let joint = 0;
  a.values.forEach((v, i) => {
    shared += Math.min(v, b.values[i]!);
    joint += Math.max(v, b.values[i]!);
  });
  return joint === 0 ? 1 : shared / joint;
}
