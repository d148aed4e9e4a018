/** The picture from a seat, every patch burned in, under an even overcast. */
import type { Design } from '../design/model';
import type { Field } from '../field/model';
import { ringSimplify } from '../geometry/polyline';
import { paintBackdrop } from './backdrop';
import { makeCamera } from './camera';
import { createCanvas, developPicture } from './canvas';
import { paintGround } from './ground-scene';
import type { Picture, SeatSpec } from './model';
import { paintMarks, paintPoles, paintWalls } from './upright-scene';

/** A wall may stray this far from the fence's curve: less than a pixel from any seat. */
const UNSEEN_FT = 0.05;

/** `width` and `height` in pixels, at least 1. The seat must have passed `checkSeat`. */
export function renderSeat(
  field: Field,
  design: Design,
  seat: SeatSpec,
  width: number,
  height: number,
): Picture {
  const camera = makeCamera(seat, width, height);
  const canvas = createCanvas(width, height);
  const outline = field.ground.map((ring) => ringSimplify(ring, UNSEEN_FT));
  paintBackdrop(canvas, camera, outline);
  paintGround(canvas, camera, field, design);
  paintWalls(canvas, camera, outline);
  paintMarks(canvas, camera, field);
  paintPoles(canvas, camera, field);
  return developPicture(canvas);
}
