/**
 * The catalogue of machine classes, each figure with its source. Classes, not products: a crew measures
 * its own machine and types the figures in. No published turn times or turning circles of turf reels were
 * found, so those are assumptions and say so.
 */
import type { Machine } from './model';

const CLASS_TABLE = 'from memory: usual range of the class';
const ASSUMED = 'assumption';
const PRACTICE = 'common practice, no source';

type Figures = Omit<Machine, 'sources'>;

/** What says which machine it is, and is no figure. */
const NAMING = ['id', 'name', 'role', 'cutter'];

/** One source per figure: the class table for sizes and speeds, `assumption` for the rest. */
function withSources(figures: Figures, own: Readonly<Record<string, string>>): Machine {
  const sources: Record<string, string> = {};
  for (const key of Object.keys(figures)) {
    if (!NAMING.includes(key)) sources[key] = ASSUMED;
  }
  const table = { cutWidthIn: CLASS_TABLE, overlapIn: CLASS_TABLE, cuttingMph: CLASS_TABLE };
  const habits = { lays: PRACTICE, laysInTransit: PRACTICE, mayReverse: PRACTICE };
  const people = { powered: PRACTICE, people: PRACTICE, turnSeconds: CLASS_TABLE };
  return { ...figures, sources: { ...sources, ...table, ...habits, ...people, ...own } };
}

const TRIPLEX_REEL = withSources(
  {
    id: 'triplex-reel',
    name: 'Triplex reel mower, 62 in',
    role: 'wide',
    cutter: 'reel',
    cutWidthIn: 62,
    overlapIn: 3,
    bodyWidthIn: 60,
    frontOverhangIn: 24,
    rearOverhangIn: 66,
    cuttingMph: 4,
    turningMph: 2.5,
    runningMph: 5,
    turnRadiusFt: 6,
    turnSeconds: 6,
    mayReverse: true,
    lays: true,
    laysInTransit: false,
    powered: true,
    people: 1,
  },
  {
    bodyWidthIn: 'assumption: wheels and frame run inside the outer reel ends',
    laysInTransit: 'common practice, no source: reels and their rollers are lifted in turns',
  },
);

const ROTARY_RIDER = withSources(
  {
    id: 'rotary-rider-roller-60',
    name: 'Rotary rider with full rollers, 60 in',
    role: 'wide',
    cutter: 'rotary',
    cutWidthIn: 60,
    overlapIn: 4,
    bodyWidthIn: 58,
    frontOverhangIn: 30,
    rearOverhangIn: 72,
    cuttingMph: 4.5,
    turningMph: 2.5,
    runningMph: 5.5,
    turnRadiusFt: 6,
    turnSeconds: 6,
    mayReverse: true,
    lays: true,
    laysInTransit: false,
    powered: true,
    people: 1,
  },
  {
    laysInTransit:
      'common practice, no source: the decks lift and take their full-width rollers off the grass',
  },
);

const FIVE_GANG = withSources(
  {
    id: 'five-gang-reel',
    name: 'Five-gang fairway reel mower, 96 in',
    role: 'wide',
    cutter: 'reel',
    cutWidthIn: 96,
    overlapIn: 4,
    bodyWidthIn: 92,
    frontOverhangIn: 36,
    rearOverhangIn: 84,
    cuttingMph: 5,
    turningMph: 3,
    runningMph: 6,
    turnRadiusFt: 8,
    turnSeconds: 9,
    mayReverse: true,
    lays: true,
    laysInTransit: false,
    powered: true,
    people: 1,
  },
  { laysInTransit: 'common practice, no source: reels and their rollers are lifted in turns' },
);

const ROTARY_ROLLER = withSources(
  {
    id: 'rotary-roller-21',
    name: 'Walk-behind rotary with rear roller, 21 in',
    role: 'narrow',
    cutter: 'rotary',
    cutWidthIn: 21,
    overlapIn: 2,
    bodyWidthIn: 21,
    frontOverhangIn: 18,
    rearOverhangIn: 48,
    cuttingMph: 2.5,
    turningMph: 1.5,
    runningMph: 2.5,
    turnRadiusFt: 1,
    turnSeconds: 4,
    mayReverse: true,
    lays: true,
    laysInTransit: false,
    powered: true,
    people: 1,
  },
  {
    laysInTransit:
      'common practice, no source: in turns and on the way the blade is stopped and the handle raised, so that it rides on its front wheels with the roller off the grass',
  },
);

const GREENS_REEL = withSources(
  {
    id: 'greens-reel-22',
    name: 'Walk-behind greens reel, 22 in',
    role: 'narrow',
    cutter: 'reel',
    cutWidthIn: 22,
    overlapIn: 2,
    bodyWidthIn: 22,
    frontOverhangIn: 14,
    rearOverhangIn: 54,
    cuttingMph: 3,
    turningMph: 2,
    runningMph: 3,
    turnRadiusFt: 2,
    turnSeconds: 5,
    mayReverse: false,
    lays: true,
    laysInTransit: true,
    powered: true,
    people: 1,
  },
  { laysInTransit: 'common practice, no source: it drives on its drum, which never lifts' },
);

const HAND_ROLLER = withSources(
  {
    id: 'hand-roller-24',
    name: 'Hand roller, 24 in',
    role: 'narrow',
    cutter: 'none',
    cutWidthIn: 24,
    overlapIn: 1,
    bodyWidthIn: 24,
    frontOverhangIn: 9,
    rearOverhangIn: 48,
    cuttingMph: 1.5,
    turningMph: 1,
    runningMph: 1.5,
    turnRadiusFt: 1.5,
    turnSeconds: 3,
    mayReverse: true,
    lays: true,
    laysInTransit: true,
    powered: false,
    people: 1,
  },
  { laysInTransit: 'common practice, no source: the drum is always on the grass' },
);

const PUSH_BROOM = withSources(
  {
    id: 'push-broom-24',
    name: 'Push broom, 24 in',
    role: 'narrow',
    cutter: 'none',
    cutWidthIn: 24,
    overlapIn: 2,
    bodyWidthIn: 24,
    frontOverhangIn: 6,
    rearOverhangIn: 60,
    cuttingMph: 1,
    turningMph: 1.5,
    runningMph: 2,
    turnRadiusFt: 0.5,
    turnSeconds: 2,
    mayReverse: true,
    lays: true,
    laysInTransit: false,
    powered: false,
    people: 1,
  },
  { laysInTransit: 'common practice, no source: it is carried between strokes' },
);

/** Every machine class, wide ones first; figures in inches, miles an hour, feet and seconds. */
export const MACHINES: readonly Machine[] = [
  TRIPLEX_REEL,
  ROTARY_RIDER,
  FIVE_GANG,
  ROTARY_ROLLER,
  GREENS_REEL,
  HAND_ROLLER,
  PUSH_BROOM,
];
