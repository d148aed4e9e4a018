/** The small drawing beside each how-to text. Drawn in a box 76 wide and 58 high. */
import type { Point } from '../geometry/point';
import type { HowToId } from './how-to';
import { inkCircle, inkLine, inkStroke, inkText } from './ink';
import { BLACK, type Mark } from './marks';
import { BEND_DASH, arrowHead, controlSign, pinSign, stakeSign, SWING_DASH } from './symbols';

export const HOW_TO_PICTURE = { width: 76, height: 58 } as const;

const p = (x: number, y: number): Point => ({ x, y });
const tape = (from: Point, to: Point): Mark => inkLine([from, to], inkStroke(1.2));
const thin = (...points: Point[]): Mark => inkLine(points, inkStroke(0.6));
const dashed = (points: readonly Point[], dash: readonly number[], width = 1.1): Mark =>
  inkLine(points, inkStroke(width, BLACK, dash));
const word = (x: number, y: number, text: string): Mark =>
  inkText(x, y, text, { size: 8, font: 'bold', align: 'centre' });
const control = (at: Point): Mark[] => controlSign(at, 8, false, true);

/** Marks with the picture's top left at (0, 0). */
export const howToPicture = (id: HowToId): readonly Mark[] => PICTURES[id]();

/** The arc about `centre` from angle `from` to `to`, radians on paper, y down. */
function arc(centre: Point, radius: number, from: number, to: number, steps = 24): Point[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return p(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  });
}

/** The little corner that says `square`. */
const corner = (at: Point): Mark =>
  thin(p(at.x, at.y - 6), p(at.x + 6, at.y - 6), p(at.x + 6, at.y));

function ties(): Mark[] {
  const [a, b, s] = [p(12, 46), p(64, 46), p(40, 14)];
  return [
    tape(a, s),
    tape(b, s),
    ...control(a),
    ...control(b),
    ...stakeSign(s, 3.4),
    word(18, 27, '1st'),
    word(63, 27, '2nd'),
    word(26, 9, 'left'),
  ];
}

function line(): Mark[] {
  const [a, b, s] = [p(10, 48), p(42, 28), p(66, 13)];
  return [
    tape(a, s),
    ...control(a),
    ...controlSign(b, 8, false, false),
    ...stakeSign(s, 3.4),
    arrowHead(p(58, 18), 48, -30, 7),
    word(24, 27, 'toward'),
  ];
}

function offset(): Mark[] {
  const [a, b, foot, s] = [p(8, 46), p(68, 46), p(44, 46), p(44, 16)];
  return [
    tape(a, b),
    thin(foot, s),
    corner(foot),
    ...stakeSign(a, 3),
    ...stakeSign(b, 3),
    ...stakeSign(s, 3.4),
    word(27, 56, 'along'),
    word(26, 29, 'offset'),
  ];
}

function chord(): Mark[] {
  const [a, b, foot, s] = [p(8, 44), p(68, 44), p(38, 44), p(38, 20)];
  return [
    tape(a, b),
    thin(foot, s),
    corner(foot),
    thin(p(23, 40), p(23, 48)),
    thin(p(53, 40), p(53, 48)),
    ...stakeSign(a, 3),
    ...stakeSign(b, 3),
    ...stakeSign(s, 3.4),
    word(38, 56, 'middle'),
    word(21, 29, 'offset'),
  ];
}

function check(): Mark[] {
  const [a, b, c, s] = [p(10, 46), p(36, 50), p(66, 30), p(26, 14)];
  return [
    dashed([a, s], [2, 2], 0.6),
    dashed([b, s], [2, 2], 0.6),
    tape(c, s),
    ...control(a),
    ...control(b),
    ...controlSign(c, 8, false, false),
    ...stakeSign(s, 3.4),
    word(54, 18, 'check'),
  ];
}

function string(): Mark[] {
  const [a, b] = [p(8, 42), p(68, 18)];
  const dots = [1, 2, 3, 4].map((i) => p(8 + 12 * i, 42 - 4.8 * i + 6));
  return [
    inkLine([a, b], inkStroke(1.5)),
    ...stakeSign(a, 3.4),
    ...stakeSign(b, 3.4),
    ...dots.map((dot) => inkCircle(dot, 1.2, BLACK, null)),
    word(47, 52, 'dots'),
  ];
}

function swing(): Mark[] {
  const pin = p(38, 48);
  const curve = arc(pin, 34, -2.6, -0.55);
  const [a, b] = [curve[0]!, curve[curve.length - 1]!];
  const [tip, back] = [curve[15]!, curve[13]!];
  return [
    thin(pin, a),
    thin(pin, b),
    dashed(curve, SWING_DASH),
    arrowHead(tip, tip.x - back.x, tip.y - back.y, 7),
    ...pinSign(pin, 4),
    ...stakeSign(a, 3.4),
    ...stakeSign(b, 3.4),
    word(38, 34, 'radius'),
  ];
}

function circle(): Mark[] {
  const pin = p(38, 29);
  return [
    dashed(arc(pin, 22, 0, 2 * Math.PI, 48), SWING_DASH),
    thin(pin, p(60, 29)),
    ...pinSign(pin, 4),
    word(38, 20, 'radius'),
  ];
}

function bend(): Mark[] {
  const [a, b, foot, top] = [p(10, 44), p(66, 44), p(38, 44), p(38, 22)];
  const centre = p(38, 50.8);
  const radius = Math.hypot(28, 6.8);
  const from = Math.atan2(a.y - centre.y, a.x - centre.x);
  const to = Math.atan2(b.y - centre.y, b.x - centre.x);
  return [
    dashed(arc(centre, radius, from, to), BEND_DASH, 1.3),
    thin(a, b),
    thin(foot, top),
    corner(foot),
    ...stakeSign(a, 3.4),
    ...stakeSign(b, 3.4),
    inkCircle(top, 1.4, BLACK, null),
    word(38, 56, 'middle'),
  ];
}

const PICTURES: Readonly<Record<HowToId, () => Mark[]>> = {
  ties,
  line,
  offset,
  chord,
  check,
  string,
  swing,
  circle,
  bend,
};
