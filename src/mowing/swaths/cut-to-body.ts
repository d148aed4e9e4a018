/** Where a machine's body may stand along a swath: off skin, fence, wall and keep-outs. */
import { inches, type Feet } from '../../base/units';
import { trimEnds, type CutTest } from '../../design/trim-ends';
import type { Field } from '../../field/model';
import { polylineLength, type Polyline } from '../../geometry/polyline';
import {
  clipLines,
  regionOffset,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../../geometry/region';
import { bodyFits, bodyOf, type Body, type DriveGround } from '../drive-ground';
import type { Machine } from '../model';

export interface BodyGround {
  readonly ground: DriveGround;
  readonly body: Body;
  /** Ground for the middle of the swath: everything not too near a keep-out; null without any. */
  readonly clear: Region | null;
}

/** Prepares one machine on the prepared ground. */
export function prepareBody(field: Field, ground: DriveGround, machine: Machine): BodyGround {
  const body = bodyOf(machine);
  const half = Math.max(body.half, inches(machine.cutWidthIn) / 2);
  const keepOuts = regionUnionAll(field.keepOuts.map((k) => regionOffset(k.region, half)));
  return {
    ground,
    body,
    clear: keepOuts.length === 0 ? null : regionSubtract(field.outfieldGrass, keepOuts),
  };
}

/** Shorter pieces than this are not worth lowering the reels for. */
const SHORTEST: Feet = 1;

/** The parts of a line where the body can start, stop and stand, with the length lost. */
export function cutToBody(
  line: Polyline,
  { ground, body, clear }: BodyGround,
): { readonly lines: readonly Polyline[]; readonly lostFt: Feet } {
  const test: CutTest = (at, d) =>
    bodyFits(ground, body, { x: at.x, y: at.y, heading: Math.atan2(d.y, d.x) });
  const whole = polylineLength(line);
  const pieces = clear === null ? [line] : clipLines([line], clear);
  const lines = pieces
    .map((piece) => trimEnds(piece, test, polylineLength(piece)))
    .filter((piece) => piece !== null)
    .filter((piece) => polylineLength(piece) >= Math.min(SHORTEST, whole));
  const kept = lines.reduce((n, piece) => n + polylineLength(piece), 0);
  return { lines, lostFt: Math.max(0, whole - kept) };
}
