/** The `transform` attribute: a list of maps, the last one nearest to the shape. */
import { degrees } from '../../base/units';
import {
  affineCompose,
  affineRotate,
  affineScale,
  affineTranslate,
  IDENTITY,
  type Affine,
} from '../../geometry/affine';
import { readNumbers } from './numbers';

const CALL = /\s*,?\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)/y;

/** The map that the attribute describes, or null when it cannot be read. */
export function readTransform(text: string): Affine | null {
  let map = IDENTITY;
  let at = 0;
  const clean = text.trim();
  if (clean === 'none') return map;
  while (at < clean.length) {
    CALL.lastIndex = at;
    const match = CALL.exec(clean);
    const numbers = match ? readNumbers(match[2]!) : null;
    const next = match && numbers ? callMap(match[1]!, numbers) : null;
    if (!next) return null;
    map = affineCompose(map, next);
    at = CALL.lastIndex;
  }
  return map;
}

function callMap(name: string, n: readonly number[]): Affine | null {
  const [first = 0, second, third] = n;
  if (name === 'matrix') return n.length === 6 ? matrix(n) : null;
  if (name === 'rotate') return n.length === 1 || n.length === 3 ? rotate(first, n) : null;
  if (n.length === 0 || n.length > 2 || third !== undefined) return null;
  if (name === 'translate') return affineTranslate(first, second ?? 0);
  if (name === 'scale') return affineScale(first, second ?? first);
  if (n.length !== 1) return null;
  const slope = Math.tan(degrees(first));
  return name === 'skewX' ? { ...IDENTITY, c: slope } : { ...IDENTITY, b: slope };
}

const matrix = (n: readonly number[]): Affine => ({
  a: n[0]!,
  b: n[1]!,
  c: n[2]!,
  d: n[3]!,
  e: n[4]!,
  f: n[5]!,
});

function rotate(angleDeg: number, n: readonly number[]): Affine {
  const turn = affineRotate(degrees(angleDeg));
  if (n.length === 1) return turn;
  const [, x = 0, y = 0] = n;
  return affineCompose(affineTranslate(x, y), affineCompose(turn, affineTranslate(-x, -y)));
}
