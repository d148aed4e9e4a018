/** View boxes: how the inside of an `svg` or `symbol` is fitted into its place. */
import { point, type Point } from '../../geometry/point';
import {
  affineApply,
  affineCompose,
  affineScale,
  affineTranslate,
  type Affine,
} from '../../geometry/affine';
import type { Box } from '../../geometry/box';
import { readNumbers } from './numbers';

/** x, y, width, height. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The view box; null when absent, `'bad'` when it cannot be read or has no size. */
export function readViewBox(text: string | undefined): Frame | null | 'bad' {
  if (text === undefined) return null;
  const numbers = readNumbers(text);
  if (numbers?.length !== 4) return 'bad';
  const [x, y, width, height] = numbers as [number, number, number, number];
  return width > 0 && height > 0 ? { x, y, width, height } : 'bad';
}

/** The map from the view box into the place, under `preserveAspectRatio` (SVG 1.1, 7.8). */
export function fitViewBox(viewBox: Frame, place: Frame, aspect: string | undefined): Affine {
  const sx = place.width / viewBox.width;
  const sy = place.height / viewBox.height;
  const [align = 'xMidYMid', mode = 'meet'] = (aspect ?? '').trim().split(/\s+/).filter(Boolean);
  const uniform = mode === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  const [kx, ky] = align === 'none' ? [sx, sy] : [uniform, uniform];
  const shift = point(
    place.x + alignShare(align, 'x') * (place.width - viewBox.width * kx),
    place.y + alignShare(align, 'Y') * (place.height - viewBox.height * ky),
  );
  const scaled = affineCompose(affineScale(kx, ky), affineTranslate(-viewBox.x, -viewBox.y));
  return affineCompose(affineTranslate(shift.x, shift.y), scaled);
}

function alignShare(align: string, axis: 'x' | 'Y'): number {
  if (align.includes(`${axis}Min`)) return 0;
  return align.includes(`${axis}Max`) ? 1 : 0.5;
}

/** The place's corners, mapped. */
export function mapFrame(frame: Frame, m: Affine): Point[] {
  const { x, y, width, height } = frame;
  const corners = [
    point(x, y),
    point(x + width, y),
    point(x + width, y + height),
    point(x, y + height),
  ];
  return corners.map((p) => affineApply(m, p));
}

/** Where two boxes overlap; null when they do not. */
export function overlap(a: Box, b: Box): Box | null {
  const box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return box.minX <= box.maxX && box.minY <= box.maxY ? box : null;
}
