/** The drive at one moment: grass as far as it is mown, machines to scale, what comes next. */
import type { Seconds } from '../../base/units';
import type { Point } from '../../geometry/point';
import { polylineAt, polylineBetween, polylineLength } from '../../geometry/polyline';
import { regionContains } from '../../geometry/region';
import type { Leg } from '../../mowing/model';
import { COLOUR } from '../plan/colours';
import { toPixels } from '../plan/draw-field';
import { drawInHand, drawGate, head, stroke } from '../plan/draw-passes';
import type { PaintJob } from '../plan/paint';
import { pathOfRegion } from '../plan/grass';
import { driveOf, followed, machinesNow, type Drive } from './drive-of';
import { LayCanvas, paintStrip } from './lay-canvas';
import { stripSoFar, stripsDone } from './lay-strips';
import { legIndex, shareOf, type MachineNow } from './machine-now';

type Place = (p: Point) => Point;

const pictures = new WeakMap<HTMLCanvasElement, LayCanvas>();

/** Ground, grass not yet mown, and the lay behind the machines. The context is in feet. */
export function drawDrivenGround(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  clockS: Seconds,
  dpr: number,
): void {
  for (const s of job.scene.surfaces) {
    ctx.fillStyle = s.kind === 'outfield-grass' ? COLOUR.unmown : s.colour;
    ctx.globalAlpha = s.kind === 'outfield-grass' ? 1 : GROUND_STRENGTH;
    ctx.fill(s.path, 'evenodd');
  }
  ctx.globalAlpha = 1;
  const { strips } = driveOf(job.plan);
  const view = { strips, viewport: job.viewport, size: job.size, dpr };
  ctx.save();
  ctx.clip(job.scene.outfield, 'evenodd');
  ctx.save();
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  ctx.drawImage(pictureOf(ctx.canvas).at(view, clockS), 0, 0);
  ctx.restore();
  for (let i = stripsDone(strips, clockS); i < strips.length; i++) {
    const strip = strips[i]!;
    if (strip.toS > clockS + LONGEST_STRIP_S) break;
    if (strip.fromS < clockS) paintStrip(ctx, view, strip, i, stripSoFar(strip, clockS));
  }
  ctx.restore();
}

/** How strongly ground shows that is not mown in this drive. */
const GROUND_STRENGTH = 0.5;

/** No strip takes longer: those that end later than this from now have not begun. */
const LONGEST_STRIP_S = 300;

function pictureOf(canvas: HTMLCanvasElement): LayCanvas {
  const picture = pictures.get(canvas) ?? new LayCanvas();
  pictures.set(canvas, picture);
  return picture;
}

/** Arrows of what is mown, the graphic once it is being set out, the way ahead and the machines. */
export function drawDrive(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  clockS: Seconds,
  place: Place,
  dpr: number,
): void {
  const drive = driveOf(job.plan);
  const now = machinesNow(drive, clockS);
  const lead = followed(now, job.pass?.machine ?? null);
  drawArrows(ctx, job, drive, clockS, place);
  if (drive.axis.hold && clockS >= drive.axis.hold.fromS) drawGraphic(ctx, job, place, dpr);
  const hand = job.plan.passes.passes.find(
    (p) => p.number === job.pass?.number && p.machine === job.pass.machine,
  );
  if (hand) drawInHand(ctx, hand, place, null);
  for (const m of now) drawAhead(ctx, drive, m, clockS, place);
  drawGate(ctx, place(job.project.mowing.gate));
  for (const m of now) if (m !== lead) drawMachine(ctx, m, place, job.viewport.scale, false);
  if (lead) drawMachine(ctx, lead, place, job.viewport.scale, true);
}

/** Passes shorter than this on screen carry no arrow, nor does one so near to an arrow the same way; pixels. */
const LEAST_ARROW = 42;
const ARROWS_APART = 34;
/** Cosine of the angle within which two arrows say the same. */
const SAME_WAY = 0.9;

/** Which way what is mown was mown, where the narrow tool has not relaid it. */
function drawArrows(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  drive: Drive,
  clockS: Seconds,
  place: Place,
): void {
  const drawn: { at: Point; angle: number }[] = [];
  ctx.fillStyle = COLOUR.ink;
  ctx.globalAlpha = 0.8;
  for (const { pass, toS } of drive.passes) {
    if (toS > clockS) continue;
    const length = polylineLength(pass.line);
    const middle = polylineAt(pass.line, length * 0.55);
    const at = place(middle);
    const tail = place(polylineAt(pass.line, Math.max(0, length * 0.55 - 1)));
    const angle = Math.atan2(at.y - tail.y, at.x - tail.x);
    const isShort = length * job.viewport.scale < LEAST_ARROW;
    const isNear = drawn.some(
      (d) =>
        Math.hypot(d.at.x - at.x, d.at.y - at.y) < ARROWS_APART &&
        Math.cos(d.angle - angle) > SAME_WAY,
    );
    if (isShort || isNear || regionContains(job.plan.design.graphic, middle)) continue;
    drawn.push({ at, angle });
    head(ctx, at, angle, 8);
  }
  ctx.globalAlpha = 1;
}

function drawGraphic(
  ctx: CanvasRenderingContext2D,
  job: PaintJob,
  place: Place,
  dpr: number,
): void {
  const path = pathOfRegion(job.plan.design.graphic.map((ring) => ring.map(place)));
  toPixels(ctx, dpr);
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineWidth = 1;
  ctx.globalAlpha = 0.65;
  ctx.stroke(path);
  ctx.globalAlpha = 1;
}

/** The rest of the leg under way and what follows it, up to the end of the pass. */
function drawAhead(
  ctx: CanvasRenderingContext2D,
  drive: Drive,
  now: MachineNow,
  clockS: Seconds,
  place: Place,
): void {
  if (now.doing === 'done' || now.doing === 'to-come' || now.doing === 'count') return;
  const legs = drive.driven.find((d) => d.machine === now.machine)?.legs ?? [];
  const from = legIndex(legs, clockS);
  for (let i = from; i < legs.length; i++) {
    const leg = legs[i]!;
    if (leg.kind === 'hold') break;
    if (leg.kind === 'mow' && leg.pass !== now.pass) break;
    if (leg.kind !== 'mow' && i > from && legs[i - 1]!.kind === 'mow') break;
    drawWay(ctx, leg, i === from ? shareOf(leg, clockS) : 0, place);
  }
}

function drawWay(ctx: CanvasRenderingContext2D, leg: Leg, share: number, place: Place): void {
  const length = polylineLength(leg.points);
  const line = polylineBetween(leg.points, share * length, length);
  ctx.strokeStyle = COLOUR.ink;
  ctx.lineCap = leg.kind === 'run' ? 'round' : 'butt';
  ctx.lineWidth = leg.kind === 'run' ? 2.4 : leg.kind === 'mow' ? 1.5 : 1;
  ctx.setLineDash(leg.kind === 'run' ? [0.1, 5.5] : []);
  stroke(ctx, line, place);
  ctx.setLineDash([]);
}

/** A machine shows at least this long and wide on screen, pixels. */
const LEAST_LONG = 15;
const LEAST_WIDE = 9;

/** Its body to scale, the cutting line across it; filled with reels down, hollow with them up. */
function drawMachine(
  ctx: CanvasRenderingContext2D,
  now: MachineNow,
  place: Place,
  scale: number,
  lead: boolean,
): void {
  const { machine, leg, heading } = now;
  const long = ((machine.frontOverhangIn + machine.rearOverhangIn) / 12) * scale;
  const grow = Math.max(1, LEAST_LONG / long);
  const front = (machine.frontOverhangIn / 12) * scale * grow;
  const rear = (machine.rearOverhangIn / 12) * scale * grow;
  const half = Math.max(LEAST_WIDE, (machine.bodyWidthIn / 12) * scale) / 2;
  const cut = Math.max(LEAST_WIDE + 4, (machine.cutWidthIn / 12) * scale) / 2;
  const at = place(now.at);
  const colour = lead ? COLOUR.flag : COLOUR.ink;
  const down = now.doing === 'pass' && leg.reels === 'down';
  ctx.save();
  ctx.translate(at.x, at.y);
  ctx.rotate(-heading);
  ctx.beginPath();
  ctx.moveTo(-rear, -half);
  ctx.lineTo(front * 0.4, -half);
  ctx.lineTo(front, 0);
  ctx.lineTo(front * 0.4, half);
  ctx.lineTo(-rear, half);
  ctx.closePath();
  ctx.lineJoin = 'round';
  ctx.strokeStyle = COLOUR.white;
  ctx.lineWidth = 5;
  ctx.stroke();
  ctx.fillStyle = down ? colour : COLOUR.white;
  ctx.fill();
  ctx.strokeStyle = colour;
  ctx.lineWidth = 2;
  ctx.stroke();
  ctx.beginPath();
  ctx.moveTo(0, -cut);
  ctx.lineTo(0, cut);
  ctx.lineWidth = 2.5;
  ctx.stroke();
  ctx.restore();
  if (now.doing === 'pass' && now.pass !== null) drawTag(ctx, `${now.pass}`, at, colour);
}

/** The pass's number beside the machine, never turned. */
function drawTag(ctx: CanvasRenderingContext2D, text: string, at: Point, colour: string): void {
  ctx.font = '650 13px "Archivo Variable"';
  ctx.textAlign = 'left';
  ctx.textBaseline = 'middle';
  const width = ctx.measureText(text).width + 10;
  const x = at.x + 14;
  const y = at.y - 22;
  ctx.fillStyle = COLOUR.white;
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1.2;
  ctx.fillRect(x, y - 9, width, 18);
  ctx.strokeRect(x, y - 9, width, 18);
  ctx.fillStyle = colour;
  ctx.fillText(text, x + 5, y + 0.5);
  ctx.textBaseline = 'alphabetic';
}
