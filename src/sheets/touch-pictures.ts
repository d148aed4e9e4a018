/** Small pictures of what the tape's zero is held to. Drawn in a box 58 wide and 44 high. */
import type { TouchPicture } from '../field/model';
import type { Point } from '../geometry/point';
import { boxRing, inkCircle, inkFill, inkLine, inkRing, inkStroke } from './ink';
import { BLACK, TOWARD_GREY, WHITE, type Mark } from './marks';

export const PICTURE = { width: 58, height: 44 } as const;

type Pairs = readonly (readonly [number, number])[];
const points = (pairs: Pairs): Point[] => pairs.map(([x, y]) => ({ x, y }));

/** Marks with the picture's top left at (0, 0). The ring with a dot is where the tape touches. */
export function touchPicture(picture: TouchPicture): Mark[] {
  const { marks, touch } = DRAWINGS[picture];
  const frame = { minX: 0, minY: 0, maxX: PICTURE.width, maxY: PICTURE.height };
  return [
    { kind: 'clip', clip: frame, marks },
    inkRing(boxRing(frame), inkStroke(0.5)),
    inkCircle(touch, 4.6, null, inkStroke(1.6, WHITE)),
    inkCircle(touch, 4.6, null, inkStroke(1.1)),
    inkCircle(touch, 1.2, BLACK, null),
  ];
}

interface Drawing {
  readonly marks: readonly Mark[];
  readonly touch: Point;
}

const shape = (pairs: Pairs, grey = TOWARD_GREY): Mark[] => [
  inkFill([points(pairs)], grey),
  inkRing(points(pairs), inkStroke(1)),
];
const line = (pairs: Pairs, width = 1): Mark => inkLine(points(pairs), inkStroke(width));
const dashed = (pairs: Pairs): Mark => inkRing(points(pairs), inkStroke(0.8, 0, [3, 2]));

/** Seen from above, home at the foot: foul lines leave the plate's rear point at 45 degrees. */
const plate: Drawing = {
  marks: [
    line(
      [
        [29, 34],
        [60, 3],
      ],
      0.7,
    ),
    line(
      [
        [29, 34],
        [-2, 3],
      ],
      0.7,
    ),
    ...shape(
      [
        [17, 10],
        [41, 10],
        [41, 22],
        [29, 34],
        [17, 22],
      ],
      WHITE,
    ),
  ],
  touch: { x: 29, y: 34 },
};

/** First base: its outer back corner lies on the right foul line, away from home. */
const DIAMOND: Pairs = [
  [29, 6],
  [45, 22],
  [29, 38],
  [13, 22],
];
const mirror = (pairs: Pairs): Pairs => pairs.map(([x, y]) => [PICTURE.width - x, y] as const);

const cornerFirst: Drawing = {
  marks: [
    line(
      [
        [13, 54],
        [61, 6],
      ],
      0.7,
    ),
    ...shape(DIAMOND),
  ],
  touch: { x: 45, y: 22 },
};
const cornerThird: Drawing = {
  marks: [
    line(
      mirror([
        [13, 54],
        [61, 6],
      ]),
      0.7,
    ),
    ...shape(DIAMOND),
  ],
  touch: { x: 13, y: 22 },
};

const socket: readonly Mark[] = [
  dashed(DIAMOND),
  ...shape([
    [29, 17],
    [34, 22],
    [29, 27],
    [24, 22],
  ]),
];
const socketFirst: Drawing = {
  marks: [
    line(
      [
        [13, 54],
        [61, 6],
      ],
      0.7,
    ),
    ...socket,
  ],
  touch: { x: 29, y: 22 },
};
const socketThird: Drawing = {
  marks: [
    line(
      mirror([
        [13, 54],
        [61, 6],
      ]),
      0.7,
    ),
    ...socket,
  ],
  touch: { x: 29, y: 22 },
};
const second: Drawing = {
  marks: [
    ...shape(DIAMOND),
    line(
      [
        [29, 6],
        [29, 38],
      ],
      0.4,
    ),
    line(
      [
        [13, 22],
        [45, 22],
      ],
      0.4,
    ),
  ],
  touch: { x: 29, y: 22 },
};

/** From the side: the pole, the ground, the face toward home. */
const poleLeft: Drawing = {
  marks: [
    ...shape([
      [24, -4],
      [31, -4],
      [31, 34],
      [24, 34],
    ]),
    line([
      [0, 34],
      [58, 34],
    ]),
  ],
  touch: { x: 31, y: 33 },
};
const poleRight: Drawing = {
  marks: [
    ...shape([
      [27, -4],
      [34, -4],
      [34, 34],
      [27, 34],
    ]),
    line([
      [0, 34],
      [58, 34],
    ]),
  ],
  touch: { x: 27, y: 33 },
};
const stake: Drawing = {
  marks: [
    ...shape([
      [27, 10],
      [31, 10],
      [31, 36],
      [29, 43],
      [27, 36],
    ]),
    line([
      [0, 32],
      [58, 32],
    ]),
  ],
  touch: { x: 29, y: 10 },
};

const DRAWINGS: Readonly<Record<TouchPicture, Drawing>> = {
  'plate-point': plate,
  'base-corner-first': cornerFirst,
  'base-corner-third': cornerThird,
  'socket-centre-first': socketFirst,
  'socket-centre-third': socketThird,
  'second-centre': second,
  'pole-left': poleLeft,
  'pole-right': poleRight,
  stake,
};
