/** `plan.dxf`: surfaces, fence, graphic, stakes, strings, swings and bends in feet, for survey software. */
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import { toDegrees } from '../base/units';
import { vectorAngle } from '../geometry/angle';
import { pointSubtract, type Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import type { Plan } from '../plan/model';
import { bendArc } from '../stakeout/bend';
import type { OutlinePiece, StakePlan } from '../stakeout/model';

const LAYERS = {
  SURFACES: Colors.Green,
  FENCE: Colors.White,
  GRAPHIC: Colors.Magenta,
  CONTROLS: Colors.Red,
  STAKES: Colors.White,
  STRINGS: Colors.Cyan,
  SWINGS: Colors.Blue,
  BENDS: Colors.Blue,
  PASSES: Colors.Yellow,
} as const;
type Layer = keyof typeof LAYERS;

const TEXT_HEIGHT_FT = 0.8;

/** The plan view as DXF text: feet, y up, one layer for each kind of thing. */
export function planDxf(plan: Plan): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Feet);
  for (const [name, color] of Object.entries(LAYERS)) dxf.addLayer(name, color, 'Continuous');
  for (const s of plan.field.surfaces)
    for (const ring of s.region) addLine(dxf, 'SURFACES', ring, true);
  addLine(dxf, 'FENCE', plan.field.fenceLine, false);
  for (const ring of plan.design.graphic) addLine(dxf, 'GRAPHIC', ring, true);
  for (const pass of plan.passes.passes) addLine(dxf, 'PASSES', pass.line, false);
  if (plan.stakes) addStakes(dxf, plan.stakes);
  return dxf.stringify();
}

function addLine(dxf: DxfWriter, layerName: Layer, line: Polyline, closed: boolean): void {
  dxf.addLWPolyline(
    line.map((p) => ({ point: point2d(p.x, p.y) })),
    { layerName, flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
  );
}

function addStakes(dxf: DxfWriter, plan: StakePlan): void {
  const at = new Map<string, Point>(plan.controls.map((c) => [c.id, c.at]));
  for (const s of plan.stakes) at.set(s.id, s.at);
  const controls = new Set(plan.controls.map((c) => c.id));
  for (const [id, p] of at) {
    const layerName: Layer = controls.has(id) ? 'CONTROLS' : 'STAKES';
    dxf.addPoint(p.x, p.y, 0, { layerName });
    dxf.addText(point3d(p.x, p.y), TEXT_HEIGHT_FT, id, { layerName });
  }
  for (const contour of plan.contours) {
    for (const piece of contour.pieces) addPiece(dxf, piece, at);
  }
}

function addPiece(dxf: DxfWriter, piece: OutlinePiece, at: ReadonlyMap<string, Point>): void {
  if (piece.kind === 'string') {
    addLine(dxf, 'STRINGS', [at.get(piece.from)!, at.get(piece.to)!], false);
    return;
  }
  if (piece.kind === 'bend') {
    addBend(dxf, piece, at);
    return;
  }
  const pin = at.get(piece.pin)!;
  const centre = point3d(pin.x, pin.y);
  if (piece.kind === 'circle') {
    dxf.addCircle(centre, piece.radius.ft, { layerName: 'SWINGS' });
    return;
  }
  const bearing = (id: string): number => toDegrees(vectorAngle(pointSubtract(at.get(id)!, pin)));
  const [start, end] = piece.sweep === 'ccw' ? [piece.from, piece.to] : [piece.to, piece.from];
  dxf.addArc(centre, piece.radius.ft, bearing(start), bearing(end), { layerName: 'SWINGS' });
}

function addBend(
  dxf: DxfWriter,
  { from, to, offset, side }: Extract<OutlinePiece, { kind: 'bend' }>,
  at: ReadonlyMap<string, Point>,
): void {
  const arc = bendArc(at.get(from)!, at.get(to)!, offset.ft, side);
  const ends = [arc.startAngle, arc.startAngle + arc.sweep].map(toDegrees);
  const [start, end] = arc.sweep > 0 ? [ends[0]!, ends[1]!] : [ends[1]!, ends[0]!];
  const centre = point3d(arc.centre.x, arc.centre.y);
  dxf.addArc(centre, arc.radius, start, end, { layerName: 'BENDS' });
}
