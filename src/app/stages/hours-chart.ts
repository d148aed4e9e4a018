/** The geometry of the hours chart: time to pixels, people to rows, and the spread of finishes. */
import type { Hours } from '../../labour/model';
import { clockMinutes, spanText } from '../text/figures';
import { handOut, taskKind, type Bar } from '../text/tasks';

export const LEFT = 92;
export const TOP = 54;
const RIGHT = 10;

export interface HoursChart {
  readonly opens: number;
  readonly closes: number;
  readonly from: number;
  readonly to: number;
  /** Pixels of a minute after midnight. */
  readonly x: (minute: number) => number;
  readonly people: readonly number[];
  readonly bars: readonly Bar[];
  readonly row: number;
  readonly rowsEnd: number;
  readonly curveHeight: number;
  /** Minutes that carry a time at the top. */
  readonly marks: readonly number[];
}

/** Minutes after midnight at which the window opens and shuts, the next day when it must. */
export function windowMinutes(hours: Hours): { opens: number; closes: number } {
  const opens = clockMinutes(hours.window.opens);
  const closes = clockMinutes(hours.window.closes);
  return { opens, closes: closes > opens ? closes : closes + 1440 };
}

export function layOutHours(hours: Hours, width: number, height: number): HoursChart {
  const { opens, closes } = windowMinutes(hours);
  const longest = (hours.simulated[hours.simulated.length - 1] ?? 0) * 60;
  const end = Math.max(closes + 40, opens + longest + 10);
  const from = Math.floor((opens - 25) / 30) * 30;
  const to = Math.min(Math.ceil(end / 30) * 30, from + 20 * 60);
  const count = hours.spec.people;
  const curveHeight = Math.max(110, Math.min(210, height * 0.28));
  const row = Math.max(34, Math.min(104, (height - TOP - curveHeight - 30) / count));
  return {
    opens,
    closes,
    from,
    to,
    x: (minute) => LEFT + ((minute - from) / (to - from)) * (width - LEFT - RIGHT),
    people: Array.from({ length: count }, (_, i) => i),
    bars: handOut(hours.tasks, count),
    row,
    rowsEnd: TOP + row * count,
    curveHeight,
    marks: hourMarks(from, to),
  };
}

function hourMarks(from: number, to: number): number[] {
  const step = to - from > 12 * 60 ? 120 : 60;
  const first = Math.ceil(from / step) * step;
  return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, i) => first + i * step);
}

export interface Curve {
  readonly base: number;
  readonly all: string;
  /** The part past the window. */
  readonly over: string;
  readonly line: string;
}

interface Density {
  readonly t: number;
  readonly d: number;
}

const SAMPLES = 80;

/** A Gaussian kernel density of the finishes; bandwidth by Silverman's rule (1986, eq. 3.28). */
function densityOf(finishes: readonly number[], from: number, to: number): Density[] {
  const mean = finishes.reduce((a, b) => a + b, 0) / finishes.length;
  const variance = finishes.reduce((a, b) => a + (b - mean) ** 2, 0) / finishes.length;
  const h = Math.max(2, 1.06 * Math.sqrt(variance) * finishes.length ** -0.2);
  const low = Math.max(from, finishes[0]! - 3 * h);
  const high = Math.min(to, finishes[finishes.length - 1]! + 3 * h);
  return Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const t = low + ((high - low) * i) / SAMPLES;
    return { t, d: finishes.reduce((sum, f) => sum + Math.exp(-0.5 * ((t - f) / h) ** 2), 0) };
  });
}

/** The finishes' spread as paths of the chart; null with too few of them to draw. */
export function spreadCurve(hours: Hours, chart: HoursChart): Curve | null {
  if (hours.simulated.length < 10) return null;
  const finishes = hours.simulated.map((h) => chart.opens + h * 60);
  const density = densityOf(finishes, chart.from, chart.to);
  const top = Math.max(...density.map((p) => p.d));
  const base = chart.rowsEnd + chart.curveHeight;
  const room = chart.curveHeight - 46;
  const at = density.map((p) => ({ t: p.t, x: chart.x(p.t), y: base - (p.d / top) * room }));
  const steps = (list: typeof at) =>
    list.map((p) => `${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join('L');
  const area = (list: typeof at) =>
    list.length < 2
      ? ''
      : `M${list[0]!.x} ${base}L${steps(list)}L${list[list.length - 1]!.x} ${base}Z`;
  return {
    base,
    all: area(at),
    over: area(at.filter((p) => p.t >= chart.closes)),
    line: `M${steps(at)}`,
  };
}

/** What takes most of the time, in one sentence. */
export function hoursFinding(hours: Hours): string {
  const setOut = hours.tasks.filter((t) => ['stakes', 'lines'].includes(taskKind(t)));
  if (setOut.length === 0) return 'Bands only: nothing to set out.';
  const start = Math.min(...setOut.map((t) => t.startMin));
  const end = Math.max(...setOut.map((t) => t.endMin));
  const share = (end - start) / (hours.totals.clockHoursP50 * 60);
  return `Setting out takes ${spanText(end - start)}.${share > 0.4 ? ' Time is saved there first.' : ''}`;
}
