/**
 * Where a machine may drive: outfield grass, foul grass and warning track, less the keep-outs. The
 * body test is exact (rectangle against boundary); a one-foot grid of distances only answers the
 * easy cases quickly. Feet, field frame.
 */
import { boxGrow, type Box } from '../geometry/box';
import { fillCells } from '../geometry/fill-cells';
import type { Point } from '../geometry/point';
import { regionBox, regionContains, regionSubtract, regionUnionAll } from '../geometry/region';
import type { Region } from '../geometry/region';
import type { Field, SurfaceKind } from '../field/model';
import { inches } from '../base/units';
import type { Pose } from './drive';
import type { Machine } from './model';

/** Half width and overhangs of a body about its cutting line, feet. */
export interface Body {
  readonly half: number;
  readonly front: number;
  readonly rear: number;
}

export interface DriveGround {
  readonly region: Region;
  readonly box: Box;
  /** One-foot cells, row by row from the box's low corner. */
  readonly columns: number;
  readonly rows: number;
  /** Feet from a cell's centre to the nearest edge, never more than true; below 0 outside. */
  readonly clearance: Float32Array;
  /** Boundary edges, four numbers each, and the edges that touch each bucket. */
  readonly edges: Float64Array;
  readonly buckets: readonly (readonly number[])[];
  readonly bucketColumns: number;
}

const CELL = 1;
const BUCKET = 8;
const DRIVABLE: readonly SurfaceKind[] = ['outfield-grass', 'foul-grass', 'warning-track'];

/** A machine's body in feet. */
export function bodyOf(machine: Machine): Body {
  return {
    half: inches(machine.bodyWidthIn) / 2,
    front: inches(machine.frontOverhangIn),
    rear: inches(machine.rearOverhangIn),
  };
}

/** The body with `by` feet of room on every side. */
export const bodyGrow = (body: Body, by: number): Body => ({
  half: body.half + by,
  front: body.front + by,
  rear: body.rear + by,
});

/** The body that also holds its mirror image fore and aft, for a stretch seen either way round. */
export const bodyEitherWay = (body: Body): Body => {
  const long = Math.max(body.front, body.rear);
  return { half: body.half, front: long, rear: long };
};

/** Farthest point of the body from the middle of its cutting line. */
export const bodyReach = (body: Body): number =>
  Math.hypot(Math.max(body.front, body.rear), body.half);

/** The drivable ground of a field. */
function drivableRegion(field: Field): Region {
  const surfaces = field.surfaces.filter((s) => DRIVABLE.includes(s.kind)).map((s) => s.region);
  const keepOuts = regionUnionAll(field.keepOuts.map((k) => k.region));
  return regionSubtract(regionUnionAll(surfaces), keepOuts);
}

/** A field's drivable ground, prepared for body tests. */
export const prepareField = (field: Field): DriveGround => prepareGround(drivableRegion(field));

/** Prepares a region for body tests. An empty region allows nothing. */
export function prepareGround(region: Region): DriveGround {
  const box = boxGrow(regionBox(region) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }, 2 * CELL);
  const columns = Math.ceil((box.maxX - box.minX) / CELL);
  const rows = Math.ceil((box.maxY - box.minY) / CELL);
  const edges = listEdges(region);
  const bucketColumns = Math.ceil((box.maxX - box.minX) / BUCKET);
  const bucketRows = Math.ceil((box.maxY - box.minY) / BUCKET);
  const buckets: number[][] = Array.from({ length: bucketColumns * bucketRows }, () => []);
  const free = fillCells(region, { minX: box.minX, minY: box.minY, cell: CELL, columns, rows });
  for (let e = 0; e < edges.length; e += 4) {
    const [ax, ay, bx, by] = [edges[e]!, edges[e + 1]!, edges[e + 2]!, edges[e + 3]!];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / (CELL / 4)));
    for (let i = 0; i <= steps; i++) {
      const x = ax + ((bx - ax) * i) / steps - box.minX;
      const y = ay + ((by - ay) * i) / steps - box.minY;
      free[Math.floor(y / CELL) * columns + Math.floor(x / CELL)] = 0;
    }
    addToBuckets(buckets, bucketColumns, box, e, [ax, ay, bx, by]);
  }
  const clearance = distanceToBlocked(free, columns, rows);
  return { region, box, columns, rows, clearance, edges, buckets, bucketColumns };
}

function listEdges(region: Region): Float64Array {
  const out = new Float64Array(4 * region.reduce((n, ring) => n + ring.length, 0));
  let at = 0;
  for (const ring of region) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      out.set([a.x, a.y, b.x, b.y], at);
      at += 4;
    });
  }
  return out;
}

function addToBuckets(
  buckets: number[][],
  columns: number,
  box: Box,
  edge: number,
  [ax, ay, bx, by]: readonly [number, number, number, number],
): void {
  const firstColumn = Math.floor((Math.min(ax, bx) - box.minX) / BUCKET);
  const lastColumn = Math.floor((Math.max(ax, bx) - box.minX) / BUCKET);
  const firstRow = Math.floor((Math.min(ay, by) - box.minY) / BUCKET);
  const lastRow = Math.floor((Math.max(ay, by) - box.minY) / BUCKET);
  for (let r = firstRow; r <= lastRow; r++) {
    for (let c = firstColumn; c <= lastColumn; c++) buckets[r * columns + c]?.push(edge);
  }
}

/**
 * Feet to the nearest blocked cell, less half a cell's diagonal so that it never says too much:
 * exact squared distances by two passes of lower envelopes (Felzenszwalb & Huttenlocher 2012).
 */
function distanceToBlocked(free: Uint8Array, columns: number, rows: number): Float32Array {
  const far = (columns + rows) ** 2;
  const squared = new Float64Array(free.length);
  for (let i = 0; i < free.length; i++) squared[i] = free[i] ? far : 0;
  const longest = Math.max(columns, rows);
  const work = {
    line: new Float64Array(longest),
    hull: new Int32Array(longest),
    breaks: new Float64Array(longest + 1),
  };
  for (let c = 0; c < columns; c++) envelope(squared, c, columns, rows, work);
  for (let r = 0; r < rows; r++) envelope(squared, r * columns, 1, columns, work);
  const out = new Float32Array(free.length);
  for (let i = 0; i < out.length; i++) out[i] = (Math.sqrt(squared[i]!) - Math.SQRT1_2) * CELL;
  return out;
}

/** Where the parabolas that stand on cells p < q cross. */
const meeting = (line: Float64Array, p: number, q: number): number =>
  (line[q]! + q * q - line[p]! - p * p) / (2 * (q - p));

function envelope(
  values: Float64Array,
  start: number,
  stride: number,
  count: number,
  work: { line: Float64Array; hull: Int32Array; breaks: Float64Array },
): void {
  const { line, hull, breaks } = work;
  for (let i = 0; i < count; i++) line[i] = values[start + i * stride]!;
  let k = 0;
  hull[0] = 0;
  breaks[0] = -Infinity;
  breaks[1] = Infinity;
  for (let q = 1; q < count; q++) {
    let s = meeting(line, hull[k]!, q);
    while (s <= breaks[k]!) s = meeting(line, hull[--k]!, q);
    hull[++k] = q;
    breaks[k] = s;
    breaks[k + 1] = Infinity;
  }
  k = 0;
  for (let q = 0; q < count; q++) {
    while (breaks[k + 1]! < q) k++;
    values[start + q * stride] = (q - hull[k]!) ** 2 + line[hull[k]!]!;
  }
}

function cellClearance(ground: DriveGround, p: Point): number {
  const c = Math.floor((p.x - ground.box.minX) / CELL);
  const r = Math.floor((p.y - ground.box.minY) / CELL);
  if (c < 0 || r < 0 || c >= ground.columns || r >= ground.rows) return -CELL;
  return ground.clearance[r * ground.columns + c]!;
}

/** Feet from p to the edge of the drivable ground, never more than true; negative outside. */
export const clearanceAt = (ground: DriveGround, p: Point): number =>
  cellClearance(ground, p) - Math.SQRT1_2 * CELL;

/** True when the whole body stands on drivable ground. */
export function bodyFits(ground: DriveGround, body: Body, pose: Pose): boolean {
  const cos = Math.cos(pose.heading);
  const sin = Math.sin(pose.heading);
  const ahead = (body.front - body.rear) / 2;
  const centre = { x: pose.x + ahead * cos, y: pose.y + ahead * sin };
  const halfLong = (body.front + body.rear) / 2;
  if (clearanceAt(ground, centre) >= Math.hypot(halfLong, body.half)) return true;
  if (edgeInBody(ground, centre, cos, sin, halfLong, body.half)) return false;
  return cellClearance(ground, centre) > 0 || regionContains(ground.region, centre);
}

function edgeInBody(
  ground: DriveGround,
  centre: Point,
  cos: number,
  sin: number,
  halfLong: number,
  half: number,
): boolean {
  const reachX = Math.abs(cos) * halfLong + Math.abs(sin) * half;
  const reachY = Math.abs(sin) * halfLong + Math.abs(cos) * half;
  const { minX, minY } = ground.box;
  const firstColumn = Math.max(0, Math.floor((centre.x - reachX - minX) / BUCKET));
  const lastColumn = Math.min(
    ground.bucketColumns - 1,
    Math.floor((centre.x + reachX - minX) / BUCKET),
  );
  const firstRow = Math.floor((centre.y - reachY - minY) / BUCKET);
  const lastRow = Math.floor((centre.y + reachY - minY) / BUCKET);
  for (let r = firstRow; r <= lastRow; r++) {
    for (let c = firstColumn; c <= lastColumn; c++) {
      for (const e of ground.buckets[r * ground.bucketColumns + c] ?? []) {
        const ax = ground.edges[e]! - centre.x;
        const ay = ground.edges[e + 1]! - centre.y;
        const bx = ground.edges[e + 2]! - centre.x;
        const by = ground.edges[e + 3]! - centre.y;
        const u0 = cos * ax + sin * ay;
        const u1 = cos * bx + sin * by;
        const v0 = cos * ay - sin * ax;
        const v1 = cos * by - sin * bx;
        if (crossesBox(u0, u1, v0, v1, halfLong, half)) return true;
      }
    }
  }
  return false;
}

/**
 * Whether a segment enters the box |u| ≤ a, |v| ≤ b (Liang and Barsky 1984), written out for both
 * axes: this is the innermost test of the whole route.
 */
function crossesBox(u0: number, u1: number, v0: number, v1: number, a: number, b: number): boolean {
  const du = u1 - u0;
  const dv = v1 - v0;
  if (du === 0 && Math.abs(u0) > a) return false;
  if (dv === 0 && Math.abs(v0) > b) return false;
  const enterU = du === 0 ? 0 : (-Math.sign(du) * a - u0) / du;
  const leaveU = du === 0 ? 1 : (Math.sign(du) * a - u0) / du;
  const enterV = dv === 0 ? 0 : (-Math.sign(dv) * b - v0) / dv;
  const leaveV = dv === 0 ? 1 : (Math.sign(dv) * b - v0) / dv;
  return Math.max(0, enterU, enterV) <= Math.min(1, leaveU, leaveV);
}
