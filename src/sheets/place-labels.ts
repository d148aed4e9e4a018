/**
 * Places labels beside their points so that every one can be read: no label lies on another, on a
 * sign or outside the window, and no leader runs through a label, a sign or another leader. Lines of
 * the drawing are avoided where there is room. Greedy, the most crowded first; those that fail go
 * first in the next try.
 */
import { boxGrow, type Box } from '../geometry/box';
import { pointDistance, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { segmentIntersection, segmentNearest } from '../geometry/segment';
import { segmentGrid, type Piece, type SegmentGrid } from './segment-grid';

export interface LabelRequest {
  readonly id: string;
  readonly at: Point;
  readonly width: number;
  readonly height: number;
  /** Radius of the label's own sign, kept clear. */
  readonly clear: number;
}

export interface Disc {
  readonly at: Point;
  readonly radius: number;
}

export interface LabelScene {
  readonly window: Box;
  /** Signs, the labels' own included. */
  readonly discs: readonly Disc[];
  /** Lines that a label had better not cover. */
  readonly lines: readonly Polyline[];
  /** Places already taken. */
  readonly taken: readonly Box[];
  /** How far labels may stand off, in steps; all steps when missing. */
  readonly steps?: number;
}

export interface PlacedLabel {
  readonly id: string;
  readonly box: Box;
  /** From the sign to the label, when they are apart. */
  readonly leader: readonly [Point, Point] | null;
}

export interface Placement {
  readonly placed: readonly PlacedLabel[];
  readonly failed: readonly string[];
}

/** Gaps between sign and label tried, points; those after the first get a leader. */
const GAPS = [1.5, 7, 13, 20, 28, 37];
const DIRECTIONS = 16;
const TRIES = 5;
/** With more than this share left over after a try, another order will not help. */
const HOPELESS = 0.1;
/** Costs in the same coin: one step of gap, one line covered, one line crossed by a leader. */
const COST = { gap: 5, covered: 3, crossed: 1.5, turn: 0.15 };
/** Clear paper round each label. */
const CLEARANCE = 0.8;

export function placeLabels(requests: readonly LabelRequest[], scene: LabelScene): Placement {
  const lines = segmentGrid(scene.lines, scene.window);
  let order = byCrowding(requests, scene.discs);
  let best: Placement = { placed: [], failed: requests.map((r) => r.id) };
  for (let t = 0; t < TRIES && best.failed.length > 0; t++) {
    const result = placeInOrder(order, scene, lines);
    if (t === 0 || result.failed.length < best.failed.length) best = result;
    if (best.failed.length > HOPELESS * requests.length) return best;
    const failed = new Set(result.failed);
    order = [...order.filter((r) => failed.has(r.id)), ...order.filter((r) => !failed.has(r.id))];
  }
  return best;
}

const CROWD = 30;

function byCrowding(requests: readonly LabelRequest[], discs: readonly Disc[]): LabelRequest[] {
  const crowd = (r: LabelRequest) => discs.filter((d) => isNear(d.at, r.at, CROWD)).length;
  return requests
    .map((request, index) => ({ request, index, crowd: crowd(request) }))
    .sort((a, b) => b.crowd - a.crowd || a.index - b.index)
    .map(({ request }) => request);
}

function placeInOrder(
  order: readonly LabelRequest[],
  scene: LabelScene,
  lines: SegmentGrid,
): Placement {
  const placed: PlacedLabel[] = [];
  const failed: string[] = [];
  for (const request of order) {
    const reach = reachOf(request);
    const label = bestPlace(request, sceneNear(request, scene), lines, placed.filter(meets(reach)));
    if (label) placed.push(label);
    else failed.push(request.id);
  }
  return { placed, failed };
}

/** The signs that a label of this request can meet. */
function sceneNear(request: LabelRequest, scene: LabelScene): LabelScene {
  const reach = request.clear + GAPS[GAPS.length - 1]! + request.width + request.height;
  const near = (disc: Disc) => isNear(disc.at, request.at, reach + disc.radius);
  return { ...scene, discs: scene.discs.filter(near) };
}

/** Where a label of this request and its leader can lie. */
const reachOf = (r: LabelRequest): Box =>
  boxGrow(
    { minX: r.at.x, maxX: r.at.x, minY: r.at.y, maxY: r.at.y },
    r.clear + GAPS[GAPS.length - 1]! + r.width + r.height + CLEARANCE,
  );

const meets =
  (reach: Box) =>
  ({ box, leader }: PlacedLabel): boolean =>
    boxesMeet(boxGrow(box, CLEARANCE), reach) ||
    (leader !== null && segmentMeetsBox(leader, reach));

function bestPlace(
  request: LabelRequest,
  scene: LabelScene,
  lines: SegmentGrid,
  placed: readonly PlacedLabel[],
): PlacedLabel | null {
  let best: PlacedLabel | null = null;
  let least = Infinity;
  const steps = Math.min(GAPS.length, scene.steps ?? GAPS.length);
  for (let g = 0; g < steps && g * COST.gap < least; g++) {
    for (let d = 0; d < DIRECTIONS; d++) {
      const label = candidate(request, g, d);
      const base = g * COST.gap + turnCost(d);
      if (base >= least || !isFree(label, request, scene, placed)) continue;
      const cost = base + lineCost(label, lines);
      if (cost < least) [least, best] = [cost, label];
    }
  }
  return best;
}

/** Right and above are preferred, as in maps. */
const turnCost = (d: number): number =>
  COST.turn * Math.min((d + DIRECTIONS - 1) % DIRECTIONS, (DIRECTIONS + 1 - d) % DIRECTIONS);

function candidate(r: LabelRequest, gapIndex: number, direction: number): PlacedLabel {
  const angle = (2 * Math.PI * direction) / DIRECTIONS;
  const [ux, uy] = [Math.cos(angle), -Math.sin(angle)];
  const reach = r.clear + GAPS[gapIndex]!;
  const cx = r.at.x + ux * (reach + r.width / 2);
  const cy = r.at.y + uy * (reach + r.height / 2);
  const box = {
    minX: cx - r.width / 2,
    maxX: cx + r.width / 2,
    minY: cy - r.height / 2,
    maxY: cy + r.height / 2,
  };
  return { id: r.id, box, leader: gapIndex === 0 ? null : leaderTo(r, box) };
}

function leaderTo(r: LabelRequest, box: Box): readonly [Point, Point] {
  const end = nearestInBox(box, r.at);
  const distance = pointDistance(end, r.at) || 1;
  const k = r.clear / distance;
  const start = { x: r.at.x + (end.x - r.at.x) * k, y: r.at.y + (end.y - r.at.y) * k };
  return [start, end];
}

const nearestInBox = (box: Box, p: Point): Point => ({
  x: Math.min(box.maxX, Math.max(box.minX, p.x)),
  y: Math.min(box.maxY, Math.max(box.minY, p.y)),
});

function isFree(
  label: PlacedLabel,
  request: LabelRequest,
  scene: LabelScene,
  placed: readonly PlacedLabel[],
): boolean {
  const { window } = scene;
  const b = boxGrow(label.box, CLEARANCE);
  if (b.minX < window.minX || b.maxX > window.maxX) return false;
  if (b.minY < window.minY || b.maxY > window.maxY) return false;
  if (scene.taken.some((box) => boxesMeet(b, box))) return false;
  if (scene.discs.some((disc) => discMeetsBox(disc, b))) return false;
  if (!placed.every((other) => labelsApart(label, b, other))) return false;
  return label.leader === null || leaderClear(label.leader, request, scene.discs);
}

/** Squares compared: this is asked some hundred thousand times for a sheet. */
function discMeetsBox({ at, radius }: Disc, b: Box): boolean {
  const dx = at.x < b.minX ? b.minX - at.x : at.x > b.maxX ? at.x - b.maxX : 0;
  const dy = at.y < b.minY ? b.minY - at.y : at.y > b.maxY ? at.y - b.maxY : 0;
  return dx * dx + dy * dy < radius * radius;
}

const isNear = (a: Point, b: Point, reach: number): boolean =>
  (a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y) < reach * reach;

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

function labelsApart(label: PlacedLabel, grown: Box, other: PlacedLabel): boolean {
  if (boxesMeet(grown, other.box)) return false;
  if (other.leader && segmentMeetsBox(other.leader, grown)) return false;
  if (!label.leader) return true;
  if (segmentMeetsBox(label.leader, boxGrow(other.box, CLEARANCE))) return false;
  return !other.leader || !segmentsMeet(label.leader, other.leader);
}

const segmentsMeet = (a: Piece, b: Piece): boolean =>
  segmentIntersection(a[0], a[1], b[0], b[1]) !== null;

function leaderClear(leader: Piece, request: LabelRequest, discs: readonly Disc[]): boolean {
  return discs.every(
    (disc) =>
      pointDistance(disc.at, request.at) === 0 ||
      segmentNearest(leader[0], leader[1], disc.at).distance > disc.radius,
  );
}

const pointInBox = (b: Box, p: Point): boolean =>
  p.x >= b.minX && p.x <= b.maxX && p.y >= b.minY && p.y <= b.maxY;

/** Whether a straight piece touches a box. */
export function segmentMeetsBox(piece: Piece, b: Box): boolean {
  const [p, q] = piece;
  if (pointInBox(b, p) || pointInBox(b, q)) return true;
  if (Math.max(p.x, q.x) < b.minX || Math.min(p.x, q.x) > b.maxX) return false;
  if (Math.max(p.y, q.y) < b.minY || Math.min(p.y, q.y) > b.maxY) return false;
  return straddles(p, q, b);
}

/** Whether the box has corners on both sides of the line through p and q. */
function straddles(p: Point, q: Point, b: Box): boolean {
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  const a = dx * (b.minY - p.y);
  const c = dx * (b.maxY - p.y);
  const d = dy * (b.minX - p.x);
  const e = dy * (b.maxX - p.x);
  const least = Math.min(a, c) - Math.max(d, e);
  const most = Math.max(a, c) - Math.min(d, e);
  return least <= 0 && most >= 0;
}

function lineCost(label: PlacedLabel, lines: SegmentGrid): number {
  const covered = lines.count(label.box, (piece) => segmentMeetsBox(piece, label.box));
  const { leader } = label;
  if (!leader) return COST.covered * covered;
  const reach = {
    minX: Math.min(leader[0].x, leader[1].x),
    maxX: Math.max(leader[0].x, leader[1].x),
    minY: Math.min(leader[0].y, leader[1].y),
    maxY: Math.max(leader[0].y, leader[1].y),
  };
  const crossed = lines.count(reach, (piece) => segmentsMeet(piece, leader));
  return COST.covered * covered + COST.crossed * crossed;
}
