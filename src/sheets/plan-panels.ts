/**
 * Cuts a crowded drawing into panels at larger scales until every label has its place. Each item is
 * labelled in exactly one panel.
 */
import { boxGrow, boxHeight, boxOfPoints, boxWidth, type Box } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { LengthSystem } from '../base/quantity';
import { invariant } from '../base/result';
import type { FontMetrics } from './fonts';
import { placeLabels, type LabelRequest, type LabelScene, type PlacedLabel } from './place-labels';
import { frameView, type ViewFrame } from './view-frame';

export interface PanelItem {
  readonly id: string;
  /** On the ground. */
  readonly at: Point;
  /** Radius of its sign, points. */
  readonly clear: number;
  /** Items of one group, a letter say, stay in one panel where that can be. */
  readonly group?: string;
  /** Ground that the panel naming it must show; its place alone when missing. */
  readonly extent?: Box;
}

export interface PanelOptions {
  readonly metrics: FontMetrics;
  readonly system: LengthSystem;
  readonly width: number;
  readonly maxHeight: number;
  readonly labelSize: number;
  /** Points per foot below which a drawing of more than a few items is cut all the same. */
  readonly leastScale: number;
  /** Signs and lines that the drawing will hold, in paper points of the frame. */
  readonly scene: (frame: ViewFrame) => Pick<LabelScene, 'discs' | 'lines'>;
  /** Crowded places get a drawing of their own beside the whole, instead of cutting it in two. */
  readonly insets: boolean;
  /** Points per foot that no panel goes beyond. */
  readonly mostScale?: number;
  /** Ground that a panel of these items must show besides the items. */
  readonly show?: Box;
}

/** A drawing in its own corner: the window's top left is (0, 0). */
export interface Panel {
  readonly frame: ViewFrame;
  readonly ids: readonly string[];
  readonly labels: readonly PlacedLabel[];
}

/** Paper kept left and right, and above and below the outermost items, for their labels. */
const EDGE = 26;
const EDGE_HIGH = 10;
/** A panel never shows less ground than this, feet: beyond it nothing is gained. */
const LEAST_GROUND = 16;
const LEAST_HEIGHT = 110;
/** Height kept at the panel's foot for the scale. */
export const SCALE_STRIP = 14;

/** With no more items than this a small scale does no harm. */
const FEW = 10;

/** Points per foot of the smallest of the drawings. */
export const leastScaleIn = (panels: readonly Panel[]): number =>
  Math.min(...panels.map((panel) => panel.frame.scale));

export function planPanels(items: readonly PanelItem[], options: PanelOptions): Panel[] {
  return split(items, options, options.show);
}

function split(items: readonly PanelItem[], options: PanelOptions, show?: Box): Panel[] {
  if (items.length === 0) return [];
  const frame = panelFrame(items, options, show);
  // Too small a scale is cut whatever its labels do, so that they need no places.
  const small = frame.scale < options.leastScale && items.length > FEW;
  if (small) return halves(items).flatMap((half) => split(half, options));
  const { panel, failed } = makePanel(items, options, frame);
  if (failed.length === 0) return [panel];
  invariant(items.length > 1, `no room for the label of ${items[0]!.id} alone in a panel`);
  const [first, second] = partsFor(items, failed, options);
  const wide = options.insets ? show : undefined;
  return [...split(first, options, wide), ...split(second, options)];
}

function makePanel(items: readonly PanelItem[], options: PanelOptions, frame: ViewFrame) {
  const requests = items.map((item) => requestFor(item, frame, options));
  const { window } = frame;
  const open = { ...window, maxY: window.maxY - SCALE_STRIP };
  const scene = { window: boxGrow(open, -2), taken: [], ...options.scene(frame) };
  const { placed, failed } = placeLabels(requests, scene);
  return { panel: { frame, ids: items.map((item) => item.id), labels: placed }, failed };
}

function requestFor(item: PanelItem, frame: ViewFrame, options: PanelOptions): LabelRequest {
  const size = options.labelSize;
  return {
    id: item.id,
    at: frame.toPaper(item.at),
    width: options.metrics.width(item.id, size, 'bold') + 1,
    height: size * 0.78,
    clear: item.clear,
  };
}

function panelFrame(items: readonly PanelItem[], options: PanelOptions, show?: Box): ViewFrame {
  const points = items.map((item) => item.at);
  const extents = items.flatMap((item) => item.extent ?? []);
  const corners = [...extents, ...(show ? [show] : [])].flatMap(cornersOf);
  const ground = atLeast(boxOfPoints([...points, ...corners])!, LEAST_GROUND);
  const wide = options.width - 2 * EDGE;
  const around = 2 * EDGE_HIGH + SCALE_STRIP;
  const high = options.maxHeight - around;
  const inner = { minX: EDGE, maxX: EDGE + wide, minY: EDGE_HIGH, maxY: EDGE_HIGH + high };
  const cap = options.mostScale;
  const { scale } = frameView(ground, inner, options.system, cap);
  const height = Math.max(LEAST_HEIGHT, boxHeight(ground) * scale + around);
  const foot = height - EDGE_HIGH - SCALE_STRIP;
  const frame = frameView(ground, { ...inner, maxY: foot }, options.system, cap);
  return { ...frame, window: { minX: 0, minY: 0, maxX: options.width, maxY: height } };
}

const cornersOf = (box: Box): Point[] => [
  { x: box.minX, y: box.minY },
  { x: box.maxX, y: box.maxY },
];

function atLeast(box: Box, size: number): Box {
  const x = Math.max(0, (size - boxWidth(box)) / 2);
  const y = Math.max(0, (size - boxHeight(box)) / 2);
  return { minX: box.minX - x, maxX: box.maxX + x, minY: box.minY - y, maxY: box.maxY + y };
}

/** What stays in the drawing, and what goes to the next: the crowded place, or one half. */
function partsFor(
  items: readonly PanelItem[],
  failed: readonly string[],
  options: PanelOptions,
): [PanelItem[], PanelItem[]] {
  if (!options.insets) return halves(items);
  const without = new Set(failed);
  const box = boxOfPoints(items.filter((item) => without.has(item.id)).map((item) => item.at))!;
  const crowded = boxGrow(box, CROWD_FT);
  const [inside, outside]: [PanelItem[], PanelItem[]] = [[], []];
  for (const item of items) (boxContains(crowded, item.at) ? inside : outside).push(item);
  return outside.length === 0 || inside.length > MOST * items.length
    ? halves(items)
    : [outside, inside];
}

/** A crowded place with more than this share of the items is no inset. */
const MOST = 0.6;
const CROWD_FT = 3;

const boxContains = (b: Box, p: Point): boolean =>
  p.x >= b.minX && p.x <= b.maxX && p.y >= b.minY && p.y <= b.maxY;

/** Two groups, left and right or far and near: cut at a wide gap when there is one, else halved. */
function halves(items: readonly PanelItem[]): [PanelItem[], PanelItem[]] {
  const box = boxOfPoints(items.map((item) => item.at))!;
  const across = boxWidth(box) >= boxHeight(box);
  const key = (item: PanelItem) => (across ? item.at.x : -item.at.y);
  const sorted = items
    .map((item, index) => ({ item, index }))
    .sort((a, b) => key(a.item) - key(b.item) || a.index - b.index)
    .map(({ item }) => item);
  const cut = groupCut(sorted) ?? cutIndex(sorted.map(key));
  return [sorted.slice(0, cut), sorted.slice(cut)];
}

/** A cut between groups leaves at least this share of the items on either side. */
const LEAST_SIDE = 0.25;

/** The cut nearest the middle that parts no group; null when there is none, or no groups. */
function groupCut(sorted: readonly PanelItem[]): number | null {
  const last = new Map(sorted.map((item, i) => [item.group, i]));
  if (last.size < 2) return null;
  const cuts: number[] = [];
  let open = -1;
  sorted.forEach((item, i) => {
    open = Math.max(open, last.get(item.group)!);
    if (open === i && i + 1 < sorted.length) cuts.push(i + 1);
  });
  const [least, middle] = [sorted.length * LEAST_SIDE, sorted.length / 2];
  const fair = cuts.filter((cut) => cut >= least && cut <= sorted.length - least);
  const nearer = (a: number, b: number) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a);
  return fair.length === 0 ? null : fair.reduce(nearer);
}

/** A gap wider than this share of the whole is a place to cut. */
const WIDE_GAP = 0.3;

function cutIndex(keys: readonly number[]): number {
  const extent = keys[keys.length - 1]! - keys[0]!;
  let widest = 0;
  let at = Math.ceil(keys.length / 2);
  keys.slice(1).forEach((key, i) => {
    const gap = key - keys[i]!;
    if (gap > widest && gap > WIDE_GAP * extent) [widest, at] = [gap, i + 1];
  });
  return at;
}
