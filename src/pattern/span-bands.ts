/** Bands side by side: where each one lies across its family, how wide, which way. */
import type { Feet } from '../base/units';
import type { Way } from './model';
import type { BandWidth } from './resolved';

export interface BandSpan {
  /** Whole number; 0 starts where the family starts. */
  readonly index: number;
  readonly from: Feet;
  readonly to: Feet;
  readonly passes: number;
}

const modulo = (n: number, by: number): number => ((n % by) + by) % by;

/** The bands that reach over `low`…`high`; widths repeat from `start` on to both sides. */
export function spanBands(
  widths: readonly BandWidth[],
  start: Feet,
  low: Feet,
  high: Feet,
): BandSpan[] {
  const period = widths.reduce((n, w) => n + w.ft, 0);
  const out: BandSpan[] = [];
  let index = Math.floor((low - start) / period) * widths.length;
  let from = start + (index / widths.length) * period;
  while (from < high) {
    const width = widths[modulo(index, widths.length)]!;
    const to = from + width.ft;
    if (to > low) out.push({ index, from, to, passes: width.passes });
    from = to;
    index++;
  }
  return out;
}

/** Which way the band is laid; ways repeat like the widths. */
export const wayOf = (lays: readonly Way[], index: number): Way =>
  lays[modulo(index, lays.length)]!;

/** Middles of a band's passes: the outer ones flush with its edges, the rest evenly between. */
export function passMiddles(span: Pick<BandSpan, 'from' | 'to' | 'passes'>, swathFt: Feet): Feet[] {
  const { from, to, passes } = span;
  if (passes === 1) return [(from + to) / 2];
  const step = (to - from - swathFt) / (passes - 1);
  return Array.from({ length: passes }, (_, i) => from + swathFt / 2 + i * step);
}
