/** From field feet (y toward centre field) to pixels of the drawing (y down) and back. */
import type { Box } from '../../geometry/box';
import type { Point } from '../../geometry/point';

export interface Viewport {
  /** Field point at the middle of the drawing. */
  readonly cx: number;
  readonly cy: number;
  /** Pixels per foot. */
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room kept free at the edges of a fitted drawing, pixels. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

const MIN_SCALE = 0.6;
const MAX_SCALE = 120;

export const toScreen = (v: Viewport, size: Size, p: Point): Point => ({
  x: size.width / 2 + (p.x - v.cx) * v.scale,
  y: size.height / 2 - (p.y - v.cy) * v.scale,
});

export const toField = (v: Viewport, size: Size, p: Point): Point => ({
  x: v.cx + (p.x - size.width / 2) / v.scale,
  y: v.cy - (p.y - size.height / 2) / v.scale,
});

/** The viewport that shows the box inside the margins. */
export function fitBox(box: Box, size: Size, margins: Margins): Viewport {
  const width = Math.max(1, size.width - margins.left - margins.right);
  const height = Math.max(1, size.height - margins.top - margins.bottom);
  const scale = Math.min(
    width / Math.max(1, box.maxX - box.minX),
    height / Math.max(1, box.maxY - box.minY),
  );
  const offX = (margins.right - margins.left) / 2 / scale;
  const offY = (margins.top - margins.bottom) / 2 / scale;
  return { cx: (box.minX + box.maxX) / 2 + offX, cy: (box.minY + box.maxY) / 2 + offY, scale };
}

/** Zooms by `factor`, the field point under `at` (pixels) staying where it is. */
export function zoomAt(v: Viewport, size: Size, at: Point, factor: number): Viewport {
  const scale = Math.min(MAX_SCALE, Math.max(MIN_SCALE, v.scale * factor));
  const p = toField(v, size, at);
  return {
    cx: p.x - (at.x - size.width / 2) / scale,
    cy: p.y + (at.y - size.height / 2) / scale,
    scale,
  };
}

export const panBy = (v: Viewport, dx: number, dy: number): Viewport => ({
  ...v,
  cx: v.cx - dx / v.scale,
  cy: v.cy + dy / v.scale,
});

/** A round length for the scale bar, near `pixels` wide. */
export function scaleBarFt(v: Viewport, pixels: number): number {
  const want = pixels / v.scale;
  const steps = [1, 2, 5, 10, 20, 50, 100, 200];
  return steps.reduce((best, s) => (Math.abs(s - want) < Math.abs(best - want) ? s : best), 1);
}
