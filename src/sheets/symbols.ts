/** Signs of the drawings and tables: told apart by shape, never by colour. */
import type { Point } from '../geometry/point';
import type { StakeKind } from '../stakeout/model';
import { inkCircle, inkFill, inkLine, inkRing, inkStroke } from './ink';
import { BLACK, WHITE, type Mark } from './marks';

/** A control: triangle with a dot; on a bar when fixed; filled when a tape is held there. */
export function controlSign(at: Point, size: number, fixed: boolean, held: boolean): Mark[] {
  const h = size * 0.9;
  const triangle = [
    { x: at.x, y: at.y - h * 0.62 },
    { x: at.x + size / 2, y: at.y + h * 0.38 },
    { x: at.x - size / 2, y: at.y + h * 0.38 },
  ];
  const y = at.y + h * 0.38 + size * 0.22;
  const bar = inkLine(
    [
      { x: at.x - size * 0.6, y },
      { x: at.x + size * 0.6, y },
    ],
    inkStroke(1.1),
  );
  return [
    inkFill([triangle], held ? BLACK : WHITE),
    inkRing(triangle, inkStroke(0.9)),
    inkCircle(at, Math.max(0.8, size * 0.09), held ? WHITE : BLACK, null),
    ...(fixed ? [bar] : []),
  ];
}

/** An outline stake: a disc. */
export const stakeSign = (at: Point, radius: number): Mark[] => [
  inkCircle(at, radius, BLACK, inkStroke(0.6, WHITE)),
];

/** A swing pin: ring with a cross. */
export function pinSign(at: Point, radius: number): Mark[] {
  const s = inkStroke(0.7);
  return [
    inkCircle(at, radius, WHITE, inkStroke(0.8)),
    inkLine(
      [
        { x: at.x - radius, y: at.y },
        { x: at.x + radius, y: at.y },
      ],
      s,
    ),
    inkLine(
      [
        { x: at.x, y: at.y - radius },
        { x: at.x, y: at.y + radius },
      ],
      s,
    ),
  ];
}

/** A guide stake: hollow diamond. */
export function guideSign(at: Point, radius: number): Mark[] {
  const ring = [
    { x: at.x, y: at.y - radius },
    { x: at.x + radius, y: at.y },
    { x: at.x, y: at.y + radius },
    { x: at.x - radius, y: at.y },
  ];
  return [inkFill([ring], WHITE), inkRing(ring, inkStroke(0.9))];
}

/** The sign of a stake's kind, `radius` points half wide. */
export function kindSign(kind: StakeKind, at: Point, radius: number): Mark[] {
  if (kind === 'control') return controlSign(at, radius * 2.6, false, false);
  if (kind === 'pin') return pinSign(at, radius * 1.15);
  return kind === 'guide' ? guideSign(at, radius * 1.2) : stakeSign(at, radius);
}

/** Solid arrowhead with its tip at `tip`, pointing along (dx, dy) on paper. */
export function arrowHead(tip: Point, dx: number, dy: number, size: number): Mark {
  const n = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / n, dy / n];
  const back = { x: tip.x - ux * size, y: tip.y - uy * size };
  const half = size * 0.38;
  return inkFill(
    [
      [
        tip,
        { x: back.x - uy * half, y: back.y + ux * half },
        { x: back.x + uy * half, y: back.y - ux * half },
      ],
    ],
    BLACK,
  );
}

/** Turn point: small hollow square where the reels lift. */
export function turnSign(at: Point, half: number): Mark[] {
  const ring = [
    { x: at.x - half, y: at.y - half },
    { x: at.x + half, y: at.y - half },
    { x: at.x + half, y: at.y + half },
    { x: at.x - half, y: at.y + half },
  ];
  return [inkFill([ring], WHITE), inkRing(ring, inkStroke(0.6))];
}

/** Where the first pass of a sheet starts: two rings. */
export const startSign = (at: Point, radius: number): Mark[] => [
  inkCircle(at, radius, null, inkStroke(1.1)),
  inkCircle(at, radius * 0.6, null, inkStroke(0.6)),
];

/** The gate where machines come on: a solid square in a square. */
export function gateSign(at: Point, half: number): Mark[] {
  const square = (h: number): Point[] => [
    { x: at.x - h, y: at.y - h },
    { x: at.x + h, y: at.y - h },
    { x: at.x + h, y: at.y + h },
    { x: at.x - h, y: at.y + h },
  ];
  return [
    inkFill([square(half)], WHITE),
    inkRing(square(half), inkStroke(0.8)),
    inkFill([square(half * 0.6)], BLACK),
  ];
}

/** Backing up: an arrow head that points down, open. */
export const backSign = (at: Point, size: number): Mark =>
  inkRing(
    [
      { x: at.x, y: at.y },
      { x: at.x - size * 0.6, y: at.y - size },
      { x: at.x + size * 0.6, y: at.y - size },
    ],
    inkStroke(0.9),
  );

/** A warning sign: filled triangle with its point up, for stakes above the target and for faults. */
export function warningSign(at: Point, size: number): Mark {
  return inkFill(
    [
      [
        { x: at.x, y: at.y - size },
        { x: at.x + size * 0.58, y: at.y },
        { x: at.x - size * 0.58, y: at.y },
      ],
    ],
    BLACK,
  );
}

/** Dash patterns: swing, bend, set-out area, backing up, empty run, the marker's walk. */
export const BACK_DASH = [3.5, 1.5] as const;
export const SWING_DASH = [7, 2, 1, 2] as const;
export const BEND_DASH = [2.4, 1.8] as const;
export const AREA_DASH = [5, 3] as const;
export const EMPTY_DASH = [1.4, 2.6] as const;
export const WALK_DASH = [0.6, 1.6] as const;
