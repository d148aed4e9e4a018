/**
 * The small drawing of one round: where it lies on the field, and its stakes with as many of their
 * numbers as this size allows; the outline sheets carry every number.
 */
import { boxGrow, boxHeight, boxOfPoints, type Box } from '../geometry/box';
import type { Control } from '../field/model';
import type { Point } from '../geometry/point';
import type { Round, Stake, StakePlan } from '../stakeout/model';
import { methodControls } from '../stakeout/ties';
import { drawBearings, drawField, fieldBox } from './draw-field';
import { drawLabels } from './draw-labels';
import { outlineFill, outlineLines, outlineMarks } from './draw-outline';
import { walkMarks } from './draw-walk';
import { boxRing, inkCircle, inkLine, inkRing, inkStroke } from './ink';
import { pointNamed, standingPoints, type Kit } from './kit';
import { BLACK, type Mark } from './marks';
import { placeLabels } from './place-labels';
import { AREA_DASH, controlSign, kindSign } from './symbols';
import { frameView, scaleBar, type ViewFrame } from './view-frame';

const LABEL_SIZE = 8;
const SIGN = 2.2;
/** So few stakes are drawn with their tapes, from the controls. */
export const FEW = 4;
/** Labels stand no further off than this many steps; what finds no place is left to the outline drawings. */
const NEAR = 5;
/** With more than this the drawing takes what room there is from the key. */
const MANY = 30;

/** Controls where a tape is held: none in a round of short tapes. */
const heldIn = (round: Round): readonly string[] => round.from ?? [];

/** Paper between the drawing's edge and the outermost stakes, and for the scale at the foot. */
const EDGE = 20;
const FOOT = 10;

/**
 * Height, `most` or less, that a drawing of more than a few stakes takes at the scale that its width
 * allows.
 */
export function drawingHeight(
  kit: Kit,
  stakes: StakePlan,
  rows: readonly Stake[],
  width: number,
  most: number,
): number {
  const key = keyWidth(rows);
  const ground = groundOf(stakes, rows);
  const window = { minX: 0, maxX: width - key - GAP, minY: 0, maxY: most };
  const { scale } = frameView(ground, boxGrow(window, -EDGE), kit.plan.project.units);
  const wanted = boxHeight(ground) * scale + 2 * EDGE + FOOT + 1;
  return Math.min(most, Math.max(key, wanted));
}

const keyWidth = (rows: readonly Stake[]): number => (rows.length > MANY ? 118 : 150);
const GAP = 8;

/** The stakes of the rows and the outline that leaves them. */
function groundOf(stakes: StakePlan, rows: readonly Stake[]): Box {
  const own = new Set(rows.map((s) => s.at));
  const lines = outlineLines(stakes, standingPoints(stakes)).filter((line) =>
    [line[0], line[line.length - 1]].some((end) => end !== undefined && own.has(end)),
  );
  return boxGrow(boxOfPoints([...own, ...lines.flat()]) ?? EMPTY_BOX, 1);
}

/** Marks with the drawing's top left at (0, 0), of that size in points. */
export function planRoundDrawing(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  { width, height }: { readonly width: number; readonly height: number },
): readonly Mark[] {
  if (rows.length <= FEW) {
    const window = { minX: 0, maxX: width, minY: 0, maxY: height };
    return fewMarks(kit, stakes, round, rows, window);
  }
  const side = keyWidth(rows);
  const key = { minX: width - side, maxX: width, minY: 0, maxY: side };
  const main = { minX: 0, maxX: key.minX - GAP, minY: 0, maxY: height };
  return [...mainMarks(kit, stakes, round, rows, main), ...keyMarks(kit, stakes, round, rows, key)];
}

const EMPTY_BOX: Box = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

function mainMarks(kit: Kit, stakes: StakePlan, round: Round, rows: readonly Stake[], window: Box) {
  const { units } = kit.plan.project;
  const open = { ...boxGrow(window, -EDGE), maxY: window.maxY - EDGE - FOOT };
  const frame = { ...frameView(groundOf(stakes, rows), open, units), window };
  const at = standingPoints(stakes);
  const inRound = new Set(rows.map((stake) => stake.id));
  const signs = stakes.stakes.flatMap((stake) =>
    inRound.has(stake.id)
      ? kindSign(stake.kind, frame.toPaper(stake.at), SIGN)
      : [inkCircle(frame.toPaper(stake.at), 1, BLACK, null)],
  );
  const held = heldIn(round).flatMap((id) =>
    controlSign(frame.toPaper(pointNamed(at, id)), 9, false, true),
  );
  const inside = [
    outlineFill(stakes, at, frame),
    ...outlineMarks(stakes, at, frame),
    ...walkMarks(rows, frame),
    ...signs,
    ...held,
  ];
  return [
    { kind: 'clip', clip: window, marks: inside } as const,
    ...drawLabels(roundLabels(kit, stakes, round, rows, frame), LABEL_SIZE),
    ...drawBearings(frame, scaleBar(frame.scale, units)),
    inkRing(boxRing(window), inkStroke(0.8)),
  ];
}

function roundLabels(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
  frame: ViewFrame,
) {
  const at = standingPoints(stakes);
  const held = heldIn(round).map((id) => ({ id, at: pointNamed(at, id) }));
  const wanted = [...rows, ...held].map(({ id, at: place }) =>
    request(kit, id, frame.toPaper(place)),
  );
  const inRound = new Set(rows.map((stake) => stake.id));
  const discs = stakes.stakes.map((stake) => ({
    at: frame.toPaper(stake.at),
    radius: inRound.has(stake.id) ? SIGN * 1.2 : 1,
  }));
  const { window } = frame;
  const scene = {
    window: boxGrow({ ...window, maxY: window.maxY - 14 }, -2),
    discs: [...discs, ...held.map((h) => ({ at: frame.toPaper(h.at), radius: 5 }))],
    lines: outlineLines(stakes, at).map((line) => line.map(frame.toPaper)),
    taken: [],
    steps: NEAR,
  };
  return placeLabels(
    wanted.filter((r) => isInside(window, r.at)),
    scene,
  ).placed;
}

const isInside = (b: Box, p: Point): boolean =>
  p.x > b.minX && p.x < b.maxX && p.y > b.minY && p.y < b.maxY;

const request = (kit: Kit, id: string, at: Point) => ({
  id,
  at,
  width: kit.metrics.width(id, LABEL_SIZE, 'bold') + 1,
  height: LABEL_SIZE * 0.78,
  clear: SIGN * 1.2,
});

/** The whole field: tapes from the two controls, and the part drawn beside it. */
function keyMarks(kit: Kit, stakes: StakePlan, round: Round, rows: readonly Stake[], window: Box) {
  const { field, project } = kit.plan;
  const frame = { ...frameView(fieldBox(field), boxGrow(window, -4), project.units), window };
  const at = standingPoints(stakes);
  const ground = groundOf(stakes, rows);
  const area = boxRing(ground).map(frame.toPaper);
  const middle = { x: (ground.minX + ground.maxX) / 2, y: (ground.minY + ground.maxY) / 2 };
  const tapes = heldIn(round).map((id) =>
    inkLine([pointNamed(at, id), middle].map(frame.toPaper), inkStroke(0.5)),
  );
  const controls = stakes.controls.filter(
    (c) => c.kind === 'fixed' || heldIn(round).includes(c.id),
  );
  return [
    drawField(field, frame),
    ...tapes,
    inkRing(area, inkStroke(0.9, 0, AREA_DASH)),
    ...controls.flatMap((c) => keyControl(c, round, frame)),
    ...controlLabels(kit, stakes, heldIn(round), frame),
  ];
}

/** A handful of stakes: the controls, and a line for every tape to be pulled. */
function fewMarks(kit: Kit, stakes: StakePlan, round: Round, rows: readonly Stake[], window: Box) {
  const { field, project } = kit.plan;
  const at = standingPoints(stakes);
  const checks = [...new Set(rows.map((stake) => stake.check.from))];
  const own = new Set(rows.map((stake) => stake.id));
  const used = new Set([...heldIn(round), ...checks]);
  const known = stakes.controls.filter((c) => c.kind === 'fixed' || used.has(c.id));
  const others = stakes.stakes.filter((s) => s.kind !== 'control' && checks.includes(s.id));
  const places = [...known, ...others, ...rows].map((stood) => stood.at);
  const ground = boxOfPoints(places) ?? EMPTY_BOX;
  const frame = { ...frameView(ground, boxGrow(window, -16), project.units), window };
  const tapes = rows.flatMap((stake) => tapeLines(stake, at, frame));
  const names = [...new Set([...heldIn(round), ...own, ...checks])];
  return [
    drawField(field, frame),
    { kind: 'clip', clip: window, marks: [...walkMarks(rows, frame), ...tapes] } as const,
    ...known.filter((c) => !own.has(c.id)).flatMap((c) => keyControl(c, round, frame)),
    ...[...others, ...rows].flatMap((s) => kindSign(s.kind, frame.toPaper(s.at), SIGN * 1.3)),
    ...controlLabels(kit, stakes, names, frame),
    ...drawBearings(frame, scaleBar(frame.scale, project.units)),
    inkRing(boxRing(window), inkStroke(0.8)),
  ];
}

/** Tapes as lines, the check dashed. */
function tapeLines(stake: Stake, at: ReadonlyMap<string, Point>, frame: ViewFrame): Mark[] {
  const { set, check } = stake;
  const from = set.method === 'line' ? [set.tie1.from] : methodControls(set);
  const line = (id: string) => [pointNamed(at, id), stake.at].map(frame.toPaper);
  return [
    ...from.map((id) => inkLine(line(id), inkStroke(1.4))),
    inkLine(line(check.from), inkStroke(0.6, BLACK, AREA_DASH)),
  ];
}

/** Names beside the signs in a drawing of the whole field. */
function controlLabels(
  kit: Kit,
  stakes: StakePlan,
  names: readonly string[],
  frame: ViewFrame,
): Mark[] {
  const at = standingPoints(stakes);
  const discs = stakes.controls.map((c) => ({ at: frame.toPaper(c.at), radius: 5 }));
  const wanted = names.map((id) => ({
    ...request(kit, id, frame.toPaper(pointNamed(at, id))),
    clear: 6,
  }));
  const scene = { window: boxGrow(frame.window, -2), discs, lines: [], taken: [] };
  return drawLabels(placeLabels(wanted, scene).placed, LABEL_SIZE);
}

function keyControl(c: Control, round: Round, frame: ViewFrame): Mark[] {
  const at = frame.toPaper(c.at);
  const held = heldIn(round).includes(c.id);
  return controlSign(at, held ? 8 : 5, c.kind === 'fixed', held);
}
