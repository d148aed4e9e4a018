/** Everything that makes a field nonsense, found in one go, before any of it is drawn. */
import { problem, type Problem } from '../base/result';
import { polylineNearest } from '../geometry/polyline';
import { segmentIntersection } from '../geometry/segment';
import type { FencePoint, FieldSpec, MeasuredPole } from './model';
import { skinArcCentre } from './place-bases';
import { fencePosition } from './shape-fence';

/** Bounds of good sense, feet unless named otherwise; common practice, no source. */
export const FIELD_BOUNDS = {
  fenceFt: { least: 150, most: 600 },
  trackFt: { least: 0, most: 60 },
  /** The 95 ft of the book, give or take what a 90-ft infield can have. */
  skinRadiusFt: { least: 80, most: 120 },
  /** Room for the home circle and the foul strip of skin. */
  foulWidthFt: { least: 15, most: 200 },
  sigmaIn: { least: 0, most: 24 },
  keepOutRadiusFt: { least: 0, most: 100 },
  /** Grass that must be left between skin and track. */
  grassFt: 10,
  /** A measured pole and the fence list may differ by this much before it is worth a warning. */
  poleAgreeFt: 5,
} as const;

interface Bound {
  readonly least: number;
  readonly most: number;
}

/** Problems of the figures alone: errors, and warnings about poles. */
export function checkField(spec: FieldSpec): Problem[] {
  return [
    ...checkChoices(spec),
    ...checkFence(spec.fence),
    ...checkFigures(spec),
    ...checkPoles(spec),
    ...checkKeepOuts(spec),
  ];
}

function checkChoices(spec: FieldSpec): Problem[] {
  const out: Problem[] = [];
  if ((spec.book as string) !== 'baseball-90') {
    out.push(
      problem(
        'book-unknown',
        'field.book',
        `there is no rule book "${spec.book}"`,
        'use "baseball-90"',
      ),
    );
  }
  if ((spec.baseSizeIn as number) !== 15 && (spec.baseSizeIn as number) !== 18) {
    out.push(
      problem(
        'base-size',
        'field.baseSizeIn',
        `bases are not made ${spec.baseSizeIn} in square`,
        'use 15 or 18',
      ),
    );
  }
  return out;
}

function checkFigures(spec: FieldSpec): Problem[] {
  return [
    within(
      'track-width',
      'field.trackWidthFt',
      spec.trackWidthFt,
      FIELD_BOUNDS.trackFt,
      'track width',
      'ft',
    ),
    within(
      'skin-radius',
      'field.skinRadiusFt',
      spec.skinRadiusFt,
      FIELD_BOUNDS.skinRadiusFt,
      'skin radius',
      'ft',
    ),
    within(
      'foul-width',
      'field.foulWidthFt',
      spec.foulWidthFt,
      FIELD_BOUNDS.foulWidthFt,
      'foul width',
      'ft',
    ),
    within(
      'control-sigma',
      'field.controlSigmaIn',
      spec.controlSigmaIn,
      FIELD_BOUNDS.sigmaIn,
      'precision of plate and bases',
      'in',
    ),
  ].flat();
}

/** A problem unless the figure is a number between its bounds. */
function within(
  code: string,
  where: string,
  value: number,
  bound: Bound,
  name: string,
  unit: string,
): Problem[] {
  if (value >= bound.least && value <= bound.most) return [];
  return [
    problem(
      code,
      where,
      `${name} ${value} ${unit} makes no sense`,
      `give a figure from ${bound.least} to ${bound.most} ${unit}`,
    ),
  ];
}

function checkFence(fence: readonly FencePoint[]): Problem[] {
  if (fence.length < 3) {
    return [
      problem(
        'fence-too-few',
        'field.fence',
        `the fence has ${fence.length} points`,
        'give at least three: left pole, centre, right pole',
      ),
    ];
  }
  const figures = fence.flatMap(checkFencePoint);
  return figures.length > 0 ? figures : [...checkBearings(fence), ...checkCrossing(fence)];
}

function checkFencePoint(p: FencePoint, i: number): Problem[] {
  const where = `field.fence[${i}]`;
  const bearing: Bound = { least: -45, most: 45 };
  return [
    ...within(
      'fence-bearing',
      `${where}.bearingDeg`,
      p.bearingDeg,
      bearing,
      'fence bearing',
      'degrees',
    ),
    ...within(
      'fence-distance',
      `${where}.distanceFt`,
      p.distanceFt,
      FIELD_BOUNDS.fenceFt,
      'fence distance',
      'ft',
    ),
  ];
}

function checkBearings(fence: readonly FencePoint[]): Problem[] {
  const out: Problem[] = [];
  fence.slice(1).forEach((p, i) => {
    if (p.bearingDeg <= fence[i]!.bearingDeg) {
      out.push(
        problem(
          'fence-order',
          `field.fence[${i + 1}].bearingDeg`,
          `bearing ${p.bearingDeg} does not come after ${fence[i]!.bearingDeg}`,
          'list the fence from the left pole to the right pole, each bearing once',
        ),
      );
    }
  });
  return [...out, ...checkEnds(fence)];
}

function checkEnds(fence: readonly FencePoint[]): Problem[] {
  const last = fence.length - 1;
  const ends = [
    { i: 0, pole: 'left', bearing: -45 },
    { i: last, pole: 'right', bearing: 45 },
  ] as const;
  return ends
    .filter((end) => fence[end.i]!.bearingDeg !== end.bearing)
    .map((end) =>
      problem(
        'fence-ends',
        `field.fence[${end.i}].bearingDeg`,
        `the fence does not reach the ${end.pole} foul line`,
        `put the ${end.pole} pole at bearing ${end.bearing}`,
      ),
    );
}

/** Two pieces that are not neighbours and meet all the same. */
function checkCrossing(fence: readonly FencePoint[]): Problem[] {
  const line = fence.map(fencePosition);
  for (let i = 0; i + 1 < line.length; i++) {
    for (let k = i + 2; k + 1 < line.length; k++) {
      const hit = segmentIntersection(line[i]!, line[i + 1]!, line[k]!, line[k + 1]!);
      if (hit) return [crossing(i, k)];
    }
  }
  return [];
}

const crossing = (i: number, k: number): Problem =>
  problem(
    'fence-crosses',
    `field.fence[${i}]`,
    `the fence from point ${i + 1} crosses the fence from point ${k + 1}`,
    'check the order and the bearings of the fence points',
  );

function checkPoles(spec: FieldSpec): Problem[] {
  const ends = { left: spec.fence[0], right: spec.fence[spec.fence.length - 1] };
  return (['left', 'right'] as const).flatMap((side) => {
    const pole = spec.poles[side];
    return pole ? checkPole(pole, side, ends[side]) : [];
  });
}

function checkPole(pole: MeasuredPole, side: 'left' | 'right', end?: FencePoint): Problem[] {
  const where = `field.poles.${side}`;
  const bad = [
    ...within(
      'pole-distance',
      `${where}.distanceFt`,
      pole.distanceFt,
      FIELD_BOUNDS.fenceFt,
      'pole distance',
      'ft',
    ),
    ...within(
      'pole-sigma',
      `${where}.sigmaIn`,
      pole.sigmaIn,
      FIELD_BOUNDS.sigmaIn,
      'pole precision',
      'in',
    ),
  ];
  if (bad.length > 0 || !end) return bad;
  const apart = Math.abs(pole.distanceFt - end.distanceFt);
  if (!(apart > FIELD_BOUNDS.poleAgreeFt)) return [];
  return [
    problem(
      'pole-disagrees',
      where,
      `the measured ${side} pole is ${apart.toFixed(1)} ft from the fence list’s`,
      'tape the pole again or correct the fence',
      'warning',
    ),
  ];
}

function checkKeepOuts(spec: FieldSpec): Problem[] {
  const ids = new Set<string>();
  return spec.keepOuts.flatMap((k, i) => {
    const where = `field.keepOuts[${i}]`;
    const out = within(
      'keep-out-radius',
      `${where}.radiusFt`,
      k.radiusFt,
      FIELD_BOUNDS.keepOutRadiusFt,
      'keep-out radius',
      'ft',
    );
    if (!(k.radiusFt !== 0)) out.push(emptyKeepOut(where));
    if (!Number.isFinite(k.centre.x) || !Number.isFinite(k.centre.y)) out.push(lostKeepOut(where));
    if (ids.has(k.id)) out.push(repeatedKeepOut(where, k.id));
    ids.add(k.id);
    return out;
  });
}

const emptyKeepOut = (where: string): Problem =>
  problem(
    'keep-out-radius',
    `${where}.radiusFt`,
    'the keep-out has no size',
    'give a radius or remove it',
  );

const lostKeepOut = (where: string): Problem =>
  problem('keep-out-place', `${where}.centre`, 'the keep-out has no place', 'give x and y in feet');

const repeatedKeepOut = (where: string, id: string): Problem =>
  problem(
    'keep-out-repeated',
    `${where}.id`,
    `two keep-outs are called "${id}"`,
    'give each its own id',
  );

/** Room between skin, track and the fence as drawn; `fence` from pole to pole. */
export function checkRoom(spec: FieldSpec, fence: readonly { x: number; y: number }[]): Problem[] {
  const centre = skinArcCentre(spec);
  const nearest = polylineNearest(fence, centre).distance;
  const room = nearest - spec.skinRadiusFt;
  if (room < FIELD_BOUNDS.grassFt) return [insideBases(nearest, spec.skinRadiusFt)];
  if (room - spec.trackWidthFt >= FIELD_BOUNDS.grassFt) return [];
  return [
    problem(
      'track-too-wide',
      'field.trackWidthFt',
      `a ${spec.trackWidthFt} ft track leaves ${Math.max(0, room - spec.trackWidthFt).toFixed(1)} ft of outfield grass at its narrowest`,
      'make the track narrower or correct the fence',
    ),
  ];
}

const insideBases = (nearest: number, skin: number): Problem =>
  problem(
    'fence-inside-bases',
    'field.fence',
    `the fence comes within ${nearest.toFixed(1)} ft of the pitcher’s plate, where the skin alone reaches ${skin} ft`,
    'check the fence distances: they are measured from home plate',
  );

/** Keep-outs with their centre off the ground. */
export function checkKeepOutPlaces(
  spec: FieldSpec,
  onGround: (p: { x: number; y: number }) => boolean,
): Problem[] {
  return spec.keepOuts.flatMap((k, i) =>
    onGround(k.centre)
      ? []
      : [
          problem(
            'keep-out-outside',
            `field.keepOuts[${i}].centre`,
            `keep-out "${k.name}" is not on the ground`,
            'give its place in feet from home plate, x toward first base, y toward second',
          ),
        ],
  );
}
