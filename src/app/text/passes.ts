/** A pass in words that a driver can follow. */
import type { Pass } from '../../mowing/model';

/** Which way it runs, as seen from home plate. */
export function driveWords(pass: Pass): string {
  const a = pass.line[0];
  const b = pass.line[pass.line.length - 1];
  if (!a || !b) return '';
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  if (Math.hypot(dx, dy) < 0.5 * pass.lengthFt) return 'round the edge';
  const out = dy > 0 ? 'toward the fence' : 'toward home';
  if (Math.abs(dx) < 0.4 * Math.abs(dy)) return out;
  if (Math.abs(dy) < 0.4 * Math.abs(dx)) return dx > 0 ? 'toward right field' : 'toward left field';
  return `${out}, ${dx > 0 ? 'right' : 'left'}`;
}
