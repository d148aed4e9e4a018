/** Drawings of passes: numbers at their starts, arrows on the way, turn points at their ends. */
import { boxCentre, boxGrow, boxHeight, boxOfPoints, boxWidth, type Box } from '../geometry/box';
import { pointSubtract, type Point } from '../geometry/point';
import { polylineAt, polylineLength } from '../geometry/polyline';
import { SAME_POINT } from '../geometry/tolerance';
import type { Pass } from '../mowing/model';
import { drawBearings, drawField, drawRegion } from './draw-field';
import { drawLabels } from './draw-labels';
import { boxRing, inkLine, inkRing, inkStroke } from './ink';
import type { Kit } from './kit';
import { LETTER_GREY, type Mark } from './marks';
import type { PassGroup } from './pass-groups';
import { planPanels, type Panel } from './plan-panels';
import { arrowHead, BACK_DASH, EMPTY_DASH, gateSign, startSign, turnSign } from './symbols';
import { scaleBar, type ViewFrame } from './view-frame';

export const PASS_LABEL_SIZE = 7.5;
const TURN_HALF = 1.6;

/** Drawings no higher than `maxHeight`, at no more than `mostScale` points per foot. */
export function planPassPanels(
  kit: Kit,
  group: PassGroup,
  maxHeight: number,
  mostScale?: number,
): Panel[] {
  const items = group.passes.map((pass) => ({
    id: String(pass.number),
    at: pass.line[0]!,
    clear: TURN_HALF * 1.3,
    ...(isFine(group) ? { extent: boxOfPoints(pass.line)! } : {}),
  }));
  const lines = group.passes.map((pass) => pass.line);
  const show = shownBox(kit, group);
  return planPanels(items, {
    metrics: kit.metrics,
    system: kit.plan.project.units,
    width: kit.paper.right - kit.paper.left,
    maxHeight,
    labelSize: PASS_LABEL_SIZE,
    scene: (frame) => ({
      discs: [
        ...items.map((item) => ({ at: frame.toPaper(item.at), radius: item.clear })),
        { at: gatePlace(kit, frame).at, radius: GATE_CLEAR },
      ],
      lines: lines.map((line) => line.map(frame.toPaper)),
    }),
    leastScale: leastScaleOf(group),
    insets: true,
    ...(mostScale === undefined ? {} : { mostScale }),
    ...(show ? { show } : {}),
  });
}

/** Every pass, the gate, and up to the top of the fence when the passes go all over the field. */
function shownBox(kit: Kit, group: PassGroup): Box | null {
  const driven = boxOfPoints(group.passes.flatMap((pass) => pass.line));
  if (!driven) return null;
  const box = boxGrow(driven, 2);
  const fence = boxOfPoints(kit.plan.field.fenceLine);
  if (isFine(group) || !fence) return box;
  const gate = boxGrow(boxOfPoints([kit.plan.project.mowing.gate])!, 4);
  return {
    minX: Math.min(box.minX, gate.minX),
    maxX: Math.max(box.maxX, gate.maxX),
    minY: Math.min(box.minY, gate.minY),
    maxY: Math.max(box.maxY, gate.maxY, fence.maxY),
  };
}

/** Neighbouring passes at least this far apart on paper, up to a scale at which all is plain. */
const LEAST_SPACING = 4.6;
const PLAIN_SCALE = 7;

/** 1 in = 15 ft: the turns inside letters are told apart. */
const FINE_SCALE = 4.8;

const isFine = (group: PassGroup): boolean => group.phase === 'graphic' || group.phase === 'edge';

function leastScaleOf(group: PassGroup): number {
  const widest = Math.max(...group.passes.map((pass) => pass.widthFt), 0.5);
  const spaced = Math.min(PLAIN_SCALE, LEAST_SPACING / widest);
  return isFine(group) ? Math.max(FINE_SCALE, spaced) : spaced;
}

/** The panel's marks, its window's top left at (0, 0). */
export function drawPassPanel(kit: Kit, group: PassGroup, panel: Panel): Mark[] {
  const { frame } = panel;
  const { field, design } = kit.plan;
  const named = new Set(panel.ids);
  const inside: Mark[] = [
    ...drawRegion(design.graphic, frame, LETTER_GREY, 0.4),
    drawField(field, frame),
    ...betweenMarks(group, frame),
    ...group.passes.flatMap((pass) => passMarks(pass, frame, named.has(String(pass.number)))),
    ...startSign(frame.toPaper(group.passes[0]!.line[0]!), START_RADIUS),
    ...gateMarks(kit, frame),
  ];
  return [
    { kind: 'clip', clip: frame.window, marks: inside },
    ...drawLabels(panel.labels, PASS_LABEL_SIZE),
    ...drawBearings(frame, scaleBar(frame.scale, kit.plan.project.units)),
    inkRing(boxRing(frame.window), inkStroke(0.8)),
  ];
}

function betweenMarks(group: PassGroup, frame: ViewFrame): Mark[] {
  return group.legs.flatMap((leg): Mark[] => {
    if (leg.points.length < 2) return [];
    const line = leg.points.map(frame.toPaper);
    if (leg.gear === 'reverse') return [inkLine(line, inkStroke(1.2, 0, BACK_DASH))];
    if (leg.kind === 'turn') return [inkLine(line, inkStroke(0.35))];
    if (leg.kind !== 'run') return [];
    const [before, tip] = [line[line.length - 2]!, line[line.length - 1]!];
    const d = pointSubtract(tip, before);
    return [inkLine(line, inkStroke(0.8, 0.25, EMPTY_DASH)), arrowHead(tip, d.x, d.y, 5)];
  });
}

const START_RADIUS = 4;
const GATE_HALF = 3.6;
const GATE_CLEAR = 9;
/** A gate outside the drawing is shown this far inside its edge, points, on the way there. */
const GATE_INSET = 14;

interface GatePlace {
  readonly at: Point;
  /** On the way from the middle of the drawing, when the gate itself lies outside. */
  readonly way: Point | null;
}

function gatePlace(kit: Kit, frame: ViewFrame): GatePlace {
  const gate = frame.toPaper(kit.plan.project.mowing.gate);
  const middle = boxCentre(frame.window);
  const way = pointSubtract(gate, middle);
  const across = (boxWidth(frame.window) / 2 - GATE_INSET) / Math.max(Math.abs(way.x), SAME_POINT);
  const down = (boxHeight(frame.window) / 2 - GATE_INSET) / Math.max(Math.abs(way.y), SAME_POINT);
  const share = Math.min(across, down);
  if (share >= 1) return { at: gate, way: null };
  return { at: { x: middle.x + way.x * share, y: middle.y + way.y * share }, way };
}

function gateMarks(kit: Kit, frame: ViewFrame): Mark[] {
  const { at, way } = gatePlace(kit, frame);
  const sign = gateSign(at, GATE_HALF);
  if (!way) return sign;
  const long = Math.hypot(way.x, way.y) || 1;
  const tip = { x: at.x + (way.x / long) * 12, y: at.y + (way.y / long) * 12 };
  return [...sign, arrowHead(tip, way.x, way.y, 6)];
}

/** Passes shorter than this on paper carry no arrow of their own. */
const LEAST_ARROW = 9;

function passMarks(pass: Pass, frame: ViewFrame, named: boolean): Mark[] {
  const line = pass.line.map(frame.toPaper);
  const length = polylineLength(line);
  const ends = [line[0]!, line[line.length - 1]!];
  return [
    inkLine(line, inkStroke(named ? 0.8 : 0.4)),
    ...(length > LEAST_ARROW ? arrowOn(line, length) : []),
    ...ends.flatMap((end) => turnSign(end, TURN_HALF)),
  ];
}

function arrowOn(line: readonly Point[], length: number): Mark[] {
  const size = Math.min(6, length / 3);
  const tip = polylineAt(line, length * 0.5 + size / 2);
  const d = pointSubtract(tip, polylineAt(line, length * 0.5 - size / 2));
  return [arrowHead(tip, d.x, d.y, size)];
}
