/** What stands on the ground or is painted on it: walls, poles, lines, bases. */
import { sourced } from '../base/sourced';
import { inches, type Feet } from '../base/units';
import type { Field } from '../field/model';
import { pointAlong, pointSubtract, vectorUnit, type Point } from '../geometry/point';
import { lineBuffer, type Region } from '../geometry/region';
import { facesSeat, seeRing, type Camera } from './camera';
import { paintOver, type Canvas } from './canvas';
import { PALETTE, type Colour } from './colour';
import { seeRegion } from './ground-scene';

export const WALL_HEIGHT_FT = sourced(8, 'ft', 'assumption', 'outfield wall in the picture');
export const RAIL_HEIGHT_FT = sourced(4, 'ft', 'assumption', 'side fence in the picture');
export const POLE_HEIGHT_FT = sourced(30, 'ft', 'assumption', 'foul pole in the picture');
const CAP_FT: Feet = 0.6;
const POLE_WIDTH_FT: Feet = 0.5;
/** Source: rule book, white lines 2 to 3 in wide; the wider one is drawn. */
const LINE_WIDTH_FT: Feet = inches(3);
/** Plate 24 by 6 in. Source: Official Baseball Rules 2.04. */
const RUBBER = { widthFt: inches(24), depthFt: inches(6) } as const;

/**
 * Walls behind the field along the ground's outline; those between the seat and the field are left
 * out. The outfield wall runs from pole to pole, the rest is a low side fence.
 */
export function paintWalls(canvas: Canvas, camera: Camera, outline: Region): void {
  const edges = outline
    .flatMap((ring) => ring.map((to, i) => ({ from: ring[(i === 0 ? ring.length : i) - 1]!, to })))
    .filter(({ from, to }) => facesSeat(camera, from, to));
  const walls = edges.filter(isFair);
  const rails = edges.filter((edge) => !isFair(edge));
  const paint = (faces: readonly Edge[], low: Feet, high: Feet, colour: Colour): void => {
    paintOver(
      canvas,
      faces.map((face) => upright(camera, face, low, high)),
      colour,
    );
  };
  const top = WALL_HEIGHT_FT.value;
  paint(rails, 0, RAIL_HEIGHT_FT.value, PALETTE.rail);
  paint(walls, 0, top, PALETTE.wall);
  paint(walls, top - CAP_FT, top, PALETTE.wallCap);
}

interface Edge {
  readonly from: Point;
  readonly to: Point;
}

/** Between the foul lines: their bearings are 45° either way. */
const isFair = ({ from, to }: Edge): boolean => from.y + to.y >= Math.abs(from.x + to.x);

/** An upright rectangle over a ground line, as seen. */
const upright = (camera: Camera, { from, to }: Edge, low: Feet, high: Feet): Point[] =>
  seeRing(camera, [
    { ...from, up: low },
    { ...to, up: low },
    { ...to, up: high },
    { ...from, up: high },
  ]);

/** Both foul poles, facing the seat. */
export function paintPoles(canvas: Canvas, camera: Camera, field: Field): void {
  for (const pole of [field.poles.left, field.poles.right]) {
    const from = pointAlong(pole, camera.right, -POLE_WIDTH_FT / 2);
    const to = pointAlong(pole, camera.right, POLE_WIDTH_FT / 2);
    paintOver(canvas, [upright(camera, { from, to }, 0, POLE_HEIGHT_FT.value)], PALETTE.pole);
  }
}

/** Foul lines, bases, home plate and pitcher's plate. */
export function paintMarks(canvas: Canvas, camera: Camera, field: Field): void {
  const paint = (ring: readonly Point[], colour: Colour): void => {
    paintOver(canvas, seeRegion(camera, [ring]), colour);
  };
  for (const line of [field.foulLines.left, field.foulLines.right]) {
    for (const ring of lineBuffer(line, LINE_WIDTH_FT / 2, 'butt')) paint(ring, PALETTE.chalk);
  }
  for (const ring of baseRings(field)) paint(ring, PALETTE.chalk);
  paint(homePlate(), PALETTE.chalk);
  paint(rubberRing(field.pitcherPlate), PALETTE.rubber);
}

/** First and third lie inside the infield square from their outer back corners, second on centre. */
function baseRings(field: Field): Point[][] {
  const side = inches(field.spec.baseSizeIn);
  const { first, second, third, home } = field.bases;
  const toFirst = vectorUnit(pointSubtract(first, home)) ?? { x: 1, y: 0 };
  const toThird = vectorUnit(pointSubtract(third, home)) ?? { x: 0, y: 1 };
  const square = (corner: Point): Point[] => {
    const along = pointAlong(corner, toFirst, side);
    return [corner, along, pointAlong(along, toThird, side), pointAlong(corner, toThird, side)];
  };
  return [
    square(pointAlong(first, toFirst, -side)),
    square(pointAlong(pointAlong(second, toFirst, -side / 2), toThird, -side / 2)),
    square(pointAlong(third, toThird, -side)),
  ];
}

/** 17 in wide, 8 1/2 in sides. Source: Official Baseball Rules 2.02. */
function homePlate(): Point[] {
  const half = inches(8.5);
  return [
    { x: 0, y: 0 },
    { x: half, y: half },
    { x: half, y: 2 * half },
    { x: -half, y: 2 * half },
    { x: -half, y: half },
  ];
}

function rubberRing(front: Point): Point[] {
  const half = RUBBER.widthFt / 2;
  return [
    { x: front.x - half, y: front.y },
    { x: front.x + half, y: front.y },
    { x: front.x + half, y: front.y + RUBBER.depthFt },
    { x: front.x - half, y: front.y + RUBBER.depthFt },
  ];
}
