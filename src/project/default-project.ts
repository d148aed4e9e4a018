/** The project that a new job starts with. */
import { defaultFieldSpec } from '../field/default-field';
import { DEFAULT_TAPE } from '../field/prove-controls';
import { defaultSeats } from '../view/default-seats';
import { STRAIGHT } from './straight-recipe';
import { PROJECT_FORMAT, PROJECT_VERSION, type Project } from './model';

/**
 * A new job: the book's field, bands toward right field, nothing on the grass yet. Every figure is
 * an assumption to be typed over, except those of the rule book.
 */
export function defaultProject(): Project {
  return {
    format: PROJECT_FORMAT,
    version: PROJECT_VERSION,
    name: 'New job',
    club: '',
    date: '',
    units: 'feet-inches',
    paper: 'letter',
    field: defaultFieldSpec(),
    pattern: { recipe: STRAIGHT, values: {} },
    art: null,
    design: {
      ground: { kind: 'quiet', shape: 'offset', marginFt: 12 },
      graphicLay: 'toward',
      edgeLaps: 2,
    },
    mowing: {
      wide: 'triplex-reel',
      narrow: 'rotary-roller-21',
      overrides: {},
      // Just inside the side fence on the right-field side.
      gate: { x: 200, y: 160 },
    },
    stakeout: {
      toleranceIn: 3,
      target95In: 4,
      tape: { ...DEFAULT_TAPE, limitFt: 200 },
      crew: 3,
    },
    labour: { people: 4, opens: '06:30', closes: '13:00', rates: {} },
    seats: defaultSeats(),
  };
}
