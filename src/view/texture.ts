/** A faint unevenness of the ground, the same at every call: smooth value noise over the plane. */

const hash = (i: number, j: number): number => {
  let h = Math.imul(i, 0x27d4eb2d) ^ Math.imul(j, 0x165667b1);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 13), 0x297a2d39);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
};

const smooth = (t: number): number => t * t * (3 - 2 * t);

/** Value noise with cells of one unit, −1 to 1, mean near 0. */
export function groundNoise(x: number, y: number): number {
  const i = Math.floor(x);
  const j = Math.floor(y);
  const u = smooth(x - i);
  const v = smooth(y - j);
  const low = hash(i, j) * (1 - u) + hash(i + 1, j) * u;
  const high = hash(i, j + 1) * (1 - u) + hash(i + 1, j + 1) * u;
  return 2 * (low * (1 - v) + high * v) - 1;
}
