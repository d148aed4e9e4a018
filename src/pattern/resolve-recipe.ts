/** From a recipe and its values to mowings in feet and degrees on one field. */
import { fail, problem, succeed, type Result } from '../base/result';
import type { Field } from '../field/model';
import { bearingDifference, vectorBearing } from '../geometry/angle';
import { pointDistance, pointSubtract } from '../geometry/point';
import type { AreaRule, GuidesRule, MowingRule, PatternSpec } from './model';
import type { Area, Guides, Mowing, SwathWidths } from './resolved';
import { numberOf, pointOf, valuesOf, widthOf, type Workings } from './work-out';

/** Two places nearer than this (feet) give no direction. */
const TOO_NEAR = 1;
/** Wave: shorter than this many turning radii cannot be driven whatever its height. */
const LEAST_WAVE_TURNS = 2;
/** Copies of a line and waves may lean at most so far from their own direction: beyond, bands pinch. */
export const STEEPEST_DEG = 60;

/**
 * The mowings in order, every number checked. Problems: `parameter-unknown`, `parameter-value`,
 * `rule-reference`, `rule-number`, `band-passes`, `band-narrow`, `guides-nowhere`, `wave-shape`,
 * `line-steep`, `area-empty`, `surface-unmown`.
 */
export function resolveRecipe(
  spec: PatternSpec,
  field: Field,
  widths: SwathWidths,
): Result<readonly Mowing[]> {
  const { values, problems } = valuesOf(spec);
  const w: Workings = { field, widths, values, problems: [...problems] };
  if (problems.length > 0) return fail(...problems);
  const mowings = spec.recipe.mowings.map((rule, i) => mowingOf(w, rule, `pattern.mowings[${i}]`));
  return w.problems.length > 0 ? fail(...w.problems) : succeed(mowings);
}

function mowingOf(w: Workings, rule: MowingRule, where: string): Mowing {
  return {
    where,
    guides: guidesOf(w, rule.guides, `${where}.guides`),
    widths: rule.widths.map((width, i) => widthOf(w, width, `${where}.widths[${i}]`)),
    lays: rule.lays,
    over: rule.over ? areaOf(w, rule.over, `${where}.over`) : { kind: 'all' },
    crosses: rule.crosses ?? false,
  };
}

function guidesOf(w: Workings, rule: GuidesRule, where: string): Guides {
  const shiftFt =
    'shiftFt' in rule && rule.shiftFt !== undefined
      ? numberOf(w, rule.shiftFt, `${where}.shiftFt`)
      : 0;
  switch (rule.kind) {
    case 'parallel':
      return {
        kind: 'parallel',
        bearingDeg: numberOf(w, rule.bearingDeg, `${where}.bearingDeg`),
        through: pointOf(w, rule.through, `${where}.through`),
        shiftFt,
        on: rule.on ?? 'edge',
      };
    case 'aimed':
      return aimedOf(w, rule, shiftFt, where);
    case 'rings':
      return { kind: 'rings', centre: pointOf(w, rule.centre, `${where}.centre`), shiftFt };
    case 'rays':
      return raysOf(w, rule, where);
    case 'waves':
      return wavesOf(w, rule, shiftFt, where);
    case 'spiral':
      return {
        kind: 'spiral',
        centre: pointOf(w, rule.centre, `${where}.centre`),
        turn: rule.turn,
      };
    case 'edge':
      return { kind: 'edge', of: rule.of, shiftFt };
    case 'line':
      return lineOf(w, rule, shiftFt, where);
  }
}

type RuleOf<K extends GuidesRule['kind']> = Extract<GuidesRule, { readonly kind: K }>;

function aimedOf(w: Workings, rule: RuleOf<'aimed'>, shiftFt: number, where: string): Guides {
  const from = pointOf(w, rule.from, `${where}.from`);
  const at = pointOf(w, rule.at, `${where}.at`);
  if (pointDistance(from, at) < TOO_NEAR) {
    w.problems.push(
      problem(
        'guides-nowhere',
        where,
        'the place aimed from is the place aimed at',
        'take two places apart from each other',
      ),
    );
  }
  const bearingDeg = vectorBearing(pointSubtract(at, from));
  return { kind: 'parallel', bearingDeg, through: at, shiftFt, on: rule.on ?? 'middle' };
}

function raysOf(w: Workings, rule: RuleOf<'rays'>, where: string): Guides {
  const fromDeg = rule.fromDeg === undefined ? 0 : numberOf(w, rule.fromDeg, `${where}.fromDeg`);
  const toDeg =
    rule.toDeg === undefined ? fromDeg + 360 : numberOf(w, rule.toDeg, `${where}.toDeg`);
  checkTurn(w, fromDeg, toDeg, where);
  return { kind: 'rays', centre: pointOf(w, rule.centre, `${where}.centre`), fromDeg, toDeg };
}

function checkTurn(w: Workings, fromDeg: number, toDeg: number, where: string): void {
  if (!(toDeg <= fromDeg || toDeg > fromDeg + 360)) return;
  w.problems.push(
    problem(
      'guides-nowhere',
      where,
      `from ${fromDeg}° to ${toDeg}° there is no sector`,
      'give a second bearing larger than the first by 360° at most',
    ),
  );
}

function wavesOf(w: Workings, rule: RuleOf<'waves'>, shiftFt: number, where: string): Guides {
  const lengthFt = numberOf(w, rule.lengthFt, `${where}.lengthFt`);
  const heightFt = numberOf(w, rule.heightFt, `${where}.heightFt`);
  const bend = (lengthFt / (2 * Math.PI)) ** 2 / Math.abs(heightFt);
  const steep = (Math.atan((2 * Math.PI * Math.abs(heightFt)) / lengthFt) * 180) / Math.PI;
  const { turnRadiusFt } = w.widths;
  if (bend < LEAST_WAVE_TURNS * turnRadiusFt || steep > STEEPEST_DEG || lengthFt <= 0) {
    w.problems.push(
      problem(
        'wave-shape',
        where,
        `a wave ${lengthFt} ft long and ${heightFt} ft high to either side bends too sharply or runs too steeply`,
        'make it longer or lower',
      ),
    );
  }
  return {
    kind: 'waves',
    bearingDeg: numberOf(w, rule.bearingDeg, `${where}.bearingDeg`),
    through: pointOf(w, rule.through, `${where}.through`),
    lengthFt,
    heightFt,
    shiftFt,
  };
}

function lineOf(w: Workings, rule: RuleOf<'line'>, shiftFt: number, where: string): Guides {
  const points = rule.points.map((p, i) => pointOf(w, p, `${where}.points[${i}]`));
  const chord = vectorBearing(pointSubtract(points[points.length - 1]!, points[0]!));
  points.slice(1).forEach((p, i) => {
    const own = vectorBearing(pointSubtract(p, points[i]!));
    const apart = pointDistance(p, points[i]!) >= TOO_NEAR;
    if (apart && bearingDifference(own, chord) <= STEEPEST_DEG) return;
    w.problems.push(
      problem(
        'line-steep',
        `${where}.points[${i + 1}]`,
        'here the line turns too far from the way that it runs as a whole, so that its copies would pinch',
        `keep every piece within ${STEEPEST_DEG}° of the line from first to last point, and a foot long`,
      ),
    );
  });
  return { kind: 'line', points, shiftFt };
}

function areaOf(w: Workings, rule: AreaRule, where: string): Area {
  const n = (key: string, value: Parameters<typeof numberOf>[1]) =>
    numberOf(w, value, `${where}.${key}`);
  const at = (key: string, value: Parameters<typeof pointOf>[1]) =>
    pointOf(w, value, `${where}.${key}`);
  switch (rule.kind) {
    case 'surface':
      return surfaceOf(w, rule.is, where);
    case 'half':
      return {
        kind: 'half',
        side: rule.side,
        bearingDeg: n('bearingDeg', rule.bearingDeg),
        through: at('through', rule.through),
      };
    case 'strip':
      return {
        kind: 'strip',
        bearingDeg: n('bearingDeg', rule.bearingDeg),
        through: at('through', rule.through),
        widthFt: positive(w, n('widthFt', rule.widthFt), `${where}.widthFt`),
      };
    case 'ring': {
      const fromFt = rule.fromFt === undefined ? 0 : n('fromFt', rule.fromFt);
      const toFt = rule.toFt === undefined ? Infinity : n('toFt', rule.toFt);
      positive(w, toFt - fromFt, `${where}.toFt`);
      return { kind: 'ring', centre: at('centre', rule.centre), fromFt, toFt };
    }
    case 'sector': {
      const fromDeg = n('fromDeg', rule.fromDeg);
      const toDeg = n('toDeg', rule.toDeg);
      checkTurn(w, fromDeg, toDeg, where);
      return { kind: 'sector', centre: at('centre', rule.centre), fromDeg, toDeg };
    }
    case 'drawn':
      return { kind: 'drawn', points: rule.points.map((p, i) => at(`points[${i}]`, p)) };
    case 'blocks':
      return {
        kind: 'blocks',
        bearingDeg: n('bearingDeg', rule.bearingDeg),
        through: at('through', rule.through),
        acrossFt: positive(w, n('acrossFt', rule.acrossFt), `${where}.acrossFt`),
        alongFt:
          rule.alongFt === undefined
            ? Infinity
            : positive(w, n('alongFt', rule.alongFt), `${where}.alongFt`),
        pick: rule.pick,
      };
    case 'edge':
      return {
        kind: 'edge',
        of: rule.of,
        widthFt: positive(w, n('widthFt', rule.widthFt), `${where}.widthFt`),
      };
    case 'both':
    case 'any': {
      const of = rule.of.map((r, i) => areaOf(w, r, `${where}.of[${i}]`));
      return rule.kind === 'both' ? { kind: 'both', of } : { kind: 'any', of };
    }
    case 'not':
      return { kind: 'not', of: areaOf(w, rule.of, `${where}.of`) };
  }
}

/** The one surface that the plan mows. */
const MOWN_SURFACE = 'outfield-grass';

function surfaceOf(w: Workings, is: string, where: string): Area {
  if (is !== MOWN_SURFACE) {
    w.problems.push(
      problem(
        'surface-unmown',
        `${where}.is`,
        `the plan does not mow "${is}"`,
        `use "${MOWN_SURFACE}"`,
      ),
    );
  }
  return { kind: 'all' };
}

function positive(w: Workings, value: number, where: string): number {
  if (value < w.widths.swathFt) {
    w.problems.push(
      problem(
        'area-empty',
        where,
        `this leaves ${Math.max(0, value).toFixed(2)} ft, less than one pass of ${w.widths.swathFt.toFixed(2)} ft`,
        'make it wider',
      ),
    );
  }
  return value;
}
