/**
 * How long things take: low, likely and high, with a source or the word `assumption`. Every figure
 * may be replaced by the crew's own (`LabourSpec.rates`, by task id).
 */
import type { Rate } from './model';

export type RateUnit = 'min' | 'min each' | 's per ft' | 'min per planned min';

/** Minutes for one unit of quantity at a rate of 1. */
export const MINUTES_PER_RATE: Readonly<Record<RateUnit, number>> = {
  min: 1,
  'min each': 1,
  's per ft': 1 / 60,
  'min per planned min': 1,
};

export interface RateEntry {
  readonly name: string;
  /** Of the quantity. */
  readonly unit: string;
  readonly rate: Rate & { readonly unit: RateUnit };
  /**
   * People the rate is meant for. `tapes`: the set-out crew, rated for three. `pairs`: rated for two;
   * four share the work as two pairs.
   */
  readonly people: number | 'tapes' | 'pairs';
}

const rate = (
  unit: RateUnit,
  low: number,
  likely: number,
  high: number,
  source = 'assumption',
): RateEntry['rate'] => ({ low, likely, high, unit, source });

/** Sports Field Management magazine, "Line of attack": preparation takes double the painting. */
const STRING_SOURCE =
  'assumption for the line; preparation double the painting: sportsfieldmanagementmagazine.com, "Line of attack"';
const MACHINE_SOURCE =
  'assumption: stops, emptying and clearing on top of the planned driving and turning';

/** Ids are task ids; machine phases serve every machine of that phase. */
export const RATES = {
  'irrigation-off': {
    name: 'Take the irrigation programme off until the count is signed',
    unit: 'time',
    rate: rate('min each', 3, 5, 12),
    people: 1,
  },
  'check-machines': {
    name: 'Check mowers, fuel and reels',
    unit: 'machines',
    rate: rate('min each', 5, 8, 20),
    people: 1,
  },
  prepare: {
    name: 'Sort and number the stakes, check each tape’s zero and units',
    unit: 'stakes',
    rate: rate('min each', 0.15, 0.25, 0.5),
    people: 1,
  },
  erase: {
    name: 'Mow out the old pattern',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.12, 1.5, MACHINE_SOURCE),
    people: 1,
  },
  'edge-marks': {
    name: 'Dot the running distances along the edges of the grass',
    unit: 'dots',
    rate: rate('min each', 0.15, 0.3, 0.6),
    people: 2,
  },
  'guide-strings': {
    name: 'Put up, tell, lift a guide string at its pass; the machine waits',
    unit: 'strings',
    rate: rate('min each', 3, 5, 9),
    people: 2,
  },
  background: {
    name: 'Mow the background',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.12, 1.5, MACHINE_SOURCE),
    people: 1,
  },
  'flag-heads': {
    name: 'Flag sprinkler heads and valve boxes in the set-out area',
    unit: 'heads',
    rate: rate('min each', 0.6, 1, 2.5),
    people: 'pairs',
  },
  'prove-controls': {
    name: 'Tape between the bases to prove them',
    unit: 'tapes',
    rate: rate('min each', 2, 3, 6),
    people: 'tapes',
  },
  'set-controls': {
    name: 'Set and check the control stakes',
    unit: 'stakes',
    rate: rate('min each', 3, 4.5, 9),
    people: 'tapes',
  },
  'move-tapes': {
    name: 'Move the tapes to the next round',
    unit: 'rounds',
    rate: rate('min each', 1, 2, 4),
    people: 'tapes',
  },
  'set-stakes': {
    name: 'Set and check the outline stakes',
    unit: 'stakes',
    rate: rate('min each', 0.9, 1.4, 2.5),
    people: 'tapes',
  },
  'set-pins': {
    name: 'Set and check the swing pins',
    unit: 'pins',
    rate: rate('min each', 0.9, 1.4, 2.5),
    people: 'tapes',
  },
  'set-short': {
    name: 'Set and check the stakes of the short tape',
    unit: 'stakes',
    rate: rate('min each', 0.6, 1, 2),
    people: 2,
  },
  'tie-strings': {
    name: 'Tie the strings off at their stakes',
    unit: 'strings',
    rate: rate('min each', 0.4, 0.75, 1.5),
    people: 'pairs',
  },
  'pull-strings': {
    name: 'Stretch the strings',
    unit: 'ft',
    rate: rate('s per ft', 2, 3, 5, STRING_SOURCE),
    people: 'pairs',
  },
  'draw-swings': {
    name: 'Draw the swings from their pins',
    unit: 'swings',
    rate: rate('min each', 1, 1.7, 3.5),
    people: 'pairs',
  },
  'draw-bends': {
    name: 'Draw the bends by their middle offsets',
    unit: 'bends',
    rate: rate('min each', 0.7, 1.2, 2.5),
    people: 'pairs',
  },
  transfer: {
    name: 'Transfer every line to the turf as dots or a brushed line',
    unit: 'ft',
    rate: rate('s per ft', 1, 1.5, 2.5),
    people: 'pairs',
  },
  pull: {
    name: 'Lift strings, pins, stakes and head flags',
    unit: 'pieces',
    rate: rate('min each', 0.12, 0.2, 0.45),
    people: 'pairs',
  },
  count: {
    name: 'Count: stakes out = stakes in, signed',
    unit: 'count',
    rate: rate('min each', 5, 8, 20),
    people: 2,
  },
  graphic: {
    name: 'Lay the graphic',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.2, 1.8, MACHINE_SOURCE),
    people: 1,
  },
  edge: {
    name: 'Follow the graphic’s edge',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.3, 2, MACHINE_SOURCE),
    people: 1,
  },
  border: {
    name: 'Drive the clean-up laps',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.12, 1.5, MACHINE_SOURCE),
    people: 1,
  },
  carry: {
    name: 'Run empty between areas and back to the gate',
    unit: 'planned min',
    rate: rate('min per planned min', 1, 1.1, 1.4, MACHINE_SOURCE),
    people: 1,
  },
  'clean-up': {
    name: 'Walk the grass for anything left, clear clippings, put tools away',
    unit: 'time',
    rate: rate('min each', 15, 25, 50),
    people: 2,
  },
  'irrigation-on': {
    name: 'Put the irrigation programme back',
    unit: 'time',
    rate: rate('min each', 2, 3, 8),
    people: 1,
  },
} as const satisfies Readonly<Record<string, RateEntry>>;

export type RateId = keyof typeof RATES;

/** Whether the catalogue has a rate of that id. */
export const isRateId = (id: string): id is RateId => Object.hasOwn(RATES, id);
