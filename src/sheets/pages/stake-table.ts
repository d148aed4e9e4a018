/** The stake table of one round: columns, heads, rows. */
import { formatLimit } from '../../base/quantity';
import type { Stake } from '../../stakeout/model';
import { isShort } from '../../stakeout/ties';
import { boxRing, inkBox, inkFill, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { BLACK, FAINT, TOWARD_GREY, WHITE, type Mark } from '../marks';
import { readingEms, readingMarks } from '../reading-marks';
import { setWords } from '../stake-words';
import { kindSign } from '../symbols';

/** Readings are read at arm's length: never under 11 pt. */
export const READING_SIZE = 12.5;
export const CHECK_SIZE = 11;
const STAKE_SIZE = 14;
const WORD_SIZE = 8.5;
/** Heights of a row: as high as goes on the fewest sheets. */
export const ROW_HEIGHTS = [18, 18.5, 19, 19.5, 20] as const;
/** From a row's baseline down to its rule. */
const RULE = 5.4;
export const TABLE_HEAD = 16;
/** `offset` and `chord` are longer words than `ties`, and short readings need fewer digits. */
const SHORT_SHIFT = 9;
/** Room for the three figures of a chord's first stake. */
const CHORD_SHIFT = 17;

/** Left ends of the columns, points from the left margin. Metric readings are narrower. */
function columns(kit: Kit) {
  const width = kit.paper.right - kit.paper.left;
  const ems = readingEms(kit.plan.project.units);
  const reading1 = 108;
  const from2 = reading1 + ems * READING_SIZE + 7;
  const reading2 = from2 + 19;
  const side = reading2 + ems * READING_SIZE + 6;
  const check = side + 26;
  const checkReading = check + 45;
  const within = checkReading + ems * CHECK_SIZE + 4;
  return {
    sign: 34,
    kind: 41,
    method: 72,
    from1: 89,
    reading1,
    from2,
    reading2,
    side,
    check,
    checkFrom: check + 26,
    checkReading,
    within,
    limit: within + 25,
    over: width - 35,
    set: width - 33,
    lifted: width - 12,
  };
}

/** `short`: the round's readings are taken along and square to lines between stakes. */
export function tableHead(kit: Kit, y: number, short = false): Mark[] {
  const { left, right } = kit.paper;
  const at = columns(kit);
  const head = (x: number, text: string) => inkText(left + x, y, text, { size: 8 });
  return [
    head(0, 'stake'),
    head(at.kind, 'kind'),
    head(at.method, 'how'),
    head(at.reading1, short ? 'from, along, to' : 'first tape'),
    head(at.reading2, short ? 'offset' : 'second tape'),
    head(at.side, 'side'),
    head(at.check, 'then measure the check; its limit'),
    inkText(left + at.set + 6, y, 'set', { size: 8, align: 'centre' }),
    inkText(right, y, 'lifted', { size: 8, align: 'right' }),
    inkRule(left, right, y + 4, 1.2),
  ];
}

/**
 * One row from `top` down. Every fifth row ends in a heavier rule. `twice`: its check may miss a slip, so
 * that its readings are taken twice.
 */
export function stakeRow(
  kit: Kit,
  stake: Stake,
  index: number,
  top: number,
  rowHeight: number,
  twice: boolean,
): Mark[] {
  const y = top + rowHeight - RULE - 0.6;
  const { left, right } = kit.paper;
  const at = columns(kit);
  const over = kit.plan.stakes?.overTarget.includes(stake.id) ?? false;
  const word = (x: number, text: string) => inkText(left + x, y, text, { size: WORD_SIZE });
  const middle = { x: left + at.sign, y: y - 4.6 };
  const heavy = index % 5 === 4;
  return [
    ...(over ? [inkFill([rowRing(left, right, y, rowHeight)], TOWARD_GREY)] : []),
    inkText(left, y, stake.id, { size: STAKE_SIZE, font: 'bold' }),
    ...kindSign(stake.kind, middle, 3.6),
    word(at.kind, stake.kind),
    ...setCells(kit, y, stake, at),
    ...checkCells(kit, stake, y, at),
    ...(over
      ? [inkText(left + at.over, y, 'over', { size: 8, font: 'bold', align: 'right' })]
      : []),
    ...(twice ? [twiceSign(left + at.over - (over ? 34 : 12), y)] : []),
    ...tickBox(left + at.set, y - 10),
    ...tickBox(left + at.lifted, y - 10),
    inkRule(left, right, y + RULE, heavy ? 1 : 0.35, heavy ? 0 : FAINT),
  ];
}

/** Two squares: take the readings twice. */
const twiceSign = (x: number, y: number): Mark =>
  inkFill(
    [0, 6].map((dx) => boxRing({ minX: x + dx, maxX: x + dx + 4.5, minY: y - 6.5, maxY: y - 2 })),
    BLACK,
  );

type Columns = ReturnType<typeof columns>;

function setCells(kit: Kit, y: number, stake: Stake, at: Columns): Mark[] {
  const { left } = kit.paper;
  const digit = kit.metrics.width('0', 1, 'bold');
  const { method, first, second, side } = setWords(stake);
  const from = { size: 10, font: 'bold' } as const;
  const reading = { size: READING_SIZE, font: 'bold' } as const;
  const small = { size: WORD_SIZE };
  const one = [
    inkText(left + at.method, y, method, small),
    inkText(left + at.from1 + (isShort(stake.set) ? SHORT_SHIFT : 0), y, first.from, from),
  ];
  const along = readingMarks(left + at.reading1, y, first.reading, reading, digit);
  if (second === null)
    return [...one, ...along, inkText(left + at.from2, y, side, { size: 11, font: 'bold' })];
  const ends =
    method === 'chord'
      ? [
          inkText(left + at.reading1 + CHORD_SHIFT, y, second.from, from),
          inkText(left + at.reading2 - 4, y, 'offset', { ...small, align: 'right' }),
        ]
      : [...along, inkText(left + at.from2, y, second.from, from)];
  return [
    ...one,
    ...ends,
    ...readingMarks(left + at.reading2, y, second.reading, reading, digit),
    inkText(left + at.side, y, side, { size: 10, font: 'bold' }),
  ];
}

function checkCells(kit: Kit, stake: Stake, y: number, at: Columns): Mark[] {
  const { left } = kit.paper;
  const { check } = stake;
  const digit = kit.metrics.width('0', 1, 'regular');
  const small = { size: WORD_SIZE };
  return [
    inkText(left + at.check, y, 'check', small),
    inkText(left + at.checkFrom, y, check.from, { size: 10, font: 'bold' }),
    ...readingMarks(left + at.checkReading, y, check.reading.text, { size: CHECK_SIZE }, digit),
    inkText(left + at.within, y, 'within', small),
    inkText(left + at.limit, y, formatLimit(check.limitIn, kit.plan.project.units), {
      size: CHECK_SIZE,
    }),
  ];
}

/** The row's ground, grey for a stake above the target. */
const rowRing = (left: number, right: number, y: number, rowHeight: number) =>
  boxRing({ minX: left, maxX: right, minY: y - rowHeight + RULE, maxY: y + RULE });

const tickBox = (x: number, y: number): Mark[] => [
  inkFill([boxRing({ minX: x, maxX: x + 12, minY: y, maxY: y + 12 })], WHITE),
  inkBox(x, y, 12, 12),
];
