import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as edits from '../../src/project/edits';
import { checkProject } from '../../src/project/check-project';
import { defaultProject } from '../../src/project/default-project';
import { record, startHistory, undo } from '../../src/project/history';
import type { Project } from '../../src/project/model';
import { writeProject } from '../../src/project/write-project';
import { anyProject } from './arbitrary';

const START: Project = {
  ...defaultProject(),
  art: {
    source: { kind: 'text', text: 'Lanterns', font: 'pacifico' },
    placement: { centre: { x: 0, y: 265 }, widthFt: 150, rotationDeg: 0 },
  },
};

/** One edit with a value that suits it, and what must then hold. */
const use = <V>(edit: edits.Edit<V>, value: V, holds: (p: Project) => boolean) => ({
  label: edit.label,
  apply: (p: Project) => edit.apply(p, value),
  holds,
});

const head = { id: 'h1', name: 'Head', centre: { x: 0, y: 200 }, radiusFt: 1 };
const rate = { low: 1, likely: 2, high: 3 };
const USES = [
  use(edits.setName, 'Opening day', (p) => p.name === 'Opening day'),
  use(edits.setClub, 'Fernmoor College Lanterns', (p) => p.club.startsWith('Fernmoor')),
  use(edits.setDate, '2028-02-29', (p) => p.date === '2028-02-29'),
  use(edits.setUnits, 'metric', (p) => p.units === 'metric'),
  use(edits.setPaper, 'a4', (p) => p.paper === 'a4'),
  use(
    edits.setCrewAddress,
    'https://grounds.example.edu/crew/',
    (p) => p.crewAddress === 'https://grounds.example.edu/crew/',
  ),
  use(edits.setField, { foulWidthFt: 45 }, (p) => p.field.foulWidthFt === 45),
  use(edits.setFence, [], (p) => p.field.fence.length === 0),
  use(
    edits.setFencePoint,
    { index: 2, point: { bearingDeg: 1, distanceFt: 405 } },
    (p) => p.field.fence[2]!.distanceFt === 405 && p.field.fence[1]!.distanceFt === 375,
  ),
  use(edits.setFenceShape, 'straight', (p) => p.field.fenceShape === 'straight'),
  use(edits.setTrackWidth, 12, (p) => p.field.trackWidthFt === 12),
  use(
    edits.setPole,
    { side: 'right', measured: { distanceFt: 331, sigmaIn: 1 } },
    (p) => p.field.poles.right?.distanceFt === 331 && p.field.poles.left === null,
  ),
  use(edits.setBases, { bases: 'out', baseSizeIn: 18 }, (p) => p.field.bases === 'out'),
  use(edits.addKeepOut, head, (p) => p.field.keepOuts.length === 1),
  use(
    edits.setRecipe,
    { ...START.pattern.recipe, id: 'own', name: 'Own bands' },
    (p) => p.pattern.recipe.id === 'own' && Object.keys(p.pattern.values).length === 0,
  ),
  use(
    edits.setPatternValue,
    { id: 'band', value: { passes: 5 } },
    (p) => JSON.stringify(p.pattern.values['band']) === '{"passes":5}',
  ),
  use(
    edits.setGround,
    { kind: 'counter-change' },
    (p) => p.design.ground.kind === 'counter-change',
  ),
  use(
    edits.setQuietMargin,
    20,
    (p) => p.design.ground.kind === 'quiet' && p.design.ground.marginFt === 20,
  ),
  use(edits.setGraphicLay, 'away', (p) => p.design.graphicLay === 'away'),
  use(edits.setEdgeLaps, 1, (p) => p.design.edgeLaps === 1),
  use(
    edits.setArt,
    { kind: 'svg', file: 'lantern-emblem.svg' },
    (p) => p.art?.source.kind === 'svg' && p.art.placement.widthFt === 150,
  ),
  use(
    edits.setWord,
    { text: 'Home', font: 'lobster' },
    (p) => p.art?.source.kind === 'text' && p.art.source.text === 'Home',
  ),
  use(
    edits.setDrawing,
    { file: 'a.svg', svg: '<svg/>' },
    (p) => p.art?.source.kind === 'svg' && p.art.source.svg === '<svg/>',
  ),
  use(edits.removeArt, null, (p) => p.art === null),
  use(edits.moveGraphic, { x: 12, y: 250 }, (p) => p.art?.placement.centre.x === 12),
  use(edits.resizeGraphic, 160, (p) => p.art?.placement.widthFt === 160),
  use(edits.turnGraphic, 15, (p) => p.art?.placement.rotationDeg === 15),
  use(
    edits.placeGraphic,
    { widthFt: 90, rotationDeg: 5 },
    (p) => p.art?.placement.widthFt === 90 && p.art.placement.centre.y === 265,
  ),
  use(edits.setWideMower, 'five-gang-reel', (p) => p.mowing.wide === 'five-gang-reel'),
  use(edits.setNarrowTool, 'hand-roller-24', (p) => p.mowing.narrow === 'hand-roller-24'),
  use(edits.setGate, { x: -200, y: 160 }, (p) => p.mowing.gate.x === -200),
  use(
    edits.setFurtherMachines,
    ['triplex-reel'],
    (p) => p.mowing.further?.join() === 'triplex-reel',
  ),
  use(edits.setOverLayPrice, 0.5, (p) => p.mowing.overLaySecondsPerFt === 0.5),
  use(
    edits.setMachineFigures,
    { machine: 'triplex-reel', figures: { cutWidthIn: 72 } },
    (p) => p.mowing.overrides['triplex-reel']?.cutWidthIn === 72,
  ),
  use(edits.setTolerance, 2, (p) => p.stakeout.toleranceIn === 2),
  use(edits.setTarget95, 5, (p) => p.stakeout.target95In === 5),
  use(
    edits.setTape,
    { limitFt: 300 },
    (p) => p.stakeout.tape.limitFt === 300 && p.stakeout.tape.readingSigmaIn === 0.25,
  ),
  // The class limit over the whole tape is two sigma: (0.6 + 0.4 × 61 mm) / 2 over 60.96 m.
  use(edits.setTapeClass, 'III', (p) => {
    const { accuracyClass, scaleSigma } = p.stakeout.tape;
    return accuracyClass === 'III' && Math.abs(scaleSigma! - 25 / 2 / 60_960) < 1e-12;
  }),
  use(
    edits.setSecondTape,
    { ...defaultProject().stakeout.tape, material: 'steel' as const, limitFt: 300 },
    (p) => p.stakeout.secondTape?.limitFt === 300 && p.stakeout.tape.limitFt === 200,
  ),
  use(edits.setSteel, { temperatureF: 41 }, (p) => p.stakeout.steel?.temperatureF === 41),
  use(edits.setSquare, 'triangle', (p) => p.stakeout.square === 'triangle'),
  use(edits.setGridSheet, { spacingFt: 4 }, (p) => p.stakeout.gridSheet?.spacingFt === 4),
  use(edits.setGuides, { toleranceIn: 9 }, (p) => p.guides?.toleranceIn === 9),
  use(edits.setCrew, 4, (p) => p.stakeout.crew === 4),
  use(edits.setPeople, 6, (p) => p.labour.people === 6),
  use(edits.setWindow, { opens: '07:00', closes: '15:30' }, (p) => p.labour.closes === '15:30'),
  use(edits.setRates, { 'set-pins': rate }, (p) => p.labour.rates['set-pins']?.high === 3),
  use(edits.setRate, { task: 'set-stakes', rate }, (p) => p.labour.rates['set-stakes']?.high === 3),
  use(edits.setSeats, [], (p) => p.seats.length === 0),
];

/** Fails on any write to the project or anything in it. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

describe('edits', () => {
  it.each(USES)('$label', ({ label, apply, holds }) => {
    const before = writeProject(START);
    const result = apply(frozen(START));
    expect(result.problems).toEqual([]);
    if (!result.ok) throw new Error('refused');
    expect(holds(result.value)).toBe(true);
    expect(holds(START)).toBe(false);
    expect(writeProject(START)).toBe(before);
    const history = record(startHistory(START), label, result.value);
    expect(undo(history).present).toBe(START);
    const parts = Object.keys({ ...START, ...result.value }) as (keyof Project)[];
    expect(parts.filter((key) => result.value[key] !== START[key]).length).toBe(1);
  });

  it('are all tried above, or below', () => {
    const all = Object.values(edits).flatMap((e) => ('label' in e ? [e.label] : []));
    expect([...USES.map((u) => u.label), edits.removeKeepOut.label].sort()).toEqual(all.sort());
    expect(new Set(all).size).toBe(all.length);
  });

  it('take back keep-outs, figures and rates', () => {
    const with1 = edits.addKeepOut.apply(START, head);
    const gone = with1.ok && edits.removeKeepOut.apply(with1.value, 'h1');
    expect(gone && gone.ok && gone.value).toEqual(START);
    const none = edits.removeKeepOut.apply(START, 'not-there');
    expect(none.ok && none.value).toBe(START);
    const own = edits.setMachineFigures.apply(START, { machine: 'm', figures: { people: 2 } });
    const back =
      own.ok && edits.setMachineFigures.apply(own.value, { machine: 'm', figures: null });
    expect(back && back.ok && back.value).toEqual(START);
    const more = edits.setFurtherMachines.apply(START, ['push-broom-24']);
    const fewer = more.ok && edits.setFurtherMachines.apply(more.value, []);
    expect(fewer && fewer.ok && fewer.value).toEqual(START);
    const served = edits.setCrewAddress.apply(START, 'https://a.example/crew');
    const unserved = served.ok && edits.setCrewAddress.apply(served.value, '');
    expect(unserved && unserved.ok && unserved.value).toEqual(START);
    const rated = edits.setRate.apply(START, { task: 't', rate });
    const unrated = rated.ok && edits.setRate.apply(rated.value, { task: 't', rate: null });
    expect(unrated && unrated.ok && unrated.value).toEqual(START);
  });

  it('refuse nonsense, naming the place', () => {
    const where = [
      edits.setTolerance.apply(START, -1),
      edits.setTolerance.apply(START, NaN),
      edits.resizeGraphic.apply(START, -20),
      edits.resizeGraphic.apply(START, Infinity),
      edits.moveGraphic.apply(START, { x: NaN, y: 0 }),
      edits.setPatternValue.apply(START, { id: 'band', value: { passes: 1.5 } }),
      edits.setDate.apply(START, '2027-13-01'),
      edits.setWindow.apply(START, { opens: '13:00', closes: '06:00' }),
      edits.setPeople.apply(START, 0),
      edits.setRate.apply(START, { task: '__proto__', rate }),
    ].map((r) => (r.ok ? 'taken' : r.problems[0]!.where));
    expect(where).toEqual([
      'stakeout.toleranceIn',
      'stakeout.toleranceIn',
      'art.placement.widthFt',
      'art.placement.widthFt',
      'art.placement.centre.x',
      'pattern.values.band',
      'date',
      'labour',
      'labour.people',
      'labour.rates.__proto__',
    ]);
  });

  it('need a graphic to move one, and give a first one its place', () => {
    const bare = { ...START, art: null };
    const moved = edits.moveGraphic.apply(bare, { x: 0, y: 0 });
    expect(moved.problems.map((p) => p.code)).toEqual(['no-graphic']);
    const first = edits.setWord.apply(bare, { text: 'Go', font: 'lobster' });
    expect(first.ok && first.value.art?.placement).toEqual(edits.FIRST_PLACEMENT);
  });

  it('leave any good project good', () => {
    fc.assert(
      fc.property(anyProject, fc.constantFrom(...USES), (project, { apply }) => {
        const result = apply(project);
        if (result.ok) expect(checkProject(result.value).ok).toBe(true);
        else expect(result.problems.map((p) => p.code)).toEqual(['no-graphic']);
      }),
      { seed: 3, numRuns: 60 },
    );
  });
});
