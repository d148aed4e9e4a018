/** Straight bands at any bearing: where each one lies and which way it is laid. */
import { bearingNormalise } from '../geometry/angle';
import type { Feet } from '../base/units';
import type { BandsSpec } from './model';

/** One band in the frame of the bearing: x across it (to the right), y along it. */
export interface BandStrip {
  /** Whole number; 0 starts at the offset from second base's line, counting to the right. */
  readonly index: number;
  readonly fromX: Feet;
  readonly toX: Feet;
  readonly bearingDeg: number;
}

/**
 * The bands that reach over `fromX`…`toX`, left to right. `originX` is where second base's line lies
 * across the bearing; even bands carry the bearing, odd ones its opposite.
 */
export function layBands(
  spec: BandsSpec,
  swathFt: Feet,
  originX: Feet,
  fromX: Feet,
  toX: Feet,
): BandStrip[] {
  const width = spec.passesPerBand * swathFt;
  const start = originX + spec.offsetFt;
  const first = Math.floor((fromX - start) / width);
  const last = Math.ceil((toX - start) / width) - 1;
  const out: BandStrip[] = [];
  for (let index = first; index <= last; index++) {
    const turned = index % 2 === 0 ? 0 : 180;
    out.push({
      index,
      fromX: start + index * width,
      toX: start + (index + 1) * width,
      bearingDeg: bearingNormalise(spec.bearingDeg + turned),
    });
  }
  return out;
}
