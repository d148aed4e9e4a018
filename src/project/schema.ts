/**
 * The shape of a saved project, with bounds of plain good sense. What is nonsense for one layer only
 * (a fence inside the bases, an unknown font) is that layer's to find.
 */
import * as v from 'valibot';
import type { SteelUse } from '../adjust/steel-tape';
import { MOST_LAPS, MOST_MARGIN_FT, MOST_TOLERANCE_IN } from '../design/limits';
import type { FieldSpec } from '../field/model';
import { MOST_DRIFT_IN } from '../guide/drift';
import type { GuideSpec } from '../guide/model';
import { MOST_PEOPLE } from '../labour/check-labour';
import { MOST_FURTHER } from '../mowing/machines';
import type { MowingSpec } from '../mowing/model';
import { MOST_OVER_LAY_SECONDS } from '../mowing/over-lay';
import { patternSchema } from '../pattern/recipe-schema';
import type { TapeSpec } from '../stakeout/model';
import { PROJECT_FORMAT, PROJECT_VERSION, type Project } from './model';

/** A finite number in bounds. */
const figure = (least: number, most: number) =>
  v.pipe(v.number(), v.minValue(least), v.maxValue(most));
const count = (least: number, most: number) => v.pipe(figure(least, most), v.integer());

/** One line of text as it may be printed. */
const line = (most: number) =>
  v.pipe(
    v.string(),
    v.maxLength(most),
    v.regex(/^\P{Cc}*$/u, 'one line without control characters'),
  );
const word = (most: number) => v.pipe(line(most), v.minLength(1));

/** Any length on the ground, and any figure that its own layer bounds. */
const FAR = 100_000;
const feet = figure(-FAR, FAR);
const point = v.strictObject({ x: feet, y: feet });
const share = figure(0, 0.1);

const fencePoint = v.strictObject({ bearingDeg: feet, distanceFt: feet });
const pole = v.nullable(v.strictObject({ distanceFt: feet, sigmaIn: feet }));

const field = v.strictObject({
  name: line(80),
  book: v.literal('baseball-90'),
  baseSizeIn: v.picklist([15, 18]),
  bases: v.picklist(['in', 'out']),
  fence: v.pipe(v.array(fencePoint), v.maxLength(400)),
  fenceShape: v.picklist(['smooth', 'straight']),
  trackWidthFt: feet,
  skinArcFrom: v.picklist(['plate-front', 'plate-rear']),
  skinRadiusFt: feet,
  foulWidthFt: feet,
  poles: v.strictObject({ left: pole, right: pole }),
  controlSigmaIn: feet,
  keepOuts: v.pipe(
    v.array(v.strictObject({ id: word(40), name: line(80), centre: point, radiusFt: feet })),
    v.maxLength(500),
  ),
  turf: v.exactOptional(
    v.strictObject({
      grass: v.picklist(['cool-season', 'bermuda', 'other']),
      heightIn: figure(0.1, 6),
    }),
  ),
}) satisfies v.GenericSchema<unknown, FieldSpec>;

const source = v.variant('kind', [
  v.strictObject({ kind: v.literal('text'), text: line(200), font: word(80) }),
  v.strictObject({
    kind: v.literal('svg'),
    file: word(200),
    svg: v.exactOptional(v.string()),
  }),
]);

const placement = v.strictObject({
  centre: point,
  widthFt: figure(0, FAR),
  rotationDeg: figure(-360, 360),
});

const ground = v.variant('kind', [
  v.strictObject({
    kind: v.literal('quiet'),
    shape: v.picklist(['offset', 'box', 'oval']),
    marginFt: figure(0, MOST_MARGIN_FT),
  }),
  v.strictObject({ kind: v.literal('counter-change') }),
  v.strictObject({ kind: v.literal('square') }),
  v.strictObject({ kind: v.literal('plain') }),
]);

const design = v.strictObject({
  ground,
  graphicLay: v.picklist(['toward', 'away']),
  edgeLaps: count(0, MOST_LAPS),
});

/** Own figures over a machine's: any of them, each bounded where the machine is looked up. */
const ownMachine = v.strictObject({
  name: v.exactOptional(line(80)),
  cutWidthIn: v.exactOptional(feet),
  overlapIn: v.exactOptional(feet),
  bodyWidthIn: v.exactOptional(feet),
  frontOverhangIn: v.exactOptional(feet),
  rearOverhangIn: v.exactOptional(feet),
  cuttingMph: v.exactOptional(feet),
  turningMph: v.exactOptional(feet),
  runningMph: v.exactOptional(feet),
  turnRadiusFt: v.exactOptional(feet),
  turnSeconds: v.exactOptional(feet),
  mayReverse: v.exactOptional(v.boolean()),
  lays: v.exactOptional(v.boolean()),
  laysInTransit: v.exactOptional(v.boolean()),
  powered: v.exactOptional(v.boolean()),
  people: v.exactOptional(feet),
});

const mowing = v.strictObject({
  wide: word(80),
  narrow: word(80),
  further: v.exactOptional(v.pipe(v.array(word(80)), v.maxLength(MOST_FURTHER))),
  overrides: v.record(word(80), ownMachine),
  gate: point,
  overLaySecondsPerFt: v.exactOptional(figure(0, MOST_OVER_LAY_SECONDS)),
}) satisfies v.GenericSchema<unknown, MowingSpec>;

const tape = v.strictObject({
  name: v.exactOptional(line(80)),
  material: v.exactOptional(v.picklist(['fibreglass', 'steel'])),
  accuracyClass: v.exactOptional(v.picklist(['I', 'II', 'III'])),
  readingSigmaIn: figure(0, 6),
  proportional: share,
  scaleSigma: v.exactOptional(share),
  limitFt: figure(10, 1000),
}) satisfies v.GenericSchema<unknown, TapeSpec>;

/** A tape that hangs under no pull, or has no section, has no correction. */
const steel = v.strictObject({
  temperatureF: figure(-60, 200),
  pullLb: figure(1, 100),
  spanFt: figure(0, 1000),
  standardF: figure(-60, 200),
  standardPullLb: figure(0, 100),
  weightLbPerFt: figure(0, 1),
  sectionSqIn: figure(0.0005, 0.2),
}) satisfies v.GenericSchema<unknown, SteelUse>;

const stakeout = v.strictObject({
  toleranceIn: figure(0.25, MOST_TOLERANCE_IN),
  target95In: figure(0.25, 36),
  tape,
  secondTape: v.exactOptional(tape),
  steel: v.exactOptional(steel),
  gridSheet: v.exactOptional(v.strictObject({ spacingFt: figure(1, 50) })),
  square: v.exactOptional(v.picklist(['eye', 'square', 'triangle'])),
  crew: v.picklist([2, 3, 4]),
});

/** Errors may be none; a band edge that may lie anywhere needs no string. */
const guides = v.strictObject({
  strings: v.exactOptional(v.picklist(['fewest', 'none'])),
  order: v.exactOptional(v.picklist(['shortest', 'beside'])),
  passSigmaIn: v.exactOptional(figure(0, MOST_DRIFT_IN)),
  passBiasIn: v.exactOptional(figure(0, MOST_DRIFT_IN)),
  stringSigmaIn: v.exactOptional(figure(0, MOST_DRIFT_IN)),
  toleranceIn: v.exactOptional(figure(0.5, MOST_DRIFT_IN)),
}) satisfies v.GenericSchema<unknown, Partial<GuideSpec>>;

const clock = v.pipe(v.string(), v.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day like 06:30'));

const rate = v.pipe(
  v.strictObject({ low: figure(0, FAR), likely: figure(0, FAR), high: figure(0, FAR) }),
  v.check((r) => r.low <= r.likely && r.likely <= r.high, 'low, likely and high in that order'),
);

const labour = v.pipe(
  v.strictObject({
    people: count(1, MOST_PEOPLE),
    opens: clock,
    closes: clock,
    rates: v.record(word(80), rate),
  }),
  v.check((w) => w.opens < w.closes, 'a window that closes after it opens'),
);

const seat = v.strictObject({
  id: v.pipe(
    v.string(),
    v.regex(/^[a-z0-9][a-z0-9-]{0,39}$/, 'small letters, digits and hyphens, 40 at most'),
  ),
  name: line(80),
  at: point,
  eyeHeightFt: feet,
  lookAt: point,
});

const seats = v.pipe(
  v.array(seat),
  v.maxLength(12),
  v.check(
    (list) => new Set(list.map((s) => s.id)).size === list.length,
    'seats with an id of their own each',
  ),
);

const date = v.pipe(
  v.string(),
  v.check((text) => text === '' || isDay(text), 'a day like 2027-04-16, or nothing'),
);

/** A day that the calendar has, written `YYYY-MM-DD`. */
function isDay(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return day >= 1 && day <= days;
}

/** Of a host name and a path, short enough to stand before a list in a printed code. */
const address = v.pipe(
  v.string(),
  v.maxLength(120),
  v.regex(
    /^https:\/\/[a-z0-9.-]+(:\d{1,5})?(\/[\w.~-]+)*\/?$/i,
    'an https address without ? or #, like https://grounds.example.edu/crew/',
  ),
);

/** The whole saved document; unknown keys are refused. */
export const projectSchema = v.strictObject({
  format: v.literal(PROJECT_FORMAT),
  version: v.literal(PROJECT_VERSION),
  name: line(120),
  club: line(120),
  date,
  units: v.picklist(['feet-inches', 'metric']),
  paper: v.picklist(['letter', 'a4']),
  crewAddress: v.exactOptional(address),
  field,
  pattern: patternSchema,
  art: v.nullable(v.strictObject({ source, placement })),
  design,
  mowing,
  stakeout,
  guides: v.exactOptional(guides),
  labour,
  seats,
}) satisfies v.GenericSchema<unknown, Project>;
