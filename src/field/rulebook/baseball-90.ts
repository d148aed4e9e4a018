/** The 90-ft baseball field, as the rule books draw it. Feet unless the unit says otherwise. */
import { sourced } from '../../base/sourced';

const OBR = 'Official Baseball Rules 2.01';
const PRACTICE = 'common practice, no source';

/** Every figure of the book field with its source. */
export const BASEBALL_90 = {
  /** Side of the square: plate's rear point to the outer back corners, then to second's centre. */
  baseLineFt: sourced(90, 'ft', `${OBR}; NCAA Rule 1-2a`),
  /** As printed in the rule; the exact diagonal of the square is 127.2792 ft. */
  homeToSecondFt: sourced(127 + 3.375 / 12, 'ft', OBR),
  plateFrontFt: sourced(60.5, 'ft', 'Official Baseball Rules 2.04; NCAA Rule 1-8'),
  plateDepthIn: sourced(6, 'in', 'Official Baseball Rules 2.04; NCAA Rule 1-8'),
  moundCentreFt: sourced(
    59,
    'ft',
    'high-school federation dimension charts',
    '18 in toward home from the front edge of the pitcher’s plate',
  ),
  moundRadiusFt: sourced(9, 'ft', 'high-school federation dimension charts'),
  skinRadiusFt: sourced(95, 'ft', 'Official Baseball Rules, appendix 1'),
  homeCircleRadiusFt: sourced(13, 'ft', 'public dimension charts for the 90-ft field'),
  baseCutRadiusFt: sourced(
    13,
    'ft',
    'public dimension charts for the 90-ft field',
    'about the back corner of the base',
  ),
  /** Skin on each side of a base line: the grass line and the foul strip. */
  basePathHalfFt: sourced(3, 'ft', PRACTICE),
  baseSizeIn: sourced(15, 'in', 'NCAA Rule 1-7'),
  fence: sourced(
    [
      { bearingDeg: -45, distanceFt: 330 },
      { bearingDeg: -22.5, distanceFt: 375 },
      { bearingDeg: 0, distanceFt: 400 },
      { bearingDeg: 22.5, distanceFt: 375 },
      { bearingDeg: 45, distanceFt: 330 },
    ],
    'ft',
    'NCAA Rule 1-2b',
    'recommended: 330 at the poles, 375 in the alleys, 400 in centre',
  ),
  trackWidthFt: sourced(15, 'ft', 'NCAA Rule 1-5a'),
  foulWidthFt: sourced(60, 'ft', `${OBR}; NCAA Rule 1-5b`),
  /** Share of the pole's distance at which the side fence starts to close in on the pole. */
  taperStart: sourced(0.6, 'share', PRACTICE, 'NCAA Rule 1-5b lets the side fence taper'),
} as const;
