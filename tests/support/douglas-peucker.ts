/** A Douglas–Peucker chain of a closed contour by an outside library (turf). */
import { lineString, simplify } from '@turf/turf';

type Xy = readonly [number, number];

/** Segments of the simplified contour; opened at its first point and at the farthest one from it. */
export function douglasPeuckerSegments(ring: readonly Xy[], tolerance: number): number {
  const away = (p: Xy) => Math.hypot(p[0] - ring[0]![0], p[1] - ring[0]![1]);
  const far = ring.reduce((best, p, i) => (away(p) > away(ring[best]!) ? i : best), 0);
  const halves = [ring.slice(0, far + 1), [...ring.slice(far), ring[0]!]];
  return halves.reduce((sum, half) => {
    const line = lineString(half.map((p) => [...p]));
    const simple = simplify(line, { tolerance, highQuality: true });
    return sum + simple.geometry.coordinates.length - 1;
  }, 0);
}
