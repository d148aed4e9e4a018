/** Whether a placed graphic lies on the outfield grass; if not, over what, where and how far. */
import { problem, type Problem } from '../base/result';
import type { Field, SurfaceKind } from '../field/model';
import { overhangInWords } from '../field/place-in-words';
import { boxHeight, boxWidth, type Box } from '../geometry/box';
import {
  regionArea,
  regionBox,
  regionIntersect,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../geometry/region';
import { findMove, liesIn, SLACK_SQ_FT } from './find-move';

/** What a graphic may lie over by mistake. */
interface Hazard {
  readonly code: string;
  /** As read after "reaches up to 14 ft". */
  readonly onto: string;
  readonly region: Region;
}

/** The part of the graphic over a hazard. */
type Overlap = Omit<Hazard, 'region'> & { readonly over: Region };

/**
 * Errors for a graphic that is not all on `field.outfieldGrass`: `art-larger-than-grass` when no move
 * can help, else one for each of `art-over-keep-out`, `art-over-skin` (mound, home circle and infield
 * grass too), `art-over-track` and `art-off-grass` (foul grass, outside the fence). Each says over
 * what, where, how far, and a move that brings the graphic into `room`, the part of the grass that is
 * left for it.
 */
export function checkOnGrass(
  field: Field,
  graphic: Region,
  room: Region = field.outfieldGrass,
): Problem[] {
  if (liesIn(graphic, field.outfieldGrass)) return [];
  const large = tooLarge(field, graphic);
  if (large) return [large];
  const overlaps = overlapsOf(hazardsOf(field), regionSubtract(graphic, field.outfieldGrass));
  const fix = moveInWords(graphic, room);
  return overlaps.map((overlap) => overlapProblem(overlap, graphic, fix));
}

function tooLarge(field: Field, graphic: Region): Problem | null {
  const [art, grass] = [regionBox(graphic), regionBox(field.outfieldGrass)];
  if (!art || !grass) return null;
  const fits = boxWidth(art) <= boxWidth(grass) && boxHeight(art) <= boxHeight(grass);
  if (fits && regionArea(graphic) <= regionArea(field.outfieldGrass)) return null;
  return problem(
    'art-larger-than-grass',
    'art.placement',
    `the graphic takes ${sizeInWords(art, graphic)}, the outfield grass has ${sizeInWords(grass, field.outfieldGrass)}`,
    'make it smaller',
  );
}

const sizeInWords = (box: Box, region: Region): string =>
  `${Math.round(boxWidth(box))} ft across, ${Math.round(boxHeight(box))} ft in depth and ${Math.round(regionArea(region))} sq ft`;

const INFIELD: readonly SurfaceKind[] = ['skin', 'infield-grass', 'mound', 'home-circle'];

/** Keep-outs first, since they lie on other surfaces. */
function hazardsOf(field: Field): Hazard[] {
  const surfaces = (kinds: readonly SurfaceKind[]): Region =>
    regionUnionAll(field.surfaces.filter((s) => kinds.includes(s.kind)).map((s) => s.region));
  return [
    ...field.keepOuts.map((k) => ({
      code: 'art-over-keep-out',
      onto: `over the keep-out "${k.name}"`,
      region: k.region,
    })),
    {
      code: 'art-over-skin',
      onto: 'over the skin',
      region: surfaces(INFIELD),
    },
    {
      code: 'art-over-track',
      onto: 'over the warning track',
      region: surfaces(['warning-track']),
    },
  ];
}

/** What is left when everything named is taken away: foul grass, and whatever is outside the fence. */
const BEYOND = {
  code: 'art-off-grass',
  onto: 'off the outfield grass',
} as const;

function overlapsOf(hazards: readonly Hazard[], off: Region): Overlap[] {
  const out: Overlap[] = [];
  let rest = off;
  for (const { region, ...named } of hazards) {
    const over = regionIntersect(rest, region);
    if (regionArea(over) <= SLACK_SQ_FT) continue;
    out.push({ ...named, over });
    rest = regionSubtract(rest, over);
  }
  return regionArea(rest) > SLACK_SQ_FT ? [...out, { ...BEYOND, over: rest }] : out;
}

function overlapProblem({ code, onto, over }: Overlap, graphic: Region, fix: string): Problem {
  const share = regionArea(over) / regionArea(graphic);
  const what =
    share > WHOLLY
      ? `the graphic lies wholly ${onto}`
      : `the graphic reaches ${overhangInWords(over, onto)} (${Math.ceil(share * 100)} % of it)`;
  return problem(code, 'art.placement', what, fix);
}

/** A share of the graphic above which all of it is meant. */
const WHOLLY = 0.999;

/** What to do about a graphic that does not lie in `room`: a move that was tried and does it. */
export function moveInWords(graphic: Region, room: Region): string {
  const move = findMove(graphic, room);
  return move
    ? `move it ${move.ft} ft ${move.way}, or make it smaller`
    : 'make it smaller, or move and turn it until it lies on the grass all round';
}
