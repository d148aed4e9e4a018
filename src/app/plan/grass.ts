/** The grass of a design as drawn: colour by lay, strokes along it, an arrow at each band's end. */
import { degrees } from '../../base/units';
import type { Design, Lay, Patch } from '../../design/model';
import { boxOfRings } from '../../geometry/box';
import { pointScale, type Point } from '../../geometry/point';
import { ringContains } from '../../geometry/polyline';
import { regionBox, regionContains, type Region } from '../../geometry/region';
import { toneHex } from '../../view/colour';
import { guideTangent } from '../../view/guide-tangent';
import { patchShade } from '../../view/patch-shade';
import { COLOUR } from './colours';

export interface LayArrow {
  readonly at: Point;
  /** Unit vector the mower went. */
  readonly along: Point;
}

export interface GrassPatch {
  readonly id: string;
  readonly graphic: boolean;
  readonly kind: Patch['kind'];
  readonly layer: number;
  readonly path: Path2D;
  readonly region: Region;
  readonly toward: boolean;
  readonly colour: string;
  /** The same in the calm colours of the stakes stage. */
  readonly calm: string;
  readonly strokes: Path2D;
  readonly arrow: LayArrow | null;
}

export function pathOfRegion(region: Region): Path2D {
  const path = new Path2D();
  for (const ring of region) {
    ring.forEach((p, i) => (i === 0 ? path.moveTo(p.x, p.y) : path.lineTo(p.x, p.y)));
    path.closePath();
  }
  return path;
}

const bearingUnit = (deg: number): Point => ({
  x: Math.sin(degrees(deg)),
  y: Math.cos(degrees(deg)),
});

/** Which way the blades lean at a place. */
function layDirection(lay: Lay, design: Design): (p: Point) => Point {
  if ('bearingDeg' in lay) {
    const unit = bearingUnit(lay.bearingDeg);
    return () => unit;
  }
  const guide = design.guides[lay.guides];
  const tangent = guideTangent(guide ?? []);
  const sense = lay.sense === 'forward' ? 1 : -1;
  return (p) => pointScale(tangent(p) ?? { x: 0, y: sense }, sense);
}

/** How far the lean points back at the plate, +1 toward home to −1 away, over the patch's edge. */
function homeward(region: Region, along: (p: Point) => Point): number {
  let sum = 0;
  let count = 0;
  for (const ring of region) {
    for (const p of ring) {
      const unit = along(p);
      sum -= (unit.x * p.x + unit.y * p.y) / (Math.hypot(p.x, p.y) || 1);
      count += 1;
    }
  }
  return count === 0 ? 0 : sum / count;
}

/** The narrow tool's patches belong to the graphic, its outline passes included. */
const isGraphic = (patch: Patch): boolean => patch.kind === 'graphic' || patch.tool === 'narrow';

/** Light to dark by the lean: full either way from a third of square on. */
export function layColour(lean: number, graphic: boolean): string {
  const t = Math.min(1, Math.max(0, 0.5 + lean * 1.5));
  return graphic
    ? mix(COLOUR.letterLight, COLOUR.letterDark, t)
    : mix(COLOUR.light, COLOUR.dark, t);
}

function mix(a: string, b: string, t: number): string {
  const part = (hex: string, i: number) => parseInt(hex.slice(i, i + 2), 16);
  const at = (i: number) => Math.round(part(a, i) + (part(b, i) - part(a, i)) * t);
  return `rgb(${at(1)} ${at(3)} ${at(5)})`;
}

const CALM: Readonly<Record<Patch['kind'], string>> = {
  background: COLOUR.calm,
  border: COLOUR.calm,
  quiet: COLOUR.calmQuiet,
  graphic: COLOUR.calmLetter,
};

/** A repeatable jitter in [0, 1) from two whole numbers. */
export function jitter(i: number, j: number, k: number): number {
  const n = Math.sin(i * 127.1 + j * 311.7 + k * 74.7) * 43758.5453;
  return n - Math.floor(n);
}

const STROKE_STEP_FT = 4;

function strokesOf(region: Region, along: (p: Point) => Point): Path2D {
  const path = new Path2D();
  const box = boxOfRings(region);
  if (!box) return path;
  const start = (v: number) => Math.floor(v / STROKE_STEP_FT);
  for (let i = start(box.minX); i <= start(box.maxX); i++) {
    for (let j = start(box.minY); j <= start(box.maxY); j++) {
      const p = {
        x: (i + jitter(i, j, 1)) * STROKE_STEP_FT,
        y: (j + jitter(i, j, 2)) * STROKE_STEP_FT,
      };
      const unit = along(p);
      const length = 1.6 + 3.4 * jitter(i, j, 3);
      const q = { x: p.x + unit.x * length, y: p.y + unit.y * length };
      if (!regionContains(region, p) || !regionContains(region, q)) continue;
      path.moveTo(p.x, p.y);
      path.lineTo(q.x, q.y);
    }
  }
  return path;
}

/** Where the band's arrow sits: inside the end that the mower drives toward. */
function arrowOf(region: Region, along: (p: Point) => Point): LayArrow | null {
  const ring = [...region].sort((a, b) => b.length - a.length)[0];
  const box = regionBox(region);
  if (!ring || !box) return null;
  const unit = along({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 });
  const outward = unit.y >= 0 ? 1 : -1;
  const t = (p: Point) => outward * (p.x * unit.x + p.y * unit.y);
  const s = (p: Point) => p.x * -unit.y + p.y * unit.x;
  const far = Math.max(...ring.map(t));
  const middle = (Math.max(...ring.map(s)) + Math.min(...ring.map(s))) / 2;
  for (let back = 6; back < 60; back += 3) {
    const along1 = outward * (far - back);
    const at = { x: along1 * unit.x - middle * unit.y, y: along1 * unit.y + middle * unit.x };
    const tip = { x: at.x + outward * unit.x * 5, y: at.y + outward * unit.y * 5 };
    if (region.some((r) => ringContains(r, at)) && ringContains(ring, tip))
      return { at, along: unit };
  }
  return null;
}

function grassPatch(patch: Patch, design: Design): GrassPatch {
  const lay = patch.lays[patch.lays.length - 1];
  const along = lay ? layDirection(lay, design) : () => ({ x: 0, y: 1 });
  const lean = homeward(patch.region, along);
  return {
    id: patch.id,
    graphic: isGraphic(patch),
    kind: patch.kind,
    layer: patch.layer,
    path: pathOfRegion(patch.region),
    region: patch.region,
    toward: patch.kind === 'background' ? patchShade(patch) < 0 : lean > 0,
    colour:
      patch.kind === 'background' ? toneHex(patchShade(patch)) : layColour(lean, isGraphic(patch)),
    calm: isGraphic(patch) ? CALM.graphic : CALM[patch.kind],
    strokes: strokesOf(patch.region, along),
    arrow: patch.kind === 'background' ? arrowOf(patch.region, along) : null,
  };
}

/** Every patch ready to be drawn, lowest layer first. */
export function growGrass(design: Design): readonly GrassPatch[] {
  return [...design.patches].sort((a, b) => a.layer - b.layer).map((p) => grassPatch(p, design));
}
