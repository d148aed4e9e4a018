/** Small frozen plans, made by hand. */
import type { Reading } from '../../src/base/quantity';
import type { Design } from '../../src/design/model';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { Field } from '../../src/field/model';
import type { LabourSpec } from '../../src/labour/model';
import type { Machine, PassPlan, Phase } from '../../src/mowing/model';
import type { OutlinePiece, Stake, StakeKind, StakePlan } from '../../src/stakeout/model';

const built = buildField(defaultFieldSpec(), 'feet-inches');
if (!built.ok) throw new Error('the default field builds');
export const FIELD: Field = built.value;

export const DESIGN: Design = { patches: [], guides: {}, graphic: [], quiet: [], strokes: [] };

export const SPEC: LabourSpec = { people: 4, opens: '06:00', closes: '17:00', rates: {} };

const reading = (ft: number): Reading => ({ text: String(ft), ft });

function stake(id: string, kind: StakeKind, round: number, x: number, y: number): Stake {
  const tie = (from: string) => ({ from, reading: reading(100) });
  return {
    id,
    kind,
    round,
    at: { x, y },
    set: { method: 'ties', tie1: tie('1B'), tie2: tie('3B'), side: 'L', intersectionDeg: 90 },
    check: { from: '2B', reading: reading(100), limitIn: 2 },
    covariance: { xx: 1, xy: 0, yy: 1 },
    semiMajor95In: 3,
  };
}

/** A square of 30-ft strings whose right side is a half circle about a pin, and a full circle. */
export function stakePlan(crew: 2 | 3 | 4 = 3): StakePlan {
  const pieces: OutlinePiece[] = [
    { kind: 'string', from: '1', to: '2' },
    { kind: 'swing', from: '2', to: '3', pin: '5', radius: reading(15), sweep: 'ccw' },
    { kind: 'string', from: '3', to: '4' },
    { kind: 'string', from: '4', to: '1' },
  ];
  return {
    spec: {
      toleranceIn: 3,
      target95In: 4,
      tape: { readingSigmaIn: 0.25, proportional: 1 / 3000, limitFt: 200 },
      system: 'feet-inches',
      crew,
    },
    controls: FIELD.controls,
    stakes: [
      stake('K1', 'control', 1, 0, 240),
      stake('K2', 'control', 1, 40, 250),
      stake('1', 'outline', 2, 0, 260),
      stake('2', 'outline', 2, 30, 260),
      stake('3', 'outline', 2, 30, 290),
      stake('4', 'outline', 2, 0, 290),
      stake('5', 'pin', 2, 30, 275),
    ],
    walk: { ft: 900, changes: 2, seconds: 300, boundSeconds: 280 },
    rounds: [
      { number: 1, from: ['1B', '3B'], stakes: ['K1', 'K2'] },
      { number: 2, from: ['K1', 'K2'], stakes: ['1', '2', '3', '4', '5'] },
    ],
    contours: [
      { graphic: 'g', contour: 1, pieces },
      { graphic: 'g', contour: 2, pieces: [{ kind: 'circle', pin: '5', radius: reading(5) }] },
    ],
    strings: 3,
    swings: 2,
    stringFt: 90,
    worstSemiMajor95In: 3,
    largestGapIn: 1,
    overTarget: [],
  };
}

const machine = (id: string, role: Machine['role']): Machine => ({
  id,
  name: role === 'wide' ? 'Riding reel' : 'Walk-behind reel',
  role,
  cutter: 'reel',
  cutWidthIn: 62,
  overlapIn: 3,
  bodyWidthIn: 66,
  frontOverhangIn: 20,
  rearOverhangIn: 40,
  cuttingMph: 4,
  turningMph: 2,
  runningMph: 5,
  turnRadiusFt: 8,
  turnSeconds: 5,
  mayReverse: false,
  lays: true,
  laysInTransit: false,
  powered: true,
  people: 1,
  sources: {},
});

/** Seconds by phase: wide for erase, background and border, narrow for graphic and edge. */
export function passPlan(seconds: Partial<Record<Phase, number>>): PassPlan {
  const isNarrow = (phase: Phase): boolean => phase === 'graphic' || phase === 'edge';
  return {
    machines: [machine('wide', 'wide'), machine('narrow', 'narrow')],
    passes: [],
    legs: [],
    mowFt: 0,
    turnFt: 0,
    runFt: 0,
    graphicCovered: 1,
    uncovered: [],
    laidOutside: 0,
    efficiency: [],
    overLayFt: 0,
    disturbed: 0,
    totals: Object.entries(seconds).map(([phase, s]) => ({
      machine: isNarrow(phase as Phase) ? 'narrow' : 'wide',
      phase: phase as Phase,
      passes: 1,
      mowFt: 100,
      seconds: s,
    })),
  };
}

export const PASSES = passPlan({ background: 3600, graphic: 1800, edge: 900, border: 1200 });
