/** Where the job stands, in the words of the rail and the status line. */
import type { Problem } from '../../base/result';
import type { LengthSystem } from '../../base/quantity';
import { regionEdgeDistance, regionContains } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import type { Project } from '../../project/model';
import { ghostMap, moveRegion } from '../plan/ghost';
import {
  areaText,
  clockText,
  designLength,
  limit,
  percent,
  plural,
  spanText,
} from '../text/figures';
import { STAGE_NAMES, type Stage } from './stages';

export interface Cell {
  readonly id: 'fits' | 'mowable' | 'stakes' | 'hours' | 'problems';
  /** null: not known yet. */
  readonly good: boolean | null;
  readonly head: string;
  readonly detail: string;
  readonly stage: Stage;
}

/** Smallest distance from the graphic, as now placed, to the edge of the grass; negative outside. */
export function clearFt(plan: Plan, project: Project): number | null {
  const graphic = moveRegion(plan.design.graphic, ghostMap(plan, project));
  if (graphic.length === 0) return null;
  const { outfieldGrass } = plan.field;
  let best = Infinity;
  for (const ring of graphic) {
    for (let i = 0; i < ring.length; i += 2) {
      const p = ring[i]!;
      const d = regionEdgeDistance(outfieldGrass, p);
      best = Math.min(best, regionContains(outfieldGrass, p) ? d : -d);
    }
  }
  return best;
}

function fitsCell(plan: Plan, project: Project): Cell {
  const clear = clearFt(plan, project);
  const at = { id: 'fits', stage: 'design' } as const;
  if (clear === null) {
    return { ...at, good: null, head: 'Bands only', detail: 'no word or drawing yet' };
  }
  const detail =
    clear >= 0
      ? `${designLength(clear, project.units)} to the grass edge`
      : `${designLength(-clear, project.units)} off the grass`;
  return { ...at, good: clear >= 0, head: clear >= 0 ? 'Fits' : 'Does not fit', detail };
}

/** Shares that the pass plan must reach: graphic under passes, and laid outside it. */
export const MOWABLE = { covered: 0.95, outside: 0.01 } as const;

function mowableCell(plan: Plan): Cell {
  const { graphicCovered, laidOutside } = plan.passes;
  const at = { id: 'mowable', stage: 'passes' } as const;
  const reach = `${percent(graphicCovered)} of it reached`;
  const miles = plural(plan.passes.passes.length, 'pass', 'passes');
  if (plan.design.graphic.length === 0)
    return { ...at, good: true, head: 'Mowable', detail: miles };
  if (graphicCovered < MOWABLE.covered) {
    return { ...at, good: false, head: 'Too thin in places', detail: reach };
  }
  if (laidOutside > MOWABLE.outside) {
    return {
      ...at,
      good: false,
      head: 'Runs over the edge',
      detail: `${percent(laidOutside)} outside`,
    };
  }
  return { ...at, good: true, head: 'Mowable', detail: reach };
}

function stakesCell(plan: Plan, units: LengthSystem): Cell {
  const at = { id: 'stakes', stage: 'stakes' } as const;
  const s = plan.stakes;
  if (!s) return { ...at, good: null, head: 'No stakes', detail: 'nothing to set out' };
  const over = s.overTarget.length;
  return {
    ...at,
    good: over === 0,
    head: plural(s.stakes.length, 'stake'),
    detail:
      over > 0
        ? `${over} looser than ${limit(s.spec.target95In, units)}`
        : `${plural(s.rounds.length, 'round')}, worst ${limit(s.worstSemiMajor95In, units)}`,
  };
}

function hoursCell(plan: Plan): Cell {
  const w = plan.hours.window;
  const spare = w.spareMinutesP90;
  return {
    id: 'hours',
    stage: 'hours',
    good: w.fitsP90,
    head: `P90 ${clockText(w.finishP90)}`,
    detail: w.fitsP90
      ? `${spanText(spare)} to spare`
      : `${spanText(-spare)} past ${clockText(w.closes)}`,
  };
}

const serious = (p: Problem) => p.severity !== 'note';

function problemsCell(problems: readonly Problem[]): Cell {
  const list = problems.filter(serious);
  const first = list.find((p) => p.severity === 'error') ?? list[0];
  return {
    id: 'problems',
    stage: first ? problemStage(first) : 'packet',
    good: list.length === 0,
    head: list.length === 0 ? 'No problems' : plural(list.length, 'problem'),
    detail: first ? `look at ${STAGE_NAMES[problemStage(first)]}` : 'nothing to put right',
  };
}

const WAITING: readonly Cell[] = (
  [
    ['fits', 'Fits', 'design'],
    ['mowable', 'Mowable', 'passes'],
    ['stakes', 'Stakes', 'stakes'],
    ['hours', 'P90', 'hours'],
  ] as const
).map(([id, head, stage]) => ({ id, head, stage, good: null, detail: 'being worked out' }));

/** The five cells of the status line; figures are of the last good plan. */
export function statusCells(
  plan: Plan | null,
  project: Project | null,
  problems: readonly Problem[],
): readonly Cell[] {
  if (!plan || !project) return [...WAITING, problemsCell(problems)];
  return [
    fitsCell(plan, project),
    mowableCell(plan),
    stakesCell(plan, project.units),
    hoursCell(plan),
    problemsCell(problems),
  ];
}

export interface TabLine {
  readonly line: string;
  readonly fault: boolean;
}

/** Share of the outline that must read for a seat to count. */
export const READS = 0.95;

/** The live line of every index tab. */
export function tabLines(
  plan: Plan | null,
  project: Project | null,
  problems: readonly Problem[],
): Readonly<Record<Stage, TabLine>> {
  const faultAt = (stage: Stage) =>
    problems.some((p) => p.severity === 'error' && problemStage(p) === stage);
  const lines = plan && project ? planLines(plan, project) : EMPTY_LINES;
  const out = {} as Record<Stage, TabLine>;
  for (const [stage, line] of Object.entries(lines) as [Stage, TabLine][]) {
    out[stage] = { line: line.line, fault: line.fault || faultAt(stage) };
  }
  return out;
}

const quietLine = (line: string): TabLine => ({ line, fault: false });

const EMPTY_LINES: Readonly<Record<Stage, TabLine>> = {
  ground: quietLine('fence and controls'),
  design: quietLine('bands and graphic'),
  look: quietLine('from the seats'),
  passes: quietLine('numbered passes'),
  stakes: quietLine('ties and rounds'),
  hours: quietLine('against the window'),
  packet: quietLine('sheets to print'),
};

function planLines(plan: Plan, project: Project): Record<Stage, TabLine> {
  const { stakes, passes, hours, looks } = plan;
  const wide = passes.machines.find((m) => m.role === 'wide')?.id;
  const wideCount = passes.passes.filter((p) => p.machine === wide).length;
  const narrowCount = passes.passes.length - wideCount;
  const reads = looks.filter((l) => l.share >= READS).length;
  const spare = hours.window.spareMinutesP90;
  return {
    ground: quietLine(
      `${plan.field.controls.length} fixed controls, ${areaText(outfieldArea(plan), project.units)} outfield`,
    ),
    design: quietLine(designLine(project)),
    look: looks.length
      ? { line: `reads from ${reads} of ${looks.length} seats`, fault: reads < looks.length }
      : quietLine('bands only'),
    passes: quietLine(`${wideCount} wide, ${narrowCount} narrow`),
    stakes: stakes
      ? {
          line: `${stakes.stakes.length} in ${plural(stakes.rounds.length, 'round')}`,
          fault: stakes.overTarget.length > 0,
        }
      : quietLine('none needed'),
    hours: {
      line:
        spare >= 0 ? `P90 has ${spanText(spare)} to spare` : `P90 runs ${spanText(-spare)} over`,
      fault: !hours.window.fitsP90,
    },
    packet: quietLine(project.paper === 'a4' ? 'ready, A4' : 'ready, letter'),
  };
}

const outfieldArea = (plan: Plan): number =>
  plan.field.surfaces
    .filter((s) => s.kind === 'outfield-grass')
    .reduce((sum, s) => sum + s.areaSqFt, 0);

function designLine(project: Project): string {
  const ground = {
    quiet: 'on quiet ground',
    'counter-change': 'counter-changed',
    square: 'square to the bands',
    plain: 'on plain bands',
  }[project.design.ground.kind];
  if (!project.art) return 'bands only';
  return `${project.art.source.kind === 'text' ? 'word' : 'drawing'} ${ground}`;
}

const STAGE_OF: readonly (readonly [RegExp, Stage])[] = [
  [/^(field|fence|track|base|pole|control|keep-?out|ground)/, 'ground'],
  [/^(stake|tape|tie|round|swing|string|outline|target)/, 'stakes'],
  [/^(machine|mowing|pass|turn|gate|wide|narrow|tool)/, 'passes'],
  [/^(seat|look|view)/, 'look'],
  [/^(labour|hours|window|crew|rate)/, 'hours'],
  [/^(art|svg|font|text|placement|design|pattern|band|graphic|quiet|drawing)/, 'design'],
];

/** The stage where a problem is put right, by its place first, then its code. */
export function problemStage(p: Problem): Stage {
  const where = p.where.toLowerCase();
  for (const [pattern, stage] of STAGE_OF) if (pattern.test(where)) return stage;
  for (const [pattern, stage] of STAGE_OF) if (pattern.test(p.code)) return stage;
  return 'design';
}
