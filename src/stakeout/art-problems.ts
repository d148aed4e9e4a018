/** What is wrong with where the graphic lies, in words. */
import { problem, type Problem } from '../base/result';
import type { Field, SurfaceKind } from '../field/model';
import {
  regionArea,
  regionBox,
  regionIntersect,
  regionSubtract,
  type Region,
} from '../geometry/region';

/** Smaller overlaps than this, square feet, are the width of a chalk line. */
const SPILL_SQFT = 0.5;

const NOT_GRASS: readonly SurfaceKind[] = ['skin', 'mound', 'home-circle', 'warning-track'];

/**
 * Problems: `graphic-empty`, `art-larger-than-grass`, `art-over-skin` (and track, mound), and
 * `art-off-grass` for what lies beyond; all errors, since no stake can be driven there.
 */
export function artProblems(field: Field, graphic: Region): Problem[] {
  const area = regionArea(graphic);
  if (!(area > 0)) {
    return [
      problem(
        'graphic-empty',
        'the graphic',
        'there is no area to set out',
        'bring a drawing or a word that encloses some area',
      ),
    ];
  }
  const off = regionSubtract(graphic, field.outfieldGrass);
  const spill = regionArea(off);
  if (spill <= SPILL_SQFT) return [];
  if (area > regionArea(field.outfieldGrass)) return [tooLarge(area, field)];
  return surfaceProblems(field, graphic, off, spill);
}

const tooLarge = (area: number, field: Field): Problem =>
  problem(
    'art-larger-than-grass',
    'the graphic',
    `it covers ${Math.round(area)} sq ft, the outfield grass is ${Math.round(regionArea(field.outfieldGrass))} sq ft`,
    'make it smaller',
  );

function surfaceProblems(field: Field, graphic: Region, off: Region, spill: number): Problem[] {
  let named = 0;
  const out: Problem[] = [];
  for (const surface of field.surfaces) {
    if (!NOT_GRASS.includes(surface.kind)) continue;
    const over = regionArea(regionIntersect(graphic, surface.region));
    if (over <= SPILL_SQFT) continue;
    named += over;
    const code = surface.kind === 'warning-track' ? 'art-over-track' : 'art-over-skin';
    out.push(
      problem(
        code,
        'the graphic',
        `${over.toFixed(1)} sq ft of it lie on the ${surface.name.toLowerCase()}`,
        'move it or make it smaller',
      ),
    );
  }
  if (spill - named > SPILL_SQFT) out.push(offGrass(off, spill - named));
  return out;
}

function offGrass(off: Region, spill: number): Problem {
  const box = regionBox(off)!;
  return problem(
    'art-off-grass',
    `the graphic near x ${Math.round((box.minX + box.maxX) / 2)} ft, y ${Math.round((box.minY + box.maxY) / 2)} ft`,
    `${spill.toFixed(1)} sq ft of it lie off the outfield grass`,
    'move it or make it smaller',
  );
}
