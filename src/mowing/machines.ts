/**
 * The catalogue of machine classes and the user's own figures over it. Classes, not products: a crew
 * measures its own machine and types the figures in. No published turn times or turning circles of
 * turf reels were found, so those are assumptions and say so.
 */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { inches, type Feet } from '../base/units';
import type { Machine, MowingSpec } from './model';

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

/** Distance between neighbouring passes, feet: the cut less the overlap. */
export const swathFt = (machine: Machine): Feet => inches(machine.cutWidthIn - machine.overlapIn);

/** Cutting (or rolling) width, feet. */
export const cutFt = (machine: Machine): Feet => inches(machine.cutWidthIn);

/** What the design needs to know of the machines, feet. */
export const designWidths = ({
  wide,
  narrow,
}: {
  readonly wide: Machine;
  readonly narrow: Machine;
}) => ({
  wideSwathFt: swathFt(wide),
  wideCutFt: cutFt(wide),
  wideTurnFt: wide.turnRadiusFt,
  narrowSwathFt: swathFt(narrow),
  narrowCutFt: cutFt(narrow),
});

type NumberKey = {
  [K in keyof Machine]: Machine[K] extends number ? K : never;
}[keyof Machine];

interface Limit {
  readonly key: NumberKey;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

/** What a figure may be: anything outside is a slip of the pen, not a machine for turf. */
const LIMITS: readonly Limit[] = [
  { key: 'cutWidthIn', low: 6, high: 240, unit: 'in' },
  { key: 'overlapIn', low: 0, high: 24, unit: 'in' },
  { key: 'bodyWidthIn', low: 1, high: 300, unit: 'in' },
  { key: 'frontOverhangIn', low: 0, high: 240, unit: 'in' },
  { key: 'rearOverhangIn', low: 0, high: 240, unit: 'in' },
  { key: 'cuttingMph', low: 0.1, high: 15, unit: 'mph' },
  { key: 'turningMph', low: 0.1, high: 15, unit: 'mph' },
  { key: 'runningMph', low: 0.1, high: 20, unit: 'mph' },
  { key: 'turnRadiusFt', low: 0, high: 40, unit: 'ft' },
  { key: 'turnSeconds', low: 0, high: 120, unit: 's' },
  { key: 'people', low: 1, high: 6, unit: '' },
];

/** More machines than this on one outfield stand in each other's way; assumption. */
export const MOST_FURTHER = 6;

/** The machines of a job; `further` ones share the work of the first of their role. */
export interface Fleet {
  readonly wide: Machine;
  readonly narrow: Machine;
  readonly further: readonly Machine[];
}

/**
 * The machines that the spec names, with the user's figures laid over the catalogue's (their source
 * then reads `typed in`). The second machine of a kind is called `<id>-2`, the third `<id>-3`.
 * Problems: `machine-unknown`, `machine-role`, `machine-figure`, `machine-overlap`, `machine-cut`;
 * warning `machine-body-wide`.
 */
export function findMachines(spec: MowingSpec): Result<Fleet> {
  const problems: Problem[] = unknownOverrides(spec);
  const wide = findMachine(spec, 'wide', problems);
  const narrow = findMachine(spec, 'narrow', problems);
  if (!wide || !narrow) return fail(...problems);
  const further = findFurther(spec, { wide, narrow }, problems);
  if (problems.some((p) => p.severity === 'error')) return fail(...problems);
  return succeed({ wide, narrow, further }, problems);
}

function findFurther(
  spec: MowingSpec,
  first: Pick<Fleet, 'wide' | 'narrow'>,
  problems: Problem[],
): Machine[] {
  const counts = new Map([
    [first.wide.id, 1],
    [first.narrow.id, 1],
  ]);
  return (spec.further ?? []).flatMap((id, i) => {
    const where = `mowing.further.${i}`;
    const known = MACHINES.find((m) => m.id === id);
    if (!known) {
      problems.push(unknownMachine(where, id, MACHINES));
      return [];
    }
    const machine = withOverrides(known, spec.overrides[id] ?? {});
    const number = (counts.get(id) ?? 0) + 1;
    if (number === 1) problems.push(...checkMachine(machine, `mowing.overrides.${id}`));
    problems.push(...checkCut(machine, first[machine.role], where));
    counts.set(id, number);
    if (number === 1) return [machine];
    return [{ ...machine, id: `${id}-${number}`, name: `${machine.name}, no. ${number}` }];
  });
}

/** The swaths are laid out for the first machine of a role; whoever shares them must cut as wide. */
function checkCut(machine: Machine, first: Machine, where: string): Problem[] {
  if (machine.cutWidthIn === first.cutWidthIn) return [];
  return [
    problem(
      'machine-cut',
      where,
      `${machine.name} cuts ${machine.cutWidthIn} in, ${first.name} cuts ${first.cutWidthIn} in: they cannot share passes`,
      'choose a further machine with the same cut',
    ),
  ];
}

function unknownOverrides(spec: MowingSpec): Problem[] {
  return Object.keys(spec.overrides)
    .filter((id) => !MACHINES.some((m) => m.id === id))
    .map((id) => unknownMachine(`mowing.overrides.${id}`, id, MACHINES));
}

function unknownMachine(where: string, id: string, known: readonly Machine[]): Problem {
  const list = known.map((m) => m.id).join(', ');
  return problem('machine-unknown', where, `there is no machine "${id}"`, `use one of ${list}`);
}

function findMachine(
  spec: MowingSpec,
  role: 'wide' | 'narrow',
  problems: Problem[],
): Machine | null {
  const id = spec[role];
  const where = `mowing.${role}`;
  const machine = MACHINES.find((m) => m.id === id);
  const fitting = MACHINES.filter((m) => m.role === role);
  if (!machine) {
    problems.push(unknownMachine(where, id, fitting));
    return null;
  }
  if (machine.role !== role) {
    const list = fitting.map((m) => m.id).join(', ');
    problems.push(
      problem(
        'machine-role',
        where,
        `${machine.name} is not a ${role} machine`,
        `use one of ${list}`,
      ),
    );
    return null;
  }
  const merged = withOverrides(machine, spec.overrides[id] ?? {});
  problems.push(...checkMachine(merged, `mowing.overrides.${id}`));
  return merged;
}

function withOverrides(machine: Machine, own: MowingSpec['overrides'][string]): Machine {
  const sources: Record<string, string> = { ...machine.sources };
  for (const key of Object.keys(own)) sources[key] = 'typed in';
  return { ...machine, ...own, id: machine.id, role: machine.role, sources };
}

function checkMachine(machine: Machine, where: string): Problem[] {
  const problems = LIMITS.flatMap((limit) => checkFigure(machine, limit, where));
  if (machine.overlapIn >= machine.cutWidthIn) {
    problems.push(
      problem(
        'machine-overlap',
        `${where}.overlapIn`,
        `an overlap of ${machine.overlapIn} in leaves nothing of a ${machine.cutWidthIn} in cut`,
        'make the overlap smaller than the cutting width',
      ),
    );
  }
  if (machine.bodyWidthIn > machine.cutWidthIn) {
    problems.push(
      problem(
        'machine-body-wide',
        `${where}.bodyWidthIn`,
        `the body is ${machine.bodyWidthIn - machine.cutWidthIn} in wider than the cut`,
        'along skin and fence it cannot cut to the edge of the grass: trim by hand',
        'warning',
      ),
    );
  }
  return problems;
}

function checkFigure(machine: Machine, limit: Limit, where: string): Problem[] {
  const value = machine[limit.key];
  if (Number.isFinite(value) && value >= limit.low && value <= limit.high) return [];
  const range = `${limit.low} to ${limit.high} ${limit.unit}`.trim();
  return [
    problem(
      'machine-figure',
      `${where}.${limit.key}`,
      `${value} is not a figure for ${machine.name}`,
      `give ${range}`,
    ),
  ];
}
