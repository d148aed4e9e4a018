/** What cannot be composed, said before anything is cut. */
import { problem, type Problem } from '../base/result';
import type { Feet } from '../base/units';
import { checkOnGrass, moveInWords } from '../art/check-on-grass';
import { liesIn } from '../art/find-move';
import type { Field } from '../field/model';
import { overhangInWords } from '../field/place-in-words';
import { regionSubtract, type Region } from '../geometry/region';
import type { DesignSpec } from './model';
import { MOST_LAPS, MOST_MARGIN_FT, MOST_TOLERANCE_IN } from './limits';
import { boxWithin } from './near-box';

/** Widths of a pass, and how near the outline must be held. */
interface Widths {
  readonly wideSwathFt: Feet;
  readonly wideCutFt: Feet;
  readonly narrowSwathFt: Feet;
  readonly narrowCutFt: Feet;
  readonly toleranceIn: number;
}

/** Problems of the figures alone: ground, laps, widths. */
export function checkFigures(design: DesignSpec, widths: Widths): Problem[] {
  return [...checkGround(design), ...checkWidths(widths)];
}

function checkGround(design: DesignSpec): Problem[] {
  const out: Problem[] = [];
  const laps = design.edgeLaps;
  if (!Number.isInteger(laps) || laps < 0 || laps > MOST_LAPS) {
    out.push(
      problem(
        'edge-laps',
        'design.edgeLaps',
        `${laps} clean-up laps cannot be mown`,
        `give a whole number from 0 to ${MOST_LAPS}`,
      ),
    );
  }
  if (design.ground.kind === 'quiet') {
    const margin = design.ground.marginFt;
    if (!Number.isFinite(margin) || margin < 0 || margin > MOST_MARGIN_FT) {
      out.push(
        problem(
          'quiet-margin',
          'design.ground.marginFt',
          `a margin of ${margin} ft round the graphic makes no sense`,
          `give 0 to ${MOST_MARGIN_FT} ft`,
        ),
      );
    }
  }
  return out;
}

function checkWidths(widths: Widths): Problem[] {
  const out: Problem[] = [];
  const roles = [
    ['wide', widths.wideSwathFt, widths.wideCutFt],
    ['narrow', widths.narrowSwathFt, widths.narrowCutFt],
  ] as const;
  for (const [role, swathFt, cutFt] of roles) {
    if (swathFt > 0 && cutFt >= swathFt) continue;
    out.push(
      problem(
        'swath-width',
        `mowing.${role}`,
        'the width that a pass adds is not between nothing and the cutting width',
        'make the overlap smaller than the cutting width',
      ),
    );
  }
  if (!(widths.toleranceIn >= 0 && widths.toleranceIn <= MOST_TOLERANCE_IN)) {
    out.push(
      problem(
        'tolerance',
        'stakeout.toleranceIn',
        `a tolerance of ${widths.toleranceIn} in cannot be held to`,
        `give 0 to ${MOST_TOLERANCE_IN} inches; 3 is usual`,
      ),
    );
  }
  return out;
}

/** Problems of where the graphic lies: those of `checkOnGrass`, or under the clean-up laps. */
export function checkPlace(field: Field, graphic: Region, inner: Region): Problem[] {
  if (boxWithin(graphic, inner)) return [];
  const off = checkOnGrass(field, graphic, inner);
  if (off.length > 0) return off;
  if (liesIn(graphic, inner)) return [];
  const under = regionSubtract(graphic, inner);
  return [
    problem(
      'art-on-edge-laps',
      'art.placement',
      `the graphic reaches ${overhangInWords(under, 'into the clean-up laps, which are mown after it,')}`,
      `${moveInWords(graphic, inner)}, or take fewer clean-up laps`,
    ),
  ];
}
