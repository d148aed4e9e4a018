/** Hours: what each task takes, by when the crew is off the grass, and where the rates come from. */
import type { Task } from '../../labour/model';
import { wrapText } from '../fit-text';
import { boxRing, inkFill, inkLine, inkRing, inkRule, inkStroke, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT, TOWARD_GREY, type Mark } from '../marks';
import { startFlow, type Flow } from '../page-flow';
import type { Draft } from '../sheet-head';
import { addEfficiency } from './efficiency-lines';

export function hoursPages(kit: Kit): Draft[] {
  const flow = startFlow(kit.paper);
  addVerdict(kit, flow);
  addBar(kit, flow);
  addHead(kit, flow);
  kit.plan.hours.tasks.forEach((task, i) => addTask(kit, flow, task, i));
  addEfficiency(kit, flow);
  addTotals(kit, flow);
  return flow.pages().map((marks) => ({
    title: 'Hours',
    lead: 'P50: half of such days are done by then; P90: nine of ten. Strung, marked and cleared piece by piece.',
    marks,
  }));
}

/** `6 h 05 min`. */
export function spanText(minutes: number): string {
  const total = Math.round(Math.abs(minutes));
  const hours = Math.floor(total / 60);
  const rest = total - hours * 60;
  return hours === 0 ? `${rest} min` : `${hours} h ${String(rest).padStart(2, '0')} min`;
}

export function verdictText(kit: Kit): string {
  const { window } = kit.plan.hours;
  const spare = spanText(window.spareMinutesP90);
  return window.fitsP90
    ? `Fits the window ${window.opens} to ${window.closes}: done by ${window.finishP90} on nine days of ten, ${spare} to spare.`
    : `Past the window ${window.opens} to ${window.closes}: ${spare} over on the tenth day (P90). Start earlier, set controls the day before, or add hands.`;
}

function addVerdict(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  for (const line of wrapText(kit.metrics, verdictText(kit), 13, 'heading', right - left))
    flow.add([inkText(left, flow.y() + 14, line, { size: 13, font: 'heading' })], 18);
  const { totals, window } = kit.plan.hours;
  const chance = Math.round(window.chance * 100);
  const text =
    `On the clock ${hoursText(totals.clockHoursP50)} (P50) to ${hoursText(totals.clockHoursP90)} (P90). ` +
    `Work ${totals.personHoursP50.toFixed(1)} to ${totals.personHoursP90.toFixed(1)} person-hours. ` +
    `${chance} of 100 such days end inside the window.`;
  for (const line of wrapText(kit.metrics, text, 10, 'regular', right - left))
    flow.add([inkText(left, flow.y() + 12, line, { size: 10 })], 14);
}

const hoursText = (hours: number): string => spanText(hours * 60);

/** Minutes after midnight of a 24-h `HH:MM`. */
const clockMinutes = (text: string): number => {
  const [hours = 0, minutes = 0] = text.split(':').map(Number);
  return hours * 60 + minutes;
};

/** Baselines of the words at the bar, from its top: two rows below, as P50 and P90 may be close. */
const ABOVE = -5;
const BELOW = 27;
const LOWER = 38;

/** The window as an open bar, likely work as a filled one, its P90 tail hatched by an open end. */
function addBar(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const { window, totals } = kit.plan.hours;
  const opens = clockMinutes(window.opens);
  const closes = clockMinutes(window.closes);
  const length = closes > opens ? closes - opens : closes - opens + 24 * 60;
  const p50 = totals.clockHoursP50 * 60;
  const p90 = totals.clockHoursP90 * 60;
  const scale = (right - left) / Math.max(length, p90, 1);
  const y = flow.y() + 18;
  const bar = (from: number, to: number) =>
    boxRing({ minX: left + from * scale, maxX: left + to * scale, minY: y, maxY: y + 16 });
  const tick = (at: number, text: string, down: number): Mark[] => {
    const x = left + at * scale;
    const align = x > right - 90 ? 'right' : 'left';
    const at2 = align === 'right' ? x - 3 : x + 3;
    return [
      inkLine(
        [
          { x, y: y - 4 },
          { x, y: y + 20 },
        ],
        inkStroke(1.6),
      ),
      inkText(at2, y + down, text, { size: 9, align }),
    ];
  };
  flow.add(
    [
      inkFill([bar(0, p50)], TOWARD_GREY),
      inkRing(bar(0, p90), inkStroke(0.8)),
      inkRing(bar(0, length), inkStroke(2)),
      ...tick(0, `opens ${window.opens}`, ABOVE),
      ...tick(p50, `P50 ${window.finishP50}`, BELOW),
      ...tick(p90, `P90 ${window.finishP90}`, LOWER),
      ...tick(length, `closes ${window.closes}`, ABOVE),
    ],
    72,
  );
}

const columns = (w: number) => ({
  name: 22,
  quantity: w - 268,
  unit: w - 264,
  people: w - 176,
  p50: w - 124,
  p90: w - 68,
  start: w - 30,
});

function addHead(kit: Kit, flow: Flow): void {
  const { left, right } = kit.paper;
  const at = columns(right - left);
  const y = flow.y() + 10;
  const head = (x: number, text: string, align: 'left' | 'right' = 'right') =>
    inkText(left + x, y, text, { size: 8, align });
  flow.add(
    [
      head(at.name, 'task, its rate and the source', 'left'),
      head(at.unit, 'quantity', 'left'),
      head(at.people, 'people'),
      head(at.p50, 'P50'),
      head(at.p90, 'P90'),
      head(at.start, 'starts'),
      head(right - left, 'done'),
      inkRule(left, right, y + 4, 1.2),
    ],
    16,
  );
}

function addTask(kit: Kit, flow: Flow, task: Task, index: number): void {
  const { left, right } = kit.paper;
  const at = columns(right - left);
  const { rate } = task;
  const source = `${figure(rate.low)} / ${figure(rate.likely)} / ${figure(rate.high)} ${rate.unit}; ${rate.source}`;
  const room = at.quantity - at.name - 44;
  const names = wrapText(kit.metrics, task.name, 10.5, 'bold', room);
  const sources = wrapText(kit.metrics, source, 8.5, 'regular', right - left - at.name - 30);
  const deep = names.length * 12;
  const height = deep + sources.length * 10.5 + 8;
  if (flow.need(height)) addHead(kit, flow);
  const y = flow.y() + 13;
  const cell = (x: number, text: string, align: 'left' | 'right' = 'right') =>
    inkText(left + x, y, text, { size: 9.5, align });
  flow.add(
    [
      inkText(left, y, String(index + 1), { size: 11, font: 'bold' }),
      ...names.map((line, i) =>
        inkText(left + at.name, y + i * 12, line, { size: 10.5, font: 'bold' }),
      ),
      cell(at.quantity, figure(task.quantity)),
      cell(at.unit, task.unit, 'left'),
      cell(at.people, String(task.people)),
      cell(at.p50, spanText(task.minutesP50)),
      cell(at.p90, spanText(task.minutesP90)),
      cell(at.start, clockAfter(kit.plan.hours.window.opens, task.startMin)),
      ...sources.map((line, i) =>
        inkText(left + at.name, y + deep - 1 + i * 10.5, line, { size: 8.5 }),
      ),
      inkRing(
        boxRing({ minX: right - 13, maxX: right - 2, minY: y - 9, maxY: y + 2 }),
        inkStroke(0.9),
      ),
      inkRule(left, right, flow.y() + height - 1, 0.35, FAINT),
    ],
    height,
  );
}

/** Three figures are all that a rate or a quantity can bear. */
function figure(value: number): string {
  if (value >= 100) return String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, ',');
  return String(Number(value.toPrecision(3)));
}

function clockAfter(opens: string, minutes: number): string {
  const total = (clockMinutes(opens) + Math.round(minutes)) % (24 * 60);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${two(Math.floor(total / 60))}:${two(total % 60)}`;
}

function addTotals(kit: Kit, flow: Flow): void {
  const { left } = kit.paper;
  flow.need(36);
  const y = flow.y() + 22;
  flow.add(
    [
      inkText(left, y, 'Started', { size: 10 }),
      inkRule(left + 40, left + 130, y + 1),
      inkText(left + 146, y, 'count signed', { size: 10 }),
      inkRule(left + 212, left + 302, y + 1),
      inkText(left + 318, y, 'off the grass', { size: 10 }),
      inkRule(left + 384, left + 474, y + 1),
    ],
    36,
  );
}
