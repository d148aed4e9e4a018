/** Where the rule book puts the bases, the pitcher's plate and the mound. */
import { inches } from '../base/units';
import type { Point } from '../geometry/point';
import { foulPoint } from './foul-lines';
import type { Bases, FieldSpec } from './model';
import { BASEBALL_90 } from './rulebook/baseball-90';

/** Home's rear point, the outer back corners of first and third, the centre of second. */
export function placeBases(): Bases {
  const side = BASEBALL_90.baseLineFt.value;
  return {
    home: { x: 0, y: 0 },
    first: foulPoint('right', side),
    second: { x: 0, y: side * Math.SQRT2 },
    third: foulPoint('left', side),
  };
}

/** Centre of a base, and so of its anchor socket: half a base inside its outer back corner. */
export function socketCentre(corner: Point, baseSizeIn: number): Point {
  const inward = inches(baseSizeIn / 2) * Math.SQRT2;
  return { x: corner.x - Math.sign(corner.x) * inward, y: corner.y };
}

/** Middle of the pitcher's plate's front edge, which the book's 60 ft 6 in reach. */
export const pitcherPlateFront = (): Point => ({ x: 0, y: BASEBALL_90.plateFrontFt.value });

/** Centre of the mound's circle. */
export const moundCentre = (): Point => ({ x: 0, y: BASEBALL_90.moundCentreFt.value });

/** Centre of the skin's arc: the front or the rear edge of the pitcher's plate. */
export function skinArcCentre(spec: FieldSpec): Point {
  const front = pitcherPlateFront();
  const depth = inches(BASEBALL_90.plateDepthIn.value);
  return spec.skinArcFrom === 'plate-front' ? front : { x: 0, y: front.y + depth };
}
