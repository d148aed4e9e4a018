/** What cannot be composed, said before anything is cut. */
import { problem, type Problem } from '../base/result';
import { feetToInches } from '../base/units';
import type { Field } from '../field/model';
import { boxHeight, boxWidth } from '../geometry/box';
import {
  regionArea,
  regionBox,
  regionContains,
  regionSubtract,
  type Region,
} from '../geometry/region';
import type { BandsSpec } from '../pattern/model';
import type { DesignSpec } from './model';
import { placeInWords } from './place-in-words';
import { boxWithin } from './near-box';

const MOST_LAPS = 3;
const MOST_MARGIN_FT = 150;
const MOST_PASSES = 60;
/** Art may stick out by no more than this (square feet): a rounding of outlines, not a placement. */
const SLACK_SQ_FT = 0.05;

/** Problems of the figures alone: pattern, ground, laps, widths. */
export function checkFigures(
  pattern: BandsSpec,
  design: DesignSpec,
  widths: {
    readonly wideSwathFt: number;
    readonly wideCutFt: number;
    readonly narrowSwathFt: number;
    readonly narrowCutFt: number;
    readonly toleranceIn: number;
  },
): Problem[] {
  return [...checkBands(pattern), ...checkGround(design), ...checkWidths(widths)];
}

function checkBands(pattern: BandsSpec): Problem[] {
  const out: Problem[] = [];
  if (!Number.isFinite(pattern.bearingDeg)) {
    out.push(
      problem(
        'bearing-unreadable',
        'pattern.bearingDeg',
        'the bearing of the bands is not a number',
        'give degrees clockwise from the line home to second base, such as 0 or 30',
      ),
    );
  }
  const k = pattern.passesPerBand;
  if (!Number.isInteger(k) || k < 1 || k > MOST_PASSES) {
    out.push(
      problem(
        'band-passes',
        'pattern.passesPerBand',
        `a band of ${k} passes cannot be mown`,
        `give a whole number of passes from 1 to ${MOST_PASSES}`,
      ),
    );
  }
  if (!Number.isFinite(pattern.offsetFt)) {
    out.push(
      problem(
        'band-offset',
        'pattern.offsetFt',
        'the shift of the band edges is not a length',
        'give feet, 0 to start a band at second base',
      ),
    );
  }
  return out;
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

function checkWidths(widths: Readonly<Record<string, number>>): Problem[] {
  const bad = (low: string, high: string) =>
    !(widths[low]! > 0) || !(widths[high]! >= widths[low]!);
  const out: Problem[] = [];
  for (const role of ['wide', 'narrow'] as const) {
    if (bad(`${role}SwathFt`, `${role}CutFt`)) {
      out.push(
        problem(
          'swath-width',
          `mowing.${role}`,
          'the width that a pass adds is not between nothing and the cutting width',
          'make the overlap smaller than the cutting width',
        ),
      );
    }
  }
  if (!(widths.toleranceIn! >= 0 && widths.toleranceIn! <= 24)) {
    out.push(
      problem(
        'tolerance',
        'stakeout.toleranceIn',
        `a tolerance of ${widths.toleranceIn} in cannot be held to`,
        'give 0 to 24 inches; 3 is usual',
      ),
    );
  }
  return out;
}

/** Problems of where the graphic lies: off the grass, or under the clean-up laps. */
export function checkPlace(field: Field, graphic: Region, inner: Region): Problem[] {
  if (boxWithin(graphic, inner)) return [];
  const off = regionSubtract(graphic, field.outfieldGrass);
  const offArea = regionArea(off);
  if (offArea > SLACK_SQ_FT) return [offGrass(field, graphic, off, offArea)];
  const under = regionSubtract(graphic, inner);
  if (regionArea(under) <= SLACK_SQ_FT) return [];
  return [
    problem(
      'art-on-edge-laps',
      'art.placement',
      `the graphic reaches ${reachText(under)} into the clean-up laps at ${placeText(under)}, which are mown after it`,
      'move it in by that much, make it smaller, or take fewer clean-up laps',
    ),
  ];
}

function offGrass(field: Field, graphic: Region, off: Region, offArea: number) {
  const share = offArea / regionArea(graphic);
  const skin = field.surfaces.some(
    (s) => s.kind === 'skin' && off.some((ring) => ring.some((p) => regionContains(s.region, p))),
  );
  const onto = skin ? 'over the skin' : 'off the outfield grass';
  const what =
    share > 0.999
      ? `the graphic lies wholly ${onto}`
      : `the graphic reaches ${reachText(off)} ${onto} at ${placeText(off)} (${Math.ceil(share * 100)} % of it)`;
  const fix = 'move it on to the outfield grass, turn it or make it smaller';
  return problem('art-off-grass', 'art.placement', what, fix);
}

/** The larger of the two short sides of what sticks out: an upper bound of how far to move it. */
function reachText(region: Region): string {
  const box = regionBox(region)!;
  const feet = Math.min(boxWidth(box), boxHeight(box));
  return feet >= 1 ? `up to ${Math.ceil(feet)} ft` : `up to ${Math.ceil(feetToInches(feet))} in`;
}

function placeText(region: Region): string {
  const box = regionBox(region)!;
  return placeInWords({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
}
