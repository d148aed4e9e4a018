/** Painted shapes to one region: dark ones are added, white ones cut what lies below them. */
import { affineApply, type Affine } from '../../geometry/affine';
import { boxHeight, boxOfPoints, boxWidth, type Box } from '../../geometry/box';
import {
  EMPTY_REGION,
  regionArea,
  regionBox,
  regionFrom,
  regionIntersect,
  regionSubtract,
  regionUnionAll,
  type Region,
} from '../../geometry/region';
import { ART_CHORD, ART_SPAN, artFrame } from '../art-frame';
import { flattenFill } from '../flatten-outline';
import { outlineMap } from '../outline';
import { MAX_REACH } from './limits';
import { itemBox, itemFrame, type PaintItem } from './paint-item';
import type { Report } from './report';
import { strokeOutline } from './stroke';
import { overlap } from './viewport';

export interface Composed {
  readonly region: Region;
  /** From the drawing's root units (y down) to the art frame. */
  readonly frame: Affine;
}

/**
 * The graphic in the art frame. Shapes painted in white only are taken as the graphic itself. When
 * white shapes or the page's edge cut most of the drawing away, what is left is read once more at
 * full size. Null when nothing is left.
 */
export function composePaint(items: readonly PaintItem[], report: Report): Composed | null {
  const shown = toneItems(items, report);
  const rough = shown.map(itemBox).reduce(joinBoxes, null);
  if (!rough) return null;
  const frame = artFrame(rough, true);
  const region = paintAll(shown, frame, report);
  const box = regionBox(region);
  if (!box) return null;
  const fits = Math.max(boxWidth(box), boxHeight(box)) >= ART_SPAN / 2;
  if (fits) return { region, frame };
  const closer = refit(frame, box);
  return { region: paintAll(shown, closer, null), frame: closer };
}

/** Dark and white as painted; all dark when there is nothing but white. */
function toneItems(items: readonly PaintItem[], report: Report): readonly PaintItem[] {
  const first = items[0];
  if (!first || items.some((item) => item.tone === 'dark')) return items;
  report.add('svg-all-white', 'the drawing', 0);
  return items.map((item) => ({ ...item, tone: 'dark' }));
}

function joinBoxes(a: Box | null, b: Box | null): Box | null {
  if (!a || !b) return a ?? b;
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** A frame that fits the box of what was drawn in `frame`. */
function refit(frame: Affine, box: Box): Affine {
  const fit = artFrame(box, false);
  return {
    a: fit.a * frame.a,
    b: 0,
    c: 0,
    d: fit.d * frame.d,
    e: fit.a * frame.e + fit.e,
    f: fit.d * frame.f + fit.f,
  };
}

/** Runs of one tone are united in one sweep; `report`, if any, hears what cut what. */
function paintAll(items: readonly PaintItem[], frame: Affine, report: Report | null): Region {
  let ground: Region = EMPTY_REGION;
  for (const run of runsOfOneTone(items)) {
    const pieces = run.map((item) => itemRegion(item, frame, report));
    if (run[0]!.tone === 'dark') ground = regionUnionAll([ground, ...pieces]);
    else ground = cutGround(ground, run, pieces, report);
  }
  return ground;
}

function runsOfOneTone(items: readonly PaintItem[]): PaintItem[][] {
  const runs: PaintItem[][] = [];
  for (const item of items) {
    const last = runs[runs.length - 1];
    if (last?.[0]!.tone === item.tone) last.push(item);
    else runs.push([item]);
  }
  return runs;
}

function cutGround(
  ground: Region,
  run: readonly PaintItem[],
  pieces: readonly Region[],
  report: Report | null,
): Region {
  if (ground.length === 0) return ground;
  const left = regionSubtract(ground, regionUnionAll(pieces));
  const { subject, line } = run[0]!;
  if (regionArea(left) < regionArea(ground)) report?.add('svg-white', subject, line);
  return left;
}

/** The item's area in the art frame, cut by the viewports round it. */
function itemRegion(item: PaintItem, frame: Affine, report: Report | null): Region {
  const map = itemFrame(item, frame);
  if (!map || outOfReach(item, map)) return EMPTY_REGION;
  const painted = brushRegion(item, map, report);
  let left = painted;
  for (const corners of item.clips)
    left = clipTo(
      left,
      corners.map((p) => affineApply(frame, p)),
    );
  const lost = regionArea(painted) - regionArea(left);
  if (item.tone === 'dark' && lost > OUTSIDE_SHARE * regionArea(painted)) {
    report?.add('svg-outside', item.subject, item.line);
  }
  return left;
}

/** Less than this share of a shape outside the page is rounding, not worth a word. */
const OUTSIDE_SHARE = 0.001;

function outOfReach(item: PaintItem, map: Affine): boolean {
  const box = boxOfPoints(outlineMap(item.outline, map).map((sub) => sub.start));
  return box === null || Object.values(box).some((v: number) => Math.abs(v) > MAX_REACH);
}

function brushRegion(item: PaintItem, map: Affine, report: Report | null): Region {
  if (item.brush.kind === 'fill') {
    return regionFrom(flattenFill(outlineMap(item.outline, map), ART_CHORD), item.brush.rule);
  }
  const { region, dashesDropped } = strokeOutline(item.outline, item.brush.pen, map);
  if (dashesDropped) report?.add('svg-dashes', item.subject, item.line);
  return region;
}

function clipTo(region: Region, corners: readonly { x: number; y: number }[]): Region {
  const box = regionBox(region);
  const clip = boxOfPoints(corners);
  if (!box || !clip) return region;
  const shared = overlap(box, clip);
  if (!shared) return EMPTY_REGION;
  const upright = corners.every(
    (p) => (p.x === clip.minX || p.x === clip.maxX) && (p.y === clip.minY || p.y === clip.maxY),
  );
  const inside = upright && Object.values(box).join() === Object.values(shared).join();
  return inside ? region : regionIntersect(region, [corners]);
}
