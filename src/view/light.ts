/**
 * How bright a patch of leaning grass looks from an eye: blades laid away from the viewer show
 * their broad faces and look light, blades laid toward him show tips and shadow and look dark; from
 * the opposite side it reverses. Sign: crop-science societies' public blog, 2018-10-22; grounds-mag,
 * "Establish mowing patterns". The size (`VIEW_STRENGTH`, `SUN_STRENGTH`) is an assumption.
 */
import { sourced } from '../base/sourced';
import type { Feet, Radians } from '../base/units';
import { pointDistance, vectorDot, type Point } from '../geometry/point';

/** Brightness of grass that leans no way, 0 to 1. */
export const REST_BRIGHTNESS = 0.5;
export const VIEW_STRENGTH = sourced(0.28, 'share of brightness', 'assumption');
/** Below 1, so that no sun can turn light grass dark. */
export const SUN_STRENGTH = sourced(0.35, 'share', 'assumption');

/** An eye above the ground plane. */
export interface Eye {
  readonly at: Point;
  readonly heightFt: Feet;
}

/** A direct sun; `clear` is 0 under an even overcast, 1 under a clear sky. */
export interface Sun {
  /** Toward the sun, clockwise from +y. */
  readonly azimuth: Radians;
  readonly elevation: Radians;
  readonly clear: number;
}

/**
 * Y = Y0·[1 + kV·g·(L·e)·(1 + kS·q·cos(el)·c)]: g is the cosine of the angle at which the eye looks
 * down, e the level unit vector from eye to ground point, c = +1 with the sun behind the viewer.
 * Without `sun` the light is an even overcast (q = 0). A point straight below the eye is Y0.
 */
export function apparentBrightness(lay: Point, ground: Point, eye: Eye, sun?: Sun): number {
  const level = pointDistance(ground, eye.at);
  if (level === 0) return REST_BRIGHTNESS;
  const sight = { x: (ground.x - eye.at.x) / level, y: (ground.y - eye.at.y) / level };
  const flatness = level / Math.hypot(level, eye.heightFt);
  const lean = VIEW_STRENGTH.value * flatness * vectorDot(lay, sight);
  return REST_BRIGHTNESS * (1 + lean * sunFactor(sight, sun));
}

function sunFactor(sight: Point, sun: Sun | undefined): number {
  if (!sun) return 1;
  const toSun = { x: Math.sin(sun.azimuth), y: Math.cos(sun.azimuth) };
  const behind = -vectorDot(sight, toSun);
  return 1 + SUN_STRENGTH.value * sun.clear * Math.cos(sun.elevation) * behind;
}

/** |Y1 − Y2| ÷ (Y1 + Y2). Source: Michelson 1927, Studies in Optics. */
export const michelsonContrast = (y1: number, y2: number): number =>
  y1 + y2 === 0 ? 0 : Math.abs(y1 - y2) / (y1 + y2);
