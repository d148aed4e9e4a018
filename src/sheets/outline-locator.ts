/** Where the outline's drawings lie, and the control stakes, on one small drawing. */
import { boxGrow, boxOfPoints } from '../geometry/box';
import type { StakePlan } from '../stakeout/model';
import { drawBearings } from './draw-field';
import { drawLabels } from './draw-labels';
import { outlineFill, outlineLines } from './draw-outline';
import { boxRing, inkLine, inkRing, inkStroke } from './ink';
import { pointNamed, standingPoints, type Kit } from './kit';
import { BLACK, type Mark } from './marks';
import { placeLabels, type LabelRequest } from './place-labels';
import type { Panel } from './plan-panels';
import { AREA_DASH, controlSign } from './symbols';
import { frameView, scaleBar, type ViewFrame } from './view-frame';

export const LOCATOR_HEIGHT = 98;
const LABEL_SIZE = 8.5;
const NUMBER_SIZE = 10;

/** Marks with the drawing's top left at (0, 0). */
export function drawLocator(
  kit: Kit,
  stakes: StakePlan,
  panels: readonly Panel[],
  width: number,
): Mark[] {
  const window = { minX: 0, minY: 0, maxX: width, maxY: LOCATOR_HEIGHT };
  const ground = boxOfPoints(stakes.stakes.map((stake) => stake.at))!;
  const { units } = kit.plan.project;
  const frame = { ...frameView(ground, boxGrow(window, -14), units), window };
  const at = standingPoints(stakes);
  const lines = outlineLines(stakes, at).map((line) => line.map(frame.toPaper));
  const controls = stakes.controls.filter((c) => c.kind === 'set');
  return [
    { kind: 'clip', clip: window, marks: [outlineFill(stakes, at, frame)] },
    ...lines.map((line) => inkLine(line, inkStroke(0.5))),
    ...(panels.length > 1 ? panelRings(stakes, panels, frame) : []),
    ...controls.flatMap((c) => controlSign(frame.toPaper(c.at), 8, false, false)),
    ...labels(kit, stakes, panels, frame),
    ...drawBearings(frame, scaleBar(frame.scale, units)),
    inkRing(boxRing(window), inkStroke(0.8)),
  ];
}

const panelBox = (stakes: StakePlan, panel: Panel) => {
  const at = standingPoints(stakes);
  return boxGrow(boxOfPoints(panel.ids.map((id) => pointNamed(at, id)))!, 1.5);
};

const panelRings = (stakes: StakePlan, panels: readonly Panel[], frame: ViewFrame): Mark[] =>
  panels.map((panel) =>
    inkRing(boxRing(panelBox(stakes, panel)).map(frame.toPaper), inkStroke(0.8, BLACK, AREA_DASH)),
  );

function labels(kit: Kit, stakes: StakePlan, panels: readonly Panel[], frame: ViewFrame): Mark[] {
  const controls = stakes.controls.filter((c) => c.kind === 'set');
  const names = controls.map((c) => labelAt(kit, c.id, frame.toPaper(c.at), LABEL_SIZE, 5));
  const boxes = panels.length > 1 ? panels.map((panel) => panelBox(stakes, panel)) : [];
  const numbers = boxes.map((box, i) => {
    const corner = frame.toPaper({ x: (box.minX + box.maxX) / 2, y: box.maxY });
    return labelAt(kit, `drawing ${i + 1}`, corner, NUMBER_SIZE, 2);
  });
  const open = boxGrow({ ...frame.window, maxY: frame.window.maxY - 14 }, -2);
  const scene = {
    window: open,
    discs: controls.map((c) => ({ at: frame.toPaper(c.at), radius: 5 })),
    lines: boxes.map((box) => boxRing(box).map(frame.toPaper)),
    taken: [],
  };
  const own = placeLabels(names, scene);
  const taken = own.placed.map((label) => label.box);
  const art = boxes.map((box) => boxOfPoints(boxRing(box).map(frame.toPaper))!);
  const beside = placeLabels(numbers, { ...scene, taken: [...taken, ...art] }).placed;
  const left = numbers.filter(({ id }) => !beside.some((label) => label.id === id));
  const over = placeLabels(left, {
    ...scene,
    taken: [...taken, ...beside.map((label) => label.box)],
  }).placed;
  return [...drawLabels(own.placed, LABEL_SIZE), ...drawLabels([...beside, ...over], NUMBER_SIZE)];
}

const labelAt = (
  kit: Kit,
  id: string,
  at: LabelRequest['at'],
  size: number,
  clear: number,
): LabelRequest => ({
  id,
  at,
  width: kit.metrics.width(id, size, 'bold') + 1,
  height: size * 0.78,
  clear,
});
