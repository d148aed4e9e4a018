/** Where the named places of a recipe lie on a field. */
import type { Field } from '../field/model';
import type { Point } from '../geometry/point';
import { regionBox } from '../geometry/region';
import type { NamedPlace } from './model';

/** Field frame. `outfield-middle`: half way between the grass's nearest and farthest on the centre line. */
export function placeOf(field: Field, name: NamedPlace): Point {
  switch (name) {
    case 'home':
      return field.bases.home;
    case 'first-base':
      return field.bases.first;
    case 'second-base':
      return field.bases.second;
    case 'third-base':
      return field.bases.third;
    case 'mound':
      return field.moundCentre;
    case 'outfield-middle':
      return outfieldMiddle(field);
    case 'left-pole':
      return field.poles.left;
    case 'right-pole':
      return field.poles.right;
  }
}

function outfieldMiddle(field: Field): Point {
  const skin = field.skinArcCentre.y + field.spec.skinRadiusFt;
  const far = regionBox(field.outfieldGrass)?.maxY ?? skin;
  return { x: 0, y: (skin + far) / 2 };
}
