/**
 * Colours of the picture. Mixing is done in linear light; grass follows the brightness formula: its
 * luminance is proportional to Y, its hue runs from the dark to the light lay's.
 */
import { REST_BRIGHTNESS, VIEW_STRENGTH } from './light';

/** Linear-light red, green and blue, 0 to 1. */
export type Colour = readonly [number, number, number];

/** Source: IEC 61966-2-1 (sRGB). */
export function linearFromSrgb(value: number): number {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}

/** The inverse of `linearFromSrgb`: 0 to 255, not rounded. Source: IEC 61966-2-1 (sRGB). */
export function srgbFromLinear(value: number): number {
  const v = Math.min(1, Math.max(0, value));
  return 255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
}

/** From `#RRGGBB`. */
export const colourFromHex = (hex: string): Colour => {
  const channel = (at: number): number => linearFromSrgb(parseInt(hex.slice(at, at + 2), 16));
  return [channel(1), channel(3), channel(5)];
};

/** Relative luminance. Source: ITU-R BT.709. */
export const luminance = ([r, g, b]: Colour): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** `a` at t = 0, `b` at t = 1, in linear light. */
export const colourMix = (a: Colour, b: Colour, t: number): Colour => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

/** The colour made `k` times as bright. */
export const colourScale = (c: Colour, k: number): Colour => [c[0] * k, c[1] * k, c[2] * k];

/** Skin, mound and circle, as drawings show them. */
export const CLAY_HEX = '#CB9468';

/** Colours of everything but grass. */
export const PALETTE = {
  skyHigh: colourFromHex('#D7E3E8'),
  skyLow: colourFromHex('#F3F3EA'),
  hills: colourFromHex('#C4CFC4'),
  farTrees: colourFromHex('#A9B9A6'),
  trees: colourFromHex('#8CA18B'),
  beyond: colourFromHex('#B9C4A6'),
  wall: colourFromHex('#3B5A4A'),
  wallCap: colourFromHex('#E7DDB0'),
  rail: colourFromHex('#8C9A90'),
  pole: colourFromHex('#E3B93C'),
  skin: colourFromHex(CLAY_HEX),
  track: colourFromHex('#BD8359'),
  chalk: colourFromHex('#FFFFFF'),
  rubber: colourFromHex('#F6F3EA'),
} as const;

/** Grass laid toward home and away from it, as drawings show it. */
export const LAY_HEX = { dark: '#82AD5B', light: '#B6D487' } as const;
const LAY_DARK = colourFromHex(LAY_HEX.dark);
const LAY_LIGHT = colourFromHex(LAY_HEX.light);

/** Grass between the dark lay (−1) and the light one (1), as drawings show it. */
export function toneHex(shade: number): string {
  const mixed = colourMix(LAY_DARK, LAY_LIGHT, (shade + 1) / 2);
  const parts = mixed.map((v) => Math.round(srgbFromLinear(v)).toString(16).padStart(2, '0'));
  return `#${parts.join('').toUpperCase()}`;
}

/** Luminance of grass that leans no way. */
export const REST_LUMINANCE = (luminance(LAY_DARK) + luminance(LAY_LIGHT)) / 2;

const GRASS_STEPS = 4096;
const GRASS = Array.from({ length: GRASS_STEPS + 1 }, (_, i) => mixGrass(i / GRASS_STEPS));

/** Grass of brightness `y`, 0 to 1: luminance `REST_LUMINANCE`·y ÷ Y0. */
export const grassColour = (y: number): Colour => GRASS[Math.round(y * GRASS_STEPS)]!;

function mixGrass(y: number): Colour {
  const span = 2 * REST_BRIGHTNESS * VIEW_STRENGTH.value;
  const hue = colourMix(LAY_DARK, LAY_LIGHT, (y - REST_BRIGHTNESS) / span + 0.5);
  return colourScale(hue, ((y / REST_BRIGHTNESS) * REST_LUMINANCE) / luminance(hue));
}
