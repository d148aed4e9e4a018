/** Art laid on the grass: centre, width and rotation to a region in the field frame. */
import { fail, invariant, problem, succeed, type Problem, type Result } from '../base/result';
import { degrees, type Feet } from '../base/units';
import {
  affineApply,
  affineCompose,
  affineRotate,
  affineScale,
  affineTranslate,
  type Affine,
} from '../geometry/affine';
import { boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box';
import { regionBox, regionFrom, type Region } from '../geometry/region';
import type { Artwork, Placement } from './model';

/** No outfield is wider than this between its foul poles' fences. */
export const WIDEST_ART_FT: Feet = 600;
/** Smaller than any mowing tool is wide. */
export const NARROWEST_ART_FT: Feet = 1;

/** The art's box in its own frame. */
export function artworkBox(artwork: Artwork): Box {
  const box = regionBox(artwork.region);
  invariant(box, 'artwork has at least one ring');
  return box;
}

/** Width and height in feet before rotation, when the art is laid `widthFt` wide. */
export function placedSize(
  artwork: Artwork,
  widthFt: Feet,
): { readonly widthFt: Feet; readonly heightFt: Feet } {
  const box = artworkBox(artwork);
  return { widthFt, heightFt: (widthFt * boxHeight(box)) / boxWidth(box) };
}

/**
 * The art in the field frame, feet. Problems: `art-size` (zero, negative, not a number, under 1 ft or
 * over 600 ft either way) and `art-place` (centre or rotation not a number, centre off any ballpark).
 */
export function placeArtwork(artwork: Artwork, placement: Placement): Result<Region> {
  const problems = [...checkSize(artwork, placement.widthFt), ...checkPlace(placement)];
  if (problems.length > 0) return fail(...problems);
  const map = placementMap(artworkBox(artwork), placement);
  return succeed(regionFrom(artwork.region.map((ring) => ring.map((p) => affineApply(map, p)))));
}

function placementMap(box: Box, placement: Placement): Affine {
  const centre = boxCentre(box);
  const toOrigin = affineTranslate(-centre.x, -centre.y);
  const scaled = affineCompose(affineScale(placement.widthFt / boxWidth(box)), toOrigin);
  const turned = affineCompose(affineRotate(degrees(placement.rotationDeg)), scaled);
  return affineCompose(affineTranslate(placement.centre.x, placement.centre.y), turned);
}

function checkSize(artwork: Artwork, widthFt: Feet): Problem[] {
  const fix = `give a width between ${NARROWEST_ART_FT} and ${WIDEST_ART_FT} ft`;
  const where = 'art.placement.widthFt';
  if (!Number.isFinite(widthFt)) {
    return [problem('art-size', where, 'the width of the art is not a number', fix)];
  }
  if (widthFt < NARROWEST_ART_FT || widthFt > WIDEST_ART_FT) {
    return [problem('art-size', where, `the art would be ${showFt(widthFt)} wide`, fix)];
  }
  const { heightFt } = placedSize(artwork, widthFt);
  if (heightFt <= WIDEST_ART_FT) return [];
  const what = `at ${showFt(widthFt)} wide the art would be ${showFt(heightFt)} tall`;
  return [problem('art-size', where, what, 'make it narrower')];
}

function checkPlace(placement: Placement): Problem[] {
  const { centre, rotationDeg } = placement;
  const problems: Problem[] = [];
  if (!Number.isFinite(rotationDeg)) {
    problems.push(
      problem(
        'art-place',
        'art.placement.rotationDeg',
        'the rotation is not a number',
        'give degrees, counter-clockwise',
      ),
    );
  }
  if (!(Math.hypot(centre.x, centre.y) <= 2 * WIDEST_ART_FT)) {
    problems.push(
      problem(
        'art-place',
        'art.placement.centre',
        `the centre (${centre.x}, ${centre.y}) is not on the field`,
        'give feet right of and beyond home plate',
      ),
    );
  }
  return problems;
}

const showFt = (value: number): string => `${Number(value.toPrecision(6))} ft`;
