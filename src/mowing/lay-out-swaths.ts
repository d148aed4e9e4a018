/** The design's strokes as swaths that the machines' bodies can stand on, and what they cover. */
import type { Field } from '../field/model';
import type { Design } from '../design/model';
import { SAME_POINT } from '../geometry/tolerance';
import { firstLost, type Loss } from './lost-ground';
import type { Machine } from './model';
import type { Swath, SwathLayout } from './swath-model';
import { prepareField, type DriveGround } from './drive-ground';
import { cutToBody, prepareBody } from './swaths/cut-to-body';
import { findUncovered } from './swaths/find-uncovered';

export interface SwathInput {
  readonly field: Field;
  readonly design: Design;
  readonly wide: Machine;
  readonly narrow: Machine;
  readonly toleranceIn: number;
}

/**
 * Every swath of both machines, by role, group and patch. A stroke is broken where the body would
 * stand on a keep-out and shortened where it would stand on skin, fence or wall at its ends; what is
 * lost by that is listed as `blocked`. `ground` is the field's, prepared, where it is at hand.
 */
export function layOutSwaths(
  input: SwathInput,
  ground: DriveGround = prepareField(input.field),
): SwathLayout {
  const { field, design, toleranceIn } = input;
  const bodies = {
    wide: prepareBody(field, ground, input.wide),
    narrow: prepareBody(field, ground, input.narrow),
  };
  const swaths: Swath[] = [];
  const blocked: Loss[] = [];
  const counts = new Map<string, number>();
  for (const stroke of design.strokes) {
    const { role } = stroke;
    const cut = cutToBody(stroke.line, bodies[role]);
    if (cut.lostFt > SAME_POINT) {
      const at = firstLost(stroke.line, cut.lines);
      blocked.push({ patch: stroke.patch, at, lostFt: cut.lostFt });
    }
    const whole = cut.lostFt <= SAME_POINT && stroke.closed === true;
    for (const line of cut.lines) {
      const number = (counts.get(stroke.patch) ?? 0) + 1;
      counts.set(stroke.patch, number);
      swaths.push({
        id: `${stroke.patch}/${number}`,
        patch: stroke.patch,
        role,
        phase: stroke.phase,
        line,
        widthFt: stroke.widthFt,
        group: stroke.group,
        ...(stroke.mowing === undefined ? {} : { mowing: stroke.mowing }),
        ...(stroke.band === undefined ? {} : { band: stroke.band }),
        ...(stroke.lap === undefined ? {} : { lap: stroke.lap }),
        ...(whole ? { closed: true } : {}),
      });
    }
  }
  return { swaths, blocked, ...findUncovered(design.graphic, swaths, toleranceIn) };
}
