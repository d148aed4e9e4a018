/**
 * The small drawing of one round: where it lies on the field, and its stakes with as many of their
 * numbers as this size allows; the outline sheets carry every number.
 */
import { boxGrow, boxOfPoints, type Box } from '../geometry/box';
import type { Control } from '../field/model';
import type { Point } from '../geometry/point';
import type { Round, Stake, StakePlan } from '../stakeout/model';
import { drawBearings, drawField, fieldBox } from './draw-field';
import { drawLabels } from './draw-labels';
import { outlineFill, outlineLines, outlineMarks } from './draw-outline';
import { boxRing, inkCircle, inkLine, inkRing, inkStroke, inkText } from './ink';
import { pointNamed, standingPoints, type Kit } from './kit';
import { BLACK, type Mark } from './marks';
import { placeLabels } from './place-labels';
import { AREA_DASH, controlSign, kindSign } from './symbols';
import { frameView, scaleBar, type ViewFrame } from './view-frame';

const LABEL_SIZE = 8;
const SIGN = 2.2;
const FEW = 4;

/** Marks with the drawing's top left at (0, 0). */
export function planRoundDrawing(
  kit: Kit,
  stakes: StakePlan,
  round: Round,
  rows: readonly Stake[],
): { readonly marks: readonly Mark[]; readonly height: number } {
  const height = rows.length <= FEW ? 120 : 190;
  const width = kit.paper.right - kit.paper.left;
  const key = { minX: width - height * 1.06, maxX: width, minY: 0, maxY: height };
  const main = { minX: 0, maxX: key.minX - 8, minY: 0, maxY: height };
  return {
    height,
    marks: [
      ...mainMarks(kit, stakes, round, rows, main),
      ...keyMarks(kit, stakes, round, rows, key),
    ],
  };
}

const EMPTY_BOX: Box = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

function mainMarks(kit: Kit, stakes: StakePlan, round: Round, rows: readonly Stake[], window: Box) {
  const ground = boxGrow(boxOfPoints(rows.map((s) => s.at)) ?? EMPTY_BOX, 3);
  const { units } = kit.plan.project;
  const frame = { ...frameView(ground, boxGrow(window, -20), units), window };
  const at = standingPoints(stakes);
  const inRound = new Set(rows.map((stake) => stake.id));
  const signs = stakes.stakes.flatMap((stake) =>
    inRound.has(stake.id)
      ? kindSign(stake.kind, frame.toPaper(stake.at), SIGN)
      : [inkCircle(frame.toPaper(stake.at), 1, BLACK, null)],
  );
  const held = round.from.flatMap((id) =>
    controlSign(frame.toPaper(pointNamed(at, id)), 9, false, true),
  );
  const inside = [
    outlineFill(stakes, at, frame),
    ...outlineMarks(stakes, at, frame),
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
  const held = round.from.map((id) => ({ id, at: pointNamed(at, id) }));
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
  const ground = boxGrow(boxOfPoints(rows.map((s) => s.at)) ?? EMPTY_BOX, 3);
  const area = boxRing(ground).map(frame.toPaper);
  const middle = { x: (ground.minX + ground.maxX) / 2, y: (ground.minY + ground.maxY) / 2 };
  const tapes = round.from.map((id) =>
    inkLine([pointNamed(at, id), middle].map(frame.toPaper), inkStroke(0.5)),
  );
  const controls = stakes.controls.filter((c) => c.kind === 'fixed' || round.from.includes(c.id));
  return [
    drawField(field, frame),
    ...tapes,
    inkRing(area, inkStroke(0.9, 0, AREA_DASH)),
    ...controls.flatMap((c) => keyControl(c, round, frame)),
  ];
}

function keyControl(c: Control, round: Round, frame: ViewFrame): Mark[] {
  const at = frame.toPaper(c.at);
  const held = round.from.includes(c.id);
  const sign = controlSign(at, held ? 8 : 5, c.kind === 'fixed', held);
  return held ? [...sign, inkText(at.x + 7, at.y + 3, c.id, { size: 8.5, font: 'bold' })] : sign;
}
