/** Everything of a plan that is drawn the same at every zoom, as canvas paths in field feet. */
import type { Field, Surface } from '../../field/model';
import type { Box } from '../../geometry/box';
import type { Polyline } from '../../geometry/polyline';
import { regionBox } from '../../geometry/region';
import type { Plan } from '../../plan/model';
import { COLOUR } from './colours';
import { growGrass, pathOfRegion, type GrassPatch } from './grass';

export interface Scene {
  readonly field: Field;
  readonly surfaces: readonly {
    readonly kind: Surface['kind'];
    readonly path: Path2D;
    readonly colour: string;
  }[];
  /** The grass that the design is laid on. */
  readonly outfield: Path2D;
  readonly grass: readonly GrassPatch[];
  readonly fence: Path2D;
  readonly foulLines: Path2D;
  readonly keepOuts: Path2D;
  readonly box: Box;
}

const SURFACE_COLOUR: Readonly<Record<Surface['kind'], string>> = {
  'outfield-grass': COLOUR.light,
  'infield-grass': COLOUR.calm,
  'foul-grass': COLOUR.calm,
  skin: COLOUR.clay,
  mound: COLOUR.clay,
  'home-circle': COLOUR.clay,
  'warning-track': COLOUR.clay,
};

export function pathOfLine(line: Polyline): Path2D {
  const path = new Path2D();
  line.forEach((p, i) => (i === 0 ? path.moveTo(p.x, p.y) : path.lineTo(p.x, p.y)));
  return path;
}

function joinPaths(paths: readonly Path2D[]): Path2D {
  const out = new Path2D();
  for (const path of paths) out.addPath(path);
  return out;
}

const made = new WeakMap<Plan, Scene>();

/** The plan's scene, made once. */
export function makeScene(plan: Plan): Scene {
  const before = made.get(plan);
  if (before) return before;
  const scene = buildScene(plan);
  made.set(plan, scene);
  return scene;
}

function buildScene(plan: Plan): Scene {
  const { field } = plan;
  return {
    field,
    surfaces: field.surfaces.map((s) => ({
      kind: s.kind,
      path: pathOfRegion(s.region),
      colour: SURFACE_COLOUR[s.kind],
    })),
    outfield: pathOfRegion(field.outfieldGrass),
    grass: growGrass(plan.design),
    fence: pathOfLine(field.fenceLine),
    foulLines: joinPaths([field.foulLines.left, field.foulLines.right].map(pathOfLine)),
    keepOuts: joinPaths(field.keepOuts.map((k) => pathOfRegion(k.region))),
    box: regionBox(field.ground) ?? { minX: -240, minY: -40, maxX: 240, maxY: 410 },
  };
}
