/** The machines of a job: the catalogue's, with the user's own figures over them, and what they cut. */
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { inches, type Feet } from '../base/units';
import { MACHINES } from './machine-catalogue';
import type { Machine, MowingSpec } from './model';

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
