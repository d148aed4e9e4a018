/** The field made of what the user says of it. */
import type { LengthSystem } from '../base/quantity';
import { fail, problem, succeed, type Problem, type Result } from '../base/result';
import { fullCircle, pathFlatten, type Path } from '../geometry/arc';
import { regionContains, regionSubtract, regionUnionAll, type Region } from '../geometry/region';
import { checkField, checkKeepOutPlaces, checkRoom } from './check-field';
import { findSurface } from './find-surface';
import { insetFence } from './inset-fence';
import { fairPath, groundPath, laySurfaces, pathRegion, type FenceEdges } from './lay-surfaces';
import type { Control, Field, FieldSpec, ProvingTape } from './model';
import { moundCentre, pitcherPlateFront, placeBases, skinArcCentre } from './place-bases';
import { placeControls } from './place-controls';
import { DEFAULT_TAPE, proveControls, type Pull } from './prove-controls';
import { fencePath, shapeFence } from './shape-fence';

/**
 * The ground made of what the user says of it, feet in the field frame. Proving distances are
 * written in `system`, their limits are for `tape`. Every problem found is returned at once: `fence-*`, `track-*`, `skin-radius`,
 * `foul-width`, `control-sigma`, `pole-*`, `keep-out-*`, `base-size`, `book-unknown`.
 */
export function buildField(
  spec: FieldSpec,
  system: LengthSystem,
  tape: Pull = DEFAULT_TAPE,
): Result<Field> {
  const figures = checkField(spec);
  if (hasError(figures)) return fail(...figures);
  const shape = shapeFence(spec.fence, spec.fenceShape);
  const fence = fencePath(shape);
  const ground = pathRegion([groundPath(spec, fence)]);
  const places = [
    ...checkRoom(spec, pathFlatten(fence, false)),
    ...checkKeepOutPlaces(spec, (p) => regionContains(ground, p)),
  ];
  if (hasError(places)) return fail(...figures, ...places);
  const trackEdge = insetFence(shape, spec.trackWidthFt, pathRegion([fairPath(fence)]));
  if (!trackEdge) return fail(...figures, trackBroken());
  const edges = { fence, trackEdge };
  const prove = (controls: readonly Control[]) => proveControls(controls, system, tape);
  return succeed(assemble(spec, edges, ground, prove), figures);
}

const hasError = (problems: readonly Problem[]): boolean =>
  problems.some((p) => p.severity === 'error');

const trackBroken = (): Problem =>
  problem(
    'track-broken',
    'field.trackWidthFt',
    'the warning track’s inner edge does not run from foul line to foul line',
    'make the track narrower or smooth out the fence',
  );

function assemble(
  spec: FieldSpec,
  edges: FenceEdges,
  ground: Region,
  prove: (controls: readonly Control[]) => ProvingTape[],
): Field {
  const bases = placeBases();
  const controls = placeControls(spec, bases);
  const surfaces = laySurfaces(spec, edges);
  const fenceLine = pathFlatten(edges.fence, false).reverse();
  const poles = { left: fenceLine[0]!, right: fenceLine[fenceLine.length - 1]! };
  const keepOuts = spec.keepOuts.map((k) => ({
    id: k.id,
    name: k.name,
    region: pathRegion([[fullCircle(k.centre, k.radiusFt)] satisfies Path]),
  }));
  const outfield = findSurface(surfaces, 'outfield-grass').region;
  return {
    spec,
    bases,
    pitcherPlate: pitcherPlateFront(),
    moundCentre: moundCentre(),
    skinArcCentre: skinArcCentre(spec),
    surfaces,
    fenceLine,
    poles,
    foulLines: { left: [bases.home, poles.left], right: [bases.home, poles.right] },
    ground,
    outfieldGrass: regionSubtract(outfield, regionUnionAll(keepOuts.map((k) => k.region))),
    keepOuts,
    controls,
    proving: prove(controls),
  };
}
