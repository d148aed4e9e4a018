/**
 * Units. Inside the engine lengths are feet, angles radians, times seconds, paper points; a name in
 * any other unit says so at its end (`toleranceIn`, `bearingDeg`, `speedMph`).
 */

/** International feet in the field frame. */
export type Feet = number;
/** Radians, counter-clockwise positive. */
export type Radians = number;
export type Seconds = number;
/** Paper points, 72 to the inch. */
export type PaperPoints = number;

/** The international foot, exactly. Source: NIST SP 811, appendix B (1959 agreement). */
export const METRES_PER_FOOT = 0.3048;
export const INCHES_PER_FOOT = 12;
export const POINTS_PER_INCH = 72;
/** 88 feet a minute is one mile an hour: 5280 ft / 3600 s. */
export const FEET_PER_SECOND_PER_MPH = 5280 / 3600;
export const SQUARE_FEET_PER_ACRE = 43560;

export const inches = (value: number): Feet => value / INCHES_PER_FOOT;
export const feetToInches = (value: Feet): number => value * INCHES_PER_FOOT;
export const metresToFeet = (value: number): Feet => value / METRES_PER_FOOT;
export const feetToMetres = (value: Feet): number => value * METRES_PER_FOOT;
export const degrees = (value: number): Radians => (value * Math.PI) / 180;
export const toDegrees = (value: Radians): number => (value * 180) / Math.PI;
export const mph = (value: number): number => value * FEET_PER_SECOND_PER_MPH;
