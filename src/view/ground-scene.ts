/** The flat ground of the picture: surfaces, and the outfield's patches lit by the lay formula. */
import type { Design } from '../design/model';
import type { Field, SurfaceKind } from '../field/model';
import type { Point } from '../geometry/point';
import type { Region } from '../geometry/region';
import { groundAt, seeRing, type Camera } from './camera';
import { startMosaic, type Canvas, type Shade } from './canvas';
import { colourScale, grassColour, PALETTE, type Colour } from './colour';
import { patchLay } from './lay-map';
import { apparentBrightness, REST_BRIGHTNESS } from './light';
import { groundNoise } from './texture';

/** Unevenness of grass and clay, share of brightness, and its grain. */
const GRASS_GRAIN = { strength: 0.03, sizeFt: 2.2 } as const;
const CLAY_GRAIN = { strength: 0.035, sizeFt: 3 } as const;
/** Less than a grey level. */
const UNSEEN_GRAIN = 0.003;
/** Mown short and plain: grass without a planned lay. */
const PLAIN_GRASS = colourScale(grassColour(REST_BRIGHTNESS), 0.94);

const SURFACE_COLOUR: Readonly<Record<SurfaceKind, Colour>> = {
  'outfield-grass': PLAIN_GRASS,
  'infield-grass': PLAIN_GRASS,
  'foul-grass': PLAIN_GRASS,
  skin: PALETTE.skin,
  mound: PALETTE.skin,
  'home-circle': PALETTE.skin,
  'warning-track': PALETTE.track,
};

/** Paints every surface; the outfield as its patches. */
export function paintGround(canvas: Canvas, camera: Camera, field: Field, design: Design): void {
  const mosaic = startMosaic(canvas);
  for (const surface of field.surfaces) {
    if (surface.kind === 'outfield-grass' && design.patches.length > 0) continue;
    const isGrass = surface.kind.endsWith('grass');
    const colour = SURFACE_COLOUR[surface.kind];
    const shade = grained(camera, isGrass ? GRASS_GRAIN : CLAY_GRAIN, () => colour);
    mosaic.paint(seeRegion(camera, surface.region), shade);
  }
  const eye = { at: camera.eye, heightFt: camera.eyeHeightFt };
  for (const patch of design.patches) {
    const lay = patchLay(design, patch);
    const colourAt = (p: Point): Colour => grassColour(apparentBrightness(lay(p), p, eye));
    mosaic.paint(seeRegion(camera, patch.region), grained(camera, GRASS_GRAIN, colourAt));
  }
  mosaic.finish();
}

/** A flat region as seen, in pixels. */
export const seeRegion = (camera: Camera, region: Region): Point[][] =>
  region.map((ring) =>
    seeRing(
      camera,
      ring.map((p) => ({ x: p.x, y: p.y, up: 0 })),
    ),
  );

/** Adds the grain where a pixel is small enough to show it; it fades out evenly with distance. */
function grained(
  camera: Camera,
  grain: { readonly strength: number; readonly sizeFt: number },
  colourAt: (p: Point) => Colour,
): Shade {
  return (x, y) => {
    const below = Math.max(y + 0.5, camera.horizonY + 0.25);
    const p = groundAt(camera, x + 0.5, below)!;
    const pixelFt = (camera.eyeHeightFt * camera.focal) / (below - camera.horizonY) ** 2;
    const strength = grain.strength / (1 + (pixelFt / grain.sizeFt) ** 2);
    if (strength < UNSEEN_GRAIN) return colourAt(p);
    const noise = groundNoise(p.x / grain.sizeFt, p.y / grain.sizeFt);
    return colourScale(colourAt(p), 1 + strength * noise);
  };
}
