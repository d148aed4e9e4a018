/**
 * Exact pixel coverage of polygons: each edge adds its signed area to the pixels that it crosses,
 * and a running sum along the row gives the share of each pixel inside. Outer rings one way round,
 * holes the other. Method: accumulation buffer, as used for font outlines (R. Levien 2016).
 */
import type { Point } from '../geometry/point';

export interface Coverage {
  /** Adds a closed ring, in pixels. */
  readonly addRing: (ring: readonly Point[]) => void;
  /** Visits each touched row's pixels with their coverage, 0 to 1, and clears the buffer. */
  readonly sweep: (visit: (x: number, y: number, coverage: number) => void) => void;
}

/** Below this share of a pixel nothing is seen. */
const UNSEEN = 0.002;

/**
 * Coverage of a picture of `width` × `height` pixels. One closure over its buffers, so that the
 * innermost loops of every picture pass nothing along.
 */
export function createCoverage(width: number, height: number): Coverage {
  const stride = width + 2;
  const sums = new Float32Array(stride * height);
  const first = new Int32Array(height).fill(stride);
  const last = new Int32Array(height).fill(-1);

  const add = (x: number, y: number, value: number): void => {
    sums[y * stride + x]! += value;
    if (x < first[y]!) first[y] = x;
    if (x > last[y]!) last[y] = x;
  };

  /** One edge inside one row; `rise` is its signed height within the row, x in pixels. */
  const addPiece = (y: number, xa: number, xb: number, rise: number): void => {
    const left = Math.min(Math.max(Math.min(xa, xb), 0), width);
    const right = Math.min(Math.max(Math.max(xa, xb), 0), width);
    const from = Math.floor(left);
    if (right <= from + 1) {
      const inside = 1 - ((left + right) / 2 - from);
      add(from, y, rise * inside);
      add(from + 1, y, rise * (1 - inside));
      return;
    }
    const slope = rise / (right - left);
    let before = 0;
    for (let x = from; x < right; x++) {
      const x0 = Math.max(left, x);
      const x1 = Math.min(right, x + 1);
      const crossed = slope * (x1 - x0);
      const inside = crossed * (1 - ((x0 + x1) / 2 - x));
      add(x, y, before + inside);
      before = crossed - inside;
    }
    add(Math.ceil(right), y, before);
  };

  const addEdge = (a: Point, b: Point): void => {
    if (a.y === b.y) return;
    const sense = a.y < b.y ? 1 : -1;
    const [top, bottom] = sense > 0 ? [a, b] : [b, a];
    const slope = (bottom.x - top.x) / (bottom.y - top.y);
    const end = Math.min(height, bottom.y);
    const start = Math.max(0, top.y);
    for (let y = Math.floor(start); y < end; y++) {
      const y0 = Math.max(start, y);
      const y1 = Math.min(end, y + 1);
      if (y1 <= y0) continue;
      addPiece(y, top.x + (y0 - top.y) * slope, top.x + (y1 - top.y) * slope, sense * (y1 - y0));
    }
  };

  return {
    addRing: (ring) => {
      ring.forEach((b, i) => addEdge(ring[(i === 0 ? ring.length : i) - 1]!, b));
    },
    sweep: (visit) => {
      for (let y = 0; y < height; y++) {
        if (last[y]! < 0) continue;
        sweepRow(y, visit);
        sums.fill(0, y * stride + first[y]!, y * stride + last[y]! + 1);
        first[y] = stride;
        last[y] = -1;
      }
    },
  };

  function sweepRow(y: number, visit: (x: number, y: number, coverage: number) => void): void {
    let sum = 0;
    const end = Math.min(last[y]!, width - 1);
    for (let x = first[y]!; x <= end; x++) {
      sum += sums[y * stride + x]!;
      const covered = Math.min(1, Math.abs(sum));
      if (covered > UNSEEN) visit(x, y, covered);
    }
  }
}
