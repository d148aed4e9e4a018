/** A rate for the people at hand. */
import { invariant } from '../base/result';
import type { LabourSpec, Rate } from './model';
import { RATES, type RateEntry, type RateId } from './rates';

/** Taped rates are for three people: two holders and a marker. With two, the marker holds a tape. */
const TAPES_TIME: Readonly<Record<number, number>> = { 2: 1.35, 3: 1, 4: 0.9 };
const TAPES_MOST = 4;
const PAIR = 2;

export interface SizedRate {
  readonly rate: Rate & { readonly unit: RateEntry['rate']['unit'] };
  readonly people: number;
}

/**
 * The rate of `id` with `people` at hand, of whom `tapeCrew` set out. The crew's own rates (by
 * `taskId`, else by `id`) are taken as they are; the catalogue's are stretched where fewer people
 * work than they are rated for.
 */
export function sizeRate(
  id: RateId,
  taskId: string,
  spec: LabourSpec,
  people: number,
  tapeCrew: number,
): SizedRate {
  const entry: RateEntry = RATES[id];
  const working = Math.min(peopleFor(entry, people, tapeCrew), people);
  const own = spec.rates[taskId] ?? spec.rates[id];
  if (own) return { rate: { ...entry.rate, ...own, source: 'own figure' }, people: working };
  const stretch = stretchFor(entry, working);
  invariant(stretch !== undefined, 'two or more people set out');
  return { rate: stretchRate(entry.rate, stretch), people: working };
}

function peopleFor(entry: RateEntry, people: number, tapeCrew: number): number {
  if (entry.people === 'tapes') return Math.min(tapeCrew, TAPES_MOST);
  if (entry.people === 'pairs') return people >= 2 * PAIR ? 2 * PAIR : PAIR;
  return entry.people;
}

const stretchFor = (entry: RateEntry, working: number): number | undefined =>
  entry.people === 'tapes'
    ? TAPES_TIME[working]
    : (entry.people === 'pairs' ? PAIR : entry.people) / working;

const stretchRate = (rate: SizedRate['rate'], by: number): SizedRate['rate'] =>
  by === 1 ? rate : { ...rate, low: rate.low * by, likely: rate.likely * by, high: rate.high * by };
