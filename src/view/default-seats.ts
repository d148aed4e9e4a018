/** The seats that a new project starts with; places and heights are assumptions, all editable. */
import type { SeatSpec } from './model';

/** Middle of centre field, where most graphics lie. */
const CENTRE_FIELD = { x: 0, y: 270 };

/** The seats of a new project: behind home first, which the headline share is read from. */
export function defaultSeats(): SeatSpec[] {
  return [
    {
      id: 'behind-home',
      name: 'Behind home',
      at: { x: 0, y: -60 },
      eyeHeightFt: 30,
      lookAt: CENTRE_FIELD,
    },
    {
      id: 'first-base-side',
      name: 'First-base side',
      at: { x: 85, y: -20 },
      eyeHeightFt: 30,
      lookAt: CENTRE_FIELD,
    },
    {
      id: 'third-base-side',
      name: 'Third-base side',
      at: { x: -85, y: -20 },
      eyeHeightFt: 30,
      lookAt: CENTRE_FIELD,
    },
  ];
}
