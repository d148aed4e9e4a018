/** What the links of a chain cost the crew, and which curves a stretch of a contour allows. */
import { pointDistance, type Point } from '../geometry/point';
import { bendIntervals, bulgeInterval, swingIntervals, type BulgeInterval } from './bulge-interval';
import { bulgeCentre } from './chain';
import { LONGEST_BASE_FT, LONGEST_OFFSET_FT, SHORTEST_BASE_FT } from './limits';
import type { CrewMinutes } from './minutes';
import { tracePoint, type Trace } from './trace';

/** Person-minutes of one link, its end stake counted in. */
export interface LinkPrices {
  readonly stringEach: number;
  readonly stringPerFt: number;
  readonly bend: number;
  /** A swing whose pin can be set with a short tape from its two end stakes. */
  readonly nearSwing: number;
  /** A swing whose pin is tied to controls. */
  readonly farSwing: number;
  /** No link is cheaper than this. */
  readonly least: number;
  /** No curve is cheaper than this. */
  readonly leastCurve: number;
}

/** Prices from the crew's minutes; an outline stake is taken as tied to controls. */
export function linkPrices(minutes: CrewMinutes): LinkPrices {
  const stringEach = minutes.ties + minutes.stringEach;
  const bend = minutes.ties + minutes.bend;
  const swing = minutes.ties + minutes.swing;
  const nearSwing = swing + Math.min(minutes.short, minutes.ties);
  const farSwing = swing + minutes.ties;
  const leastCurve = Math.min(bend, nearSwing);
  return {
    stringEach,
    stringPerFt: minutes.stringPerFt,
    bend,
    nearSwing,
    farSwing,
    least: Math.min(stringEach, leastCurve),
    leastCurve,
  };
}

/** A curve that a stretch allows, with its price. */
export interface CurvePrice {
  readonly kind: 'swing' | 'bend';
  readonly price: number;
}

/** Bulges tried for a pin, across the interval, middle first. */
const PIN_TRIES = [0.5, 0.3, 0.7, 0.12, 0.88, 0.02, 0.98];

/** The cheapest curve over from→to that keeps the tube and has its pin where `mayPin` allows one. */
export function cheapestCurve(
  t: Trace,
  tube: Float64Array,
  from: number,
  to: number,
  prices: LinkPrices,
  mayPin: (p: Point) => boolean,
  scratch: BulgeInterval,
): CurvePrice | null {
  if (!bulgeInterval(t, tube, from, to, scratch)) return null;
  const a = tracePoint(t, from);
  const b = tracePoint(t, to);
  const h = pointDistance(a, b) / 2;
  const bend = bendIntervals(scratch, h).length > 0 ? prices.bend : Infinity;
  if (bend <= prices.nearSwing) return { kind: 'bend', price: bend };
  const swing = cheapestSwing(a, b, scratch, prices, mayPin);
  if (Math.min(bend, swing) === Infinity) return null;
  return bend <= swing ? { kind: 'bend', price: bend } : { kind: 'swing', price: swing };
}

function cheapestSwing(
  a: Point,
  b: Point,
  interval: BulgeInterval,
  prices: LinkPrices,
  mayPin: (p: Point) => boolean,
): number {
  const h = pointDistance(a, b) / 2;
  let price = Infinity;
  for (const part of swingIntervals(interval, h)) {
    for (const share of PIN_TRIES) {
      const bulge = part.low + share * (part.high - part.low);
      const near = isNearPin(h, bulge);
      if (price <= (near ? prices.nearSwing : prices.farSwing)) continue;
      if (mayPin(bulgeCentre(a, b, bulge))) price = near ? prices.nearSwing : prices.farSwing;
    }
  }
  return price;
}

/** Whether the pin stands within a short offset of the middle between the two ends. */
export function isNearPin(h: number, bulge: number): boolean {
  const offset = (h * (1 - bulge * bulge)) / (2 * Math.abs(bulge));
  return offset <= LONGEST_OFFSET_FT && 2 * h >= SHORTEST_BASE_FT && 2 * h <= LONGEST_BASE_FT;
}
