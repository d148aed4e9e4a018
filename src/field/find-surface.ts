/** A surface of the field by its kind. */
import { invariant } from '../base/result';
import type { Surface, SurfaceKind } from './model';

/** The surface of that kind; every field has one of each but the warning track, which may be 0 ft wide. */
export function findSurface(
  surfaces: readonly Surface[],
  kind: Exclude<SurfaceKind, 'warning-track'>,
): Surface {
  const found = surfaces.find((s) => s.kind === kind);
  invariant(found, `the field has a surface of kind ${kind}`);
  return found;
}
