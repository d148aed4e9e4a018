/** Where the stake lies: tapes, the wrong side hatched, the outline; turns to the way one faces. */
import { boxOfPoints } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { CrewStake } from '../exchange/crew-data';
import { svg } from './dom';
import { roundStakes, type Job, type PlacedStake } from './job';
import { outlinePath, spot, type ToScreen } from './outline-path';

/** Ways to face; what is up on the picture, in words. */
export const FACINGS: readonly ((stake: CrewStake) => string)[] = [
  () => 'Fence',
  () => 'Home',
  (stake) => stake.to,
];

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Kept round the marks; the button that turns the picture has the top. */
const MARGIN = { x: 40, top: 62, foot: 34 };
const FAR = 4000;

export function drawSketch(job: Job, now: PlacedStake, facing: number, size: Size): SVGElement {
  const { stake } = now;
  const from = job.at.get(stake.from);
  const to = job.at.get(stake.to);
  const at = job.at.get(stake.id);
  const held = [stake.from, stake.to].flatMap((id) => {
    const point = job.at.get(id);
    return point ? [{ id, point }] : [];
  });
  const wanted = [...held.map((h) => h.point), ...(at ? [at] : []), ...surroundings(job, now)];
  const turn = turnBy(facing % FACINGS.length, from, to);
  const screen = fit(wanted.map(turn), turn, size);
  const label = `${stake.id} and the points it is measured from, ${[stake.from, stake.to].join(' and ')}`;
  return svg(
    'svg',
    { ...size, role: 'img', 'aria-label': label },
    ...hatch(),
    svg('rect', { ...size, class: 'crew-grass' }),
    from && to ? wrongSide(stake, screen(from), screen(to)) : null,
    ...outline(job, screen),
    ...dots(job, now, screen),
    ...(at ? ties(stake, held, at, screen) : []),
    ...held.map((h) => heldMark(h.id, screen(h.point), size)),
    ...(at ? stakeMark(screen(at)) : []),
  );
}

/** The outline for stakes tied from far; nothing for short tapes, where only the near points matter. */
function surroundings(job: Job, { stake, list }: PlacedStake): Point[] {
  if (stake.method === 'offset' || stake.method === 'chord') return [];
  return roundStakes(job, list.round).flatMap((s) => job.at.get(s.stake.id) ?? []);
}

/** Turns so that the fence, home, or the second point is up. */
function turnBy(facing: number, from: Point | undefined, to: Point | undefined): ToScreen {
  const up =
    facing === 2 && from && to
      ? Math.atan2(to.x - from.x, to.y - from.y)
      : facing === 1
        ? Math.PI
        : 0;
  const [c, s] = [Math.cos(up), Math.sin(up)];
  return (p) => ({ x: p.x * c - p.y * s, y: p.x * s + p.y * c });
}

function fit(turned: readonly Point[], turn: ToScreen, { width, height }: Size): ToScreen {
  const box = boxOfPoints(turned) ?? { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const scale = Math.min(
    (width - 2 * MARGIN.x) / Math.max(1, box.maxX - box.minX),
    (height - MARGIN.top - MARGIN.foot) / Math.max(1, box.maxY - box.minY),
  );
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const centre = { x: width / 2, y: (height + MARGIN.top - MARGIN.foot) / 2 };
  return (p) => {
    const t = turn(p);
    return {
      x: centre.x + (t.x - middle.x) * scale,
      y: centre.y - (t.y - middle.y) * scale,
    };
  };
}

const hatch = (): SVGElement[] => [
  svg(
    'defs',
    {},
    svg(
      'pattern',
      {
        id: 'crew-wrong',
        width: 9,
        height: 9,
        patternUnits: 'userSpaceOnUse',
        patternTransform: 'rotate(45)',
      },
      svg('rect', { width: 9, height: 9, class: 'crew-paper' }),
      svg('path', { d: 'M0 0v9', class: 'crew-hair' }),
    ),
  ),
];

/** The half of the picture on the wrong side of the line between the two points. */
function wrongSide(stake: CrewStake, p: Point, q: Point): SVGElement | null {
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  if (stake.method === 'line' || length === 0) return null;
  const u = { x: ((q.x - p.x) / length) * FAR, y: ((q.y - p.y) / length) * FAR };
  // On a screen with y down, the left of p to q is (u.y, −u.x); the wrong side is across from the stake.
  const away = stake.side === 'R' ? 1 : -1;
  const n = { x: u.y * away, y: -u.x * away };
  const ends = [
    { x: p.x - u.x, y: p.y - u.y },
    { x: p.x + u.x, y: p.y + u.y },
    { x: p.x + u.x + n.x, y: p.y + u.y + n.y },
    { x: p.x - u.x + n.x, y: p.y - u.y + n.y },
  ];
  return svg('path', { d: `${pathOf(ends)}Z`, class: 'crew-wrong' });
}

const pathOf = (points: readonly Point[]): string => `M${points.map(spot).join('L')}`;

/** The outline, when the lists came with it. */
function outline(job: Job, screen: ToScreen): SVGElement[] {
  const d = outlinePath(job.source.lines, job.at, screen);
  return d === '' ? [] : [svg('path', { d, class: 'crew-outline' })];
}

/** The other stakes of the round, small, where no outline shows how they belong together. */
function dots(job: Job, now: PlacedStake, screen: ToScreen): SVGElement[] {
  if (job.source.lines.length > 0) return [];
  return roundStakes(job, now.list.round).flatMap(({ stake }) => {
    const at = job.at.get(stake.id);
    if (!at || stake.id === now.stake.id) return [];
    const p = screen(at);
    return [svg('circle', { cx: p.x.toFixed(1), cy: p.y.toFixed(1), r: 2, class: 'crew-dot' })];
  });
}

function ties(
  stake: CrewStake,
  held: readonly { readonly point: Point }[],
  at: Point,
  screen: ToScreen,
): SVGElement[] {
  const [a, b] = held.map((h) => screen(h.point));
  const end = screen(at);
  if (!a || !b) return [];
  const paths =
    stake.method === 'ties'
      ? [
          [a, end],
          [b, end],
        ]
      : stake.method === 'line'
        ? [[a, end]]
        : [
            [a, b],
            [footOf(a, b, end), end],
          ];
  return ['crew-case', 'crew-tie'].flatMap((name) =>
    paths.map((path) => svg('path', { d: pathOf(path), class: name })),
  );
}

/** Where the square from a point meets the line through two others. */
function footOf(a: Point, b: Point, p: Point): Point {
  const d = { x: b.x - a.x, y: b.y - a.y };
  const t = ((p.x - a.x) * d.x + (p.y - a.y) * d.y) / Math.max(1, d.x * d.x + d.y * d.y);
  return { x: a.x + t * d.x, y: a.y + t * d.y };
}

function heldMark(id: string, p: Point, { width, height }: Size): SVGElement {
  const x = Math.min(width - 26, Math.max(26, p.x));
  const y = p.y > height - 36 ? p.y - 16 : p.y + 28;
  return svg(
    'g',
    {},
    svg('path', { class: 'crew-control', d: `M${spot({ x: p.x, y: p.y - 12 })}l12 20h-24z` }),
    svg('text', { x, y, 'text-anchor': 'middle' }, id),
  );
}

const stakeMark = (p: Point): SVGElement[] => [
  svg('circle', { class: 'crew-stake', cx: p.x, cy: p.y, r: 11 }),
  svg('circle', { cx: p.x, cy: p.y, r: 4.5 }),
];
