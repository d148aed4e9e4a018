/** The drawing of the guide lines: bands, strings, their numbered ends. */
import { unitFromBearing } from '../geometry/angle';
import { boxGrow, boxOfPoints, type Box } from '../geometry/box';
import { pointLerp, type Point } from '../geometry/point';
import type { GuideFamily } from '../guide/model';
import { drawBearings, drawField, drawRegion } from './draw-field';
import { drawLabels } from './draw-labels';
import { boxRing, inkLine, inkRing, inkStroke } from './ink';
import type { Kit } from './kit';
import { TOWARD_GREY, WHITE, type Mark } from './marks';
import { placeLabels, type LabelRequest } from './place-labels';
import { arrowHead, guideSign } from './symbols';
import { frameView, scaleBar, type ViewFrame } from './view-frame';

const LABEL = 8.5;
const SIGN = 3.4;
/** Band numbers are written at every such band, and at the first and last. */
const BAND_STEP = 5;

/** The whole outfield in a window. */
export function guideDrawing(kit: Kit, window: Box): Mark[] {
  const { field, project } = kit.plan;
  const ground = boxOfPoints([...field.outfieldGrass.flat(), ...field.fenceLine])!;
  const inner = { ...boxGrow(window, -12), maxY: window.maxY - 16 };
  const frame = { ...frameView(ground, inner, project.units), window };
  return [
    { kind: 'clip', clip: window, marks: bandFills(kit, frame) },
    drawField(field, frame),
    ...stringMarks(kit, frame),
    ...labelMarks(kit, frame),
    ...drawBearings(frame, scaleBar(frame.scale, project.units)),
    inkRing(boxRing(window), inkStroke(0.8)),
  ];
}

function bandFills(kit: Kit, frame: ViewFrame): Mark[] {
  return kit.plan.design.patches
    .filter((patch) => patch.kind === 'background')
    .flatMap((patch) => {
      const lay = patch.lays[patch.lays.length - 1];
      const toward = lay && 'bearingDeg' in lay && unitFromBearing(lay.bearingDeg).y < 0;
      return drawRegion(patch.region, frame, toward ? TOWARD_GREY : WHITE, 0.25);
    });
}

/** Each string with an arrow the way its pass is driven. */
function stringMarks(kit: Kit, frame: ViewFrame): Mark[] {
  return kit.plan.guides.strings.flatMap(({ from, to }) => {
    const [a, b] = [from.at, to.at].map(frame.toPaper) as [Point, Point];
    const tip = pointLerp(a, b, 0.5);
    return [
      inkLine([a, b], inkStroke(1.8)),
      arrowHead(tip, b.x - a.x, b.y - a.y, 8),
      ...guideSign(a, SIGN),
      ...guideSign(b, SIGN),
    ];
  });
}

function labelMarks(kit: Kit, frame: ViewFrame): Mark[] {
  const { strings, families } = kit.plan.guides;
  const request = (id: string, at: Point, clear: number): LabelRequest => ({
    id,
    at: frame.toPaper(at),
    width: kit.metrics.width(id, LABEL, 'bold') + 1,
    height: LABEL * 0.78,
    clear,
  });
  const stakes = strings.flatMap(({ from, to }) =>
    [from, to].map(({ id, at }) => request(id, at, SIGN * 1.3)),
  );
  const ids = strings.map(({ id, from, to }) => request(id, pointLerp(from.at, to.at, 0.3), 2));
  const lines = strings.map(({ from, to }) => [from.at, to.at].map(frame.toPaper));
  const discs = [...stakes, ...ids].map(({ at, clear }) => ({ at, radius: clear }));
  const window = boxGrow({ ...frame.window, maxY: frame.window.maxY - 14 }, -2);
  const first = placeLabels([...stakes, ...ids], { window, discs, lines, taken: [] });
  const taken = first.placed.map((label) => label.box);
  const bands = families.length === 1 ? families.flatMap(bandPlaces) : [];
  const second = placeLabels(
    bands.map(({ id, at }) => request(id, at, 0)),
    { window, discs, lines, taken, steps: 1 },
  );
  return [...drawLabels(second.placed, LABEL), ...drawLabels(first.placed, LABEL)];
}

/** Numbers of bands at the middle of their middle lane. */
function bandPlaces({ lanes }: GuideFamily): { readonly id: string; readonly at: Point }[] {
  const numbers = [...new Set(lanes.flatMap((lane) => lane.bands))];
  const last = Math.max(...numbers);
  return numbers
    .filter((band) => band === 1 || band === last || band % BAND_STEP === 0)
    .flatMap((band) => {
      const own = lanes.filter((lane) => lane.bands.includes(band));
      const piece = own[own.length >> 1]?.pieces.at(-1);
      return piece ? [{ id: String(band), at: pointLerp(piece.from, piece.to, 0.75) }] : [];
    });
}
