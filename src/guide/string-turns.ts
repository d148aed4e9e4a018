/**
 * When each string stands: up when its pass is next and the machine waits at its start, lifted when the
 * pass is driven, before the machine turns. So no machine turns or mows near a string of another pass.
 */
import { unitFromBearing } from '../geometry/angle';
import { boxesMeet, boxGrow, boxOfPoints } from '../geometry/box';
import { pointLerp, pointSubtract, vectorCross, vectorDot, type Point } from '../geometry/point';
import { polylineAt, polylineLength, polylineNearest, type Polyline } from '../geometry/polyline';
import { SAME_LANE } from '../geometry/tolerance';
import { areBeside } from '../mowing/beside';
import type { Pass, PassPlan } from '../mowing/model';
import type { GuidePlan, GuideString } from './model';

/** One pass driven along one string. */
export interface StringTurn {
  readonly string: GuideString;
  readonly pass: Pass;
  /** The next pass of that machine: the string is lifted before the way to it; null after the last. */
  readonly liftBefore: number | null;
  /** The first pass that is driven over where the string stood; null when none is. */
  readonly over: number | null;
}

/** Whether a swath or pass of that patch runs beside the string, at its distance. */
export function runsAlong(string: GuideString, patch: string, line: Polyline): boolean {
  const first = line[0];
  if (!first || !string.patches.includes(patch)) return false;
  const along = unitFromBearing(string.bearingDeg);
  const off = vectorCross(along, pointSubtract(first, string.middle));
  if (Math.abs(off) > SAME_LANE) return false;
  const reach = (p: Point) => vectorDot(pointSubtract(p, string.from.at), along);
  const middle = reach(polylineAt(line, polylineLength(line) / 2));
  return middle > 0 && middle < reach(string.to.at);
}

/** Whether a swath is driven along a string of the plan. */
export const isGuided = (guides: GuidePlan, patch: string, line: Polyline): boolean =>
  guides.strings.some((string) => runsAlong(string, patch, line));

/** Strings in the order in which their passes are driven; a string with two passes has two turns. */
export function stringTurns(guides: GuidePlan, passes: Pick<PassPlan, 'passes'>): StringTurn[] {
  const turns = guides.strings.flatMap((string) =>
    passes.passes
      .filter((pass) => runsAlong(string, pass.patch, pass.line))
      .map((pass): StringTurn => {
        const later = passes.passes.filter(
          (p) => p.machine === pass.machine && p.number > pass.number,
        );
        later.sort((a, b) => a.number - b.number);
        const over = later.find((p) => drivesOver(p, string));
        return {
          string,
          pass,
          liftBefore: later[0]?.number ?? null,
          over: over?.number ?? null,
        };
      }),
  );
  return turns.sort((a, b) => a.pass.number - b.pass.number);
}

/** Places along a string that are looked at, feet apart. */
const LOOK_FT = 5;

function drivesOver(pass: Pass, { from, to, lengthFt }: GuideString): boolean {
  const string = boxOfPoints([from.at, to.at]);
  const mown = boxOfPoints(pass.line);
  if (!string || !mown || !boxesMeet(boxGrow(string, pass.widthFt / 2), mown)) return false;
  const steps = Math.ceil(lengthFt / LOOK_FT);
  return Array.from({ length: steps + 1 }, (_, i) => pointLerp(from.at, to.at, i / steps)).some(
    (p) => polylineNearest(pass.line, p).distance < pass.widthFt / 2,
  );
}

/**
 * Band passes that are driven before either pass beside them, along no string: they are aimed from dot
 * to dot. Counted in the order of the plan.
 */
export function passesAimed(guides: GuidePlan, passes: Pick<PassPlan, 'passes'>): number {
  return guides.families.reduce((sum, family) => {
    const patches = new Set(family.lanes.flatMap((lane) => lane.pieces.map((p) => p.patch)));
    const own = passes.passes.filter((pass) => patches.has(pass.patch));
    return (
      sum +
      own.filter((pass) => {
        const before = own.filter((p) => p.number < pass.number);
        return !isGuided(guides, pass.patch, pass.line) && !before.some((p) => areBeside(p, pass));
      }).length
    );
  }, 0);
}
