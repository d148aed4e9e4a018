/** Random projects of every shape, for laws that must hold whatever the figures. */
import fc from 'fast-check';
import type { Project } from '../../src/project/model';
import { defaultProject } from '../../src/project/default-project';

/** JSON has no minus zero. */
const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((n) => (n === 0 ? 0 : n));
const feet = number(-1000, 1000);
const point = fc.record({ x: feet, y: feet });
const line = fc
  .string({ maxLength: 40, unit: 'grapheme' })
  .filter((s) => /^\P{Cc}*$/u.test(s) && s.length <= 80);
const id = fc.stringMatching(/^[a-z][a-z0-9-]{0,20}$/).filter((s) => !(s in Object.prototype));

const pole = fc.option(fc.record({ distanceFt: feet, sigmaIn: number(0, 9) }));

const field = fc.record({
  name: line,
  book: fc.constant('baseball-90' as const),
  baseSizeIn: fc.constantFrom(15 as const, 18 as const),
  bases: fc.constantFrom('in' as const, 'out' as const),
  fence: fc.array(fc.record({ bearingDeg: feet, distanceFt: feet }), { maxLength: 8 }),
  fenceShape: fc.constantFrom('smooth' as const, 'straight' as const),
  trackWidthFt: feet,
  skinArcFrom: fc.constantFrom('plate-front' as const, 'plate-rear' as const),
  skinRadiusFt: feet,
  foulWidthFt: feet,
  poles: fc.record({ left: pole, right: pole }),
  controlSigmaIn: feet,
  keepOuts: fc.array(fc.record({ id, name: line, centre: point, radiusFt: feet }), {
    maxLength: 3,
  }),
});

const source = fc.oneof(
  fc.record({ kind: fc.constant('text' as const), text: line, font: id }),
  fc.record({ kind: fc.constant('svg' as const), file: id }),
  fc.record({ kind: fc.constant('svg' as const), file: id, svg: fc.string() }),
);

const ground = fc.oneof(
  fc.record({
    kind: fc.constant('quiet' as const),
    shape: fc.constantFrom('offset' as const, 'box' as const, 'oval' as const),
    marginFt: number(0, 150),
  }),
  fc.record({
    kind: fc.constantFrom('counter-change' as const, 'square' as const, 'plain' as const),
  }),
);

const ownFigures = fc.record(
  {
    name: line,
    cutWidthIn: number(6, 240),
    mayReverse: fc.boolean(),
    people: fc.integer({ min: 1, max: 6 }),
  },
  { requiredKeys: [] },
);
const rate = fc
  .tuple(number(0, 50), number(0, 50), number(0, 50))
  .map((three) => [...three].sort((a, b) => a - b) as [number, number, number])
  .map(([low, likely, high]) => ({ low, likely, high }));

const day = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2040-01-01'), noInvalidDate: true })
  .map((d) => d.toISOString().slice(0, 10));

const tape = fc.record(
  {
    name: line,
    material: fc.constantFrom('fibreglass' as const, 'steel' as const),
    accuracyClass: fc.constantFrom('I' as const, 'II' as const, 'III' as const),
    readingSigmaIn: number(0, 6),
    proportional: number(0, 0.1),
    scaleSigma: number(0, 0.1),
    limitFt: number(10, 1000),
  },
  { requiredKeys: ['readingSigmaIn', 'proportional', 'limitFt'] },
);

const steel = fc.record({
  temperatureF: number(-60, 200),
  pullLb: number(1, 100),
  spanFt: number(0, 1000),
  standardF: number(-60, 200),
  standardPullLb: number(0, 100),
  weightLbPerFt: number(0, 1),
  sectionSqIn: number(0.0005, 0.2),
});

const stakeout = fc
  .record(
    {
      tape,
      secondTape: tape,
      steel,
      gridSheet: fc.record({ spacingFt: number(1, 50) }),
      square: fc.constantFrom('eye' as const, 'square' as const, 'triangle' as const),
    },
    { requiredKeys: ['tape'] },
  )
  .map((parts) => ({ ...defaultProject().stakeout, ...parts }));

export const anyProject: fc.Arbitrary<Project> = fc
  .record({
    name: line,
    club: line,
    date: fc.oneof(fc.constant(''), day),
    units: fc.constantFrom('feet-inches' as const, 'metric' as const),
    paper: fc.constantFrom('letter' as const, 'a4' as const),
    field,
    art: fc.option(
      fc.record({
        source,
        placement: fc.record({
          centre: point,
          widthFt: number(0, 900),
          rotationDeg: number(-360, 360),
        }),
      }),
    ),
    design: fc.record({
      ground,
      graphicLay: fc.constantFrom('toward' as const, 'away' as const),
      edgeLaps: fc.integer({ min: 0, max: 3 }),
    }),
    mowing: fc.record({
      wide: id,
      narrow: id,
      overrides: fc.dictionary(id, ownFigures, { maxKeys: 3 }),
      gate: point,
      overLaySecondsPerFt: number(0, 10),
    }),
    stakeout,
    labour: fc.record({
      people: fc.integer({ min: 1, max: 50 }),
      opens: fc.constant('05:45'),
      closes: fc.constant('14:10'),
      rates: fc.dictionary(id, rate, { maxKeys: 3 }),
    }),
  })
  .map((parts) => ({ ...defaultProject(), ...parts }));
