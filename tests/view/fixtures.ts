/** Hand-made designs of known lay: no other layer's code decides what these tests expect. */
import type { Design, Lay, Patch } from '../../src/design/model';
import { fullCircle } from '../../src/geometry/arc';
import { rectangle, regionArea, regionSubtract, type Region } from '../../src/geometry/region';
import type { SeatSpec } from '../../src/view/model';

export const box = (minX: number, minY: number, maxX: number, maxY: number): Region =>
  rectangle({ minX, minY, maxX, maxY });

export const disc = (x: number, y: number, radius: number, points = 720): Region => [
  Array.from({ length: points }, (_, i) => ({
    x: x + radius * Math.cos((2 * Math.PI * i) / points),
    y: y + radius * Math.sin((2 * Math.PI * i) / points),
  })),
];

export const patch = (
  id: string,
  kind: Patch['kind'],
  lays: readonly Lay[],
  region: Region,
): Patch => ({
  id,
  kind,
  layer: kind === 'graphic' ? 3 : 0,
  tool: kind === 'graphic' ? 'narrow' : 'wide',
  lays,
  region,
  areaSqFt: regionArea(region),
});

export const bearing = (bearingDeg: number): readonly Lay[] => [{ order: 1, bearingDeg }];

const BAND_FT = 10;

/** North-south bands 10 ft wide from x −100 to 100, even ones laid away from home, odd ones toward. */
function bands(hole: Region, reversed = false): Patch[] {
  return Array.from({ length: 20 }, (_, k) => k - 10).map((i) => {
    const area = box(i * BAND_FT, 180, (i + 1) * BAND_FT, 380);
    const away = (i % 2 === 0) !== reversed;
    return patch(`band-${i}`, 'background', bearing(away ? 0 : 180), regionSubtract(area, hole));
  });
}

/** The planted fault: one lay over alternating bands. */
export const plainDesign = (graphic: Region): Design => ({
  patches: [...bands(graphic), patch('graphic', 'graphic', bearing(180), graphic)],
  guides: {},
  graphic,
  quiet: [],
  strokes: [],
});

/** One-lay ground behind the graphic, opposite to it. */
export function quietDesign(graphic: Region, quiet = box(-80, 200, 80, 360)): Design {
  return {
    patches: [
      ...bands(quiet),
      patch('quiet', 'quiet', bearing(0), regionSubtract(quiet, graphic)),
      patch('graphic', 'graphic', bearing(180), graphic),
    ],
    guides: {},
    graphic,
    quiet,
    strokes: [],
  };
}

/** Every band reversed inside the graphic; `graphic` is a rectangle on whole bands. */
export function counterDesign(graphic: Region, firstBand: number, lastBand: number): Design {
  const [low, high] = [graphic[0]![0]!.y, graphic[0]![2]!.y];
  const inside = Array.from({ length: lastBand - firstBand }, (_, k) => firstBand + k).map((i) =>
    patch(
      `inside-${i}`,
      'graphic',
      bearing(i % 2 === 0 ? 180 : 0),
      box(i * BAND_FT, low, (i + 1) * BAND_FT, high),
    ),
  );
  return { patches: [...bands(graphic), ...inside], guides: {}, graphic, quiet: [], strokes: [] };
}

/** A ring laid along a circle, counter-clockwise when `forward`. */
export const ringDesign = (sense: 'forward' | 'backward'): Design => ({
  patches: [
    patch(
      'ring',
      'border',
      [{ order: 1, guides: 'circle', sense }],
      regionSubtract(disc(0, 250, 40), disc(0, 250, 30)),
    ),
  ],
  guides: { circle: [fullCircle({ x: 0, y: 250 }, 35)] },
  graphic: [],
  quiet: [],
  strokes: [],
});

export const seat = (x: number, y: number, eyeHeightFt: number): SeatSpec => ({
  id: 'test',
  name: 'Test seat',
  at: { x, y },
  eyeHeightFt,
  lookAt: { x: 0, y: 280 },
});

export const BEHIND_HOME = seat(0, -60, 30);
