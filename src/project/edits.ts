/**
 * Every change that a person can make to a project, each with the label that undo shows. Menus, keys,
 * the command line and tests call the same ones. An edit never changes its input; a value that makes
 * no sense gives problems and the project stays as it was.
 */
import { DEFAULT_STEEL, type SteelUse } from '../adjust/steel-tape';
import type { LengthSystem } from '../base/quantity';
import { fail, problem, type Result } from '../base/result';
import type { ArtSource, Placement } from '../art/model';
import type { DesignSpec, GroundSpec, LaySense } from '../design/model';
import type { FencePoint, FieldSpec, KeepOutSpec, MeasuredPole } from '../field/model';
import { classScaleSigma, type TapeClass } from '../field/tape-classes';
import type { Point } from '../geometry/point';
import type { GuideSpec } from '../guide/model';
import type { LabourSpec } from '../labour/model';
import type { MowingSpec } from '../mowing/model';
import type { ParameterValue, Recipe } from '../pattern/model';
import type { SquareTool, TapeSpec } from '../stakeout/model';
import type { SeatSpec } from '../view/model';
import { checkProject } from './check-project';
import type { Project } from './model';

export interface Edit<Value> {
  /** As undo shows it. */
  readonly label: string;
  /** Problems as in `checkProject`; `no-graphic` where there is none to change. */
  readonly apply: (project: Project, value: Value) => Result<Project>;
}

/** An edit from a plain change; the whole project is held against its shape afterwards. */
function edit<Value>(
  label: string,
  change: (project: Project, value: Value) => Project,
): Edit<Value> {
  return { label, apply: (project, value) => checkChanged(project, change(project, value)) };
}

/** The changed object itself, so that untouched parts stay shared; never a half-good project. */
function checkChanged(before: Project, after: Project): Result<Project> {
  if (before === after) return { ok: true, value: before, problems: [] };
  const checked = checkProject(after);
  return checked.ok ? { ...checked, value: after } : checked;
}

// The job

export const setName = edit<string>('Rename the job', (p, name) => ({ ...p, name }));
export const setClub = edit<string>('Change the club', (p, club) => ({ ...p, club }));
export const setDate = edit<string>('Change the day', (p, date) => ({ ...p, date }));
export const setUnits = edit<LengthSystem>('Change the units', (p, units) => ({ ...p, units }));
export const setPaper = edit<Project['paper']>('Change the paper', (p, paper) => ({ ...p, paper }));

/** Where the phone page is served; empty takes it out again. */
export const setCrewAddress = edit<string>('Change the phone page’s address', (p, address) => {
  const { crewAddress, ...others } = p;
  if (address === '') return crewAddress === undefined ? p : others;
  return { ...p, crewAddress: address };
});

// The ground

/** Any figures of the field at once. */
export const setField = edit<Partial<FieldSpec>>('Change the field', editField);

export const setFence = edit<readonly FencePoint[]>('Change the fence', (p, fence) =>
  editField(p, { fence }),
);

/** One fence point by its place in the list, left pole first. */
export const setFencePoint = edit<{ readonly index: number; readonly point: FencePoint }>(
  'Move a fence point',
  (p, { index, point }) =>
    editField(p, { fence: p.field.fence.map((old, i) => (i === index ? point : old)) }),
);

export const setFenceShape = edit<FieldSpec['fenceShape']>(
  'Change the fence’s shape',
  (p, fenceShape) => editField(p, { fenceShape }),
);

export const setTrackWidth = edit<number>('Change the warning track', (p, trackWidthFt) =>
  editField(p, { trackWidthFt }),
);

/** A pole’s taped distance, or null to take it out of the controls again. */
export const setPole = edit<{
  readonly side: 'left' | 'right';
  readonly measured: MeasuredPole | null;
}>('Measure a foul pole', (p, { side, measured }) =>
  editField(p, { poles: { ...p.field.poles, [side]: measured } }),
);

/** What first and third are tied at: the base’s corner, or the empty socket. */
export const setBases = edit<Pick<FieldSpec, 'bases' | 'baseSizeIn'>>(
  'Change what the tape touches at the bases',
  editField,
);

export const addKeepOut = edit<KeepOutSpec>('Add a keep-out', (p, keepOut) =>
  editField(p, { keepOuts: [...p.field.keepOuts, keepOut] }),
);

/** By id; an id that is not there changes nothing. */
export const removeKeepOut = edit<string>('Remove a keep-out', (p, id) =>
  p.field.keepOuts.some((k) => k.id === id)
    ? editField(p, { keepOuts: p.field.keepOuts.filter((k) => k.id !== id) })
    : p,
);

function editField(project: Project, change: Partial<FieldSpec>): Project {
  return { ...project, field: { ...project.field, ...change } };
}

// The pattern and the design

/** Another pattern, with the values that its recipe starts with. */
export const setRecipe = edit<Recipe>('Change the pattern', (p, recipe) => ({
  ...p,
  pattern: { recipe, values: {} },
}));

/** One parameter of the pattern by its id. */
export const setPatternValue = edit<{ readonly id: string; readonly value: ParameterValue }>(
  'Change a figure of the pattern',
  (p, { id, value }) => ({
    ...p,
    pattern: { ...p.pattern, values: { ...p.pattern.values, [id]: value } },
  }),
);

export const setGround = edit<GroundSpec>('Change the ground behind the graphic', (p, ground) =>
  editDesign(p, { ground }),
);

/** Margin of quiet ground; on any other ground nothing changes. */
export const setQuietMargin = edit<number>('Change the quiet ground’s margin', (p, marginFt) =>
  p.design.ground.kind === 'quiet'
    ? editDesign(p, { ground: { ...p.design.ground, marginFt } })
    : p,
);

export const setGraphicLay = edit<LaySense>('Turn the graphic’s lay', (p, graphicLay) =>
  editDesign(p, { graphicLay }),
);

export const setEdgeLaps = edit<number>('Change the clean-up laps', (p, edgeLaps) =>
  editDesign(p, { edgeLaps }),
);

function editDesign(project: Project, change: Partial<DesignSpec>): Project {
  return { ...project, design: { ...project.design, ...change } };
}

// The graphic

/** Where a new graphic goes: the middle of centre field, a third of the outfield wide. */
export const FIRST_PLACEMENT: Placement = {
  centre: { x: 0, y: 265 },
  widthFt: 120,
  rotationDeg: 0,
};

/** Other art in the same place, or the first art in `FIRST_PLACEMENT`. */
export const setArt = edit<ArtSource>('Change the graphic', placeSource);

/** The word itself; a drawing is replaced by it, in the font named or the one there is. */
export const setWord = edit<{ readonly text: string; readonly font: string }>(
  'Change the word',
  (p, word) => placeSource(p, { kind: 'text', ...word }),
);

/** A drawing, kept in the project as it is. */
export const setDrawing = edit<{ readonly file: string; readonly svg: string }>(
  'Change the drawing',
  (p, drawing) => placeSource(p, { kind: 'svg', ...drawing }),
);

export const removeArt = edit<null>('Take the graphic off', (p) =>
  p.art === null ? p : { ...p, art: null },
);

function placeSource(project: Project, source: ArtSource): Project {
  const placement = project.art?.placement ?? FIRST_PLACEMENT;
  return { ...project, art: { source, placement } };
}

export const moveGraphic = editPlacement<Point>('Move the graphic', (centre) => ({ centre }));
export const resizeGraphic = editPlacement<number>('Resize the graphic', (widthFt) => ({
  widthFt,
}));
export const turnGraphic = editPlacement<number>('Turn the graphic', (rotationDeg) => ({
  rotationDeg,
}));

/** Centre, width and rotation in one step, as a corner drag changes them. */
export const placeGraphic = editPlacement<Partial<Placement>>(
  'Place the graphic',
  (change) => change,
);

function editPlacement<Value>(
  label: string,
  change: (value: Value) => Partial<Placement>,
): Edit<Value> {
  return {
    label,
    apply: (project, value) => {
      if (!project.art) return fail(noGraphic());
      const placement = { ...project.art.placement, ...change(value) };
      return checkChanged(project, { ...project, art: { ...project.art, placement } });
    },
  };
}

const noGraphic = () =>
  problem('no-graphic', 'art', 'there is no graphic on the grass', 'add a word or a drawing first');

// Mowing

export const setWideMower = edit<string>('Change the wide mower', (p, wide) =>
  editMowing(p, { wide }),
);

export const setNarrowTool = edit<string>('Change the narrow tool', (p, narrow) =>
  editMowing(p, { narrow }),
);

export const setGate = edit<Point>('Move the gate', (p, gate) => editMowing(p, { gate }));

/** Machines that share the work, by catalogue id; none takes the list away. */
export const setFurtherMachines = edit<readonly string[]>(
  'Change the further machines',
  (p, further) => {
    const { further: before = [], ...alone } = p.mowing;
    if (further.length === 0) return before.length === 0 ? p : { ...p, mowing: alone };
    return editMowing(p, { further });
  },
);

/** What a foot over finished grass against its lay is worth, seconds. */
export const setOverLayPrice = edit<number>(
  'Price driving over finished grass',
  (p, overLaySecondsPerFt) => editMowing(p, { overLaySecondsPerFt }),
);

/** Own figures of one machine over the catalogue’s; null takes them all back. */
export const setMachineFigures = edit<{
  readonly machine: string;
  readonly figures: MowingSpec['overrides'][string] | null;
}>('Change a machine’s figures', (p, { machine, figures }) => {
  const others = Object.entries(p.mowing.overrides).filter(([id]) => id !== machine);
  const own = figures === null ? [] : [[machine, figures] as const];
  return editMowing(p, { overrides: Object.fromEntries([...others, ...own]) });
});

function editMowing(project: Project, change: Partial<MowingSpec>): Project {
  return { ...project, mowing: { ...project.mowing, ...change } };
}

// Guide lines

/** Own figures of drift and guide strings over the defaults. */
export const setGuides = edit<Partial<GuideSpec>>('Change the guide lines', (p, change) => ({
  ...p,
  guides: { ...p.guides, ...change },
}));

// Setting out

export const setTolerance = edit<number>('Change the outline’s tolerance', (p, toleranceIn) =>
  editStakeout(p, { toleranceIn }),
);

export const setTarget95 = edit<number>('Change the stakes’ target', (p, target95In) =>
  editStakeout(p, { target95In }),
);

export const setTape = edit<Partial<TapeSpec>>('Change the tape', (p, tape) =>
  editStakeout(p, { tape: { ...p.stakeout.tape, ...tape } }),
);

/**
 * The class printed on the tape: its scale error is then half the class limit. What the proportional
 * part held of it is taken out; null takes the class off again and puts the scale back in there.
 */
export const setTapeClass = edit<TapeClass | null>('Change the tape’s class', (p, tapeClass) => {
  const old = p.stakeout.tape.scaleSigma ?? 0;
  const tape = without(p.stakeout.tape, 'accuracyClass', 'scaleSigma');
  const whole = Math.hypot(tape.proportional, old);
  if (tapeClass === null) return editStakeout(p, { tape: { ...tape, proportional: whole } });
  const scaleSigma = classScaleSigma(tapeClass, tape.limitFt);
  const proportional = old > 0 ? tape.proportional : rest(whole, scaleSigma);
  return editStakeout(p, {
    tape: { ...tape, accuracyClass: tapeClass, proportional, scaleSigma },
  });
});

/** What a whole error holds besides a part of it; the whole when the part is larger. */
const rest = (whole: number, part: number): number =>
  part < whole ? Math.sqrt(whole * whole - part * part) : whole;

/** The other holder's tape of another kind; null: two tapes of the first kind. */
export const setSecondTape = edit<TapeSpec | null>('Change the second tape', (p, tape) => {
  const others = without(p.stakeout, 'secondTape');
  return { ...p, stakeout: tape === null ? others : { ...others, secondTape: tape } };
});

/** The object less some of its keys. */
function without<T extends object, K extends keyof T>(value: T, ...keys: K[]): Omit<T, K> {
  const copy: Partial<T> = { ...value };
  for (const key of keys) delete copy[key];
  return copy as Omit<T, K>;
}

/** How a steel tape is used on the day; null prints no corrections. */
export const setSteel = edit<Partial<SteelUse> | null>('Change the steel tape', (p, steel) => {
  const { steel: old = DEFAULT_STEEL, ...others } = p.stakeout;
  return { ...p, stakeout: steel === null ? others : { ...others, steel: { ...old, ...steel } } };
});

/** What keeps a short offset square to its line. */
export const setSquare = edit<SquareTool>('Change the square', (p, square) =>
  editStakeout(p, { square }),
);

/** The customary grid printed as well, its strings `spacingFt` apart; null prints none. */
export const setGridSheet = edit<{ readonly spacingFt: number } | null>(
  'Change the grid sheet',
  (p, gridSheet) =>
    gridSheet === null
      ? { ...p, stakeout: without(p.stakeout, 'gridSheet') }
      : editStakeout(p, { gridSheet }),
);

export const setCrew = edit<Project['stakeout']['crew']>('Change the setting-out crew', (p, crew) =>
  editStakeout(p, { crew }),
);

function editStakeout(project: Project, change: Partial<Project['stakeout']>): Project {
  return { ...project, stakeout: { ...project.stakeout, ...change } };
}

// Hours and seats

export const setPeople = edit<number>('Change the people', (p, people) =>
  editLabour(p, { people }),
);

export const setWindow = edit<Pick<LabourSpec, 'opens' | 'closes'>>(
  'Change the working window',
  editLabour,
);

/** Own rate of one task over the catalogue’s; null takes it back. */
export const setRate = edit<{
  readonly task: string;
  readonly rate: LabourSpec['rates'][string] | null;
}>('Change a rate', (p, { task, rate }) => {
  const others = Object.entries(p.labour.rates).filter(([id]) => id !== task);
  const own = rate === null ? [] : [[task, rate] as const];
  return editLabour(p, { rates: Object.fromEntries([...others, ...own]) });
});

/** Own rates of several tasks at once; the others stay as they are. */
export const setRates = edit<LabourSpec['rates']>('Take over the crew’s own times', (p, rates) =>
  editLabour(p, { rates: { ...p.labour.rates, ...rates } }),
);

function editLabour(project: Project, change: Partial<LabourSpec>): Project {
  return { ...project, labour: { ...project.labour, ...change } };
}

export const setSeats = edit<readonly SeatSpec[]>('Change the seats', (p, seats) => ({
  ...p,
  seats,
}));
