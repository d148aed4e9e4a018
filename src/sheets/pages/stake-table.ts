/** The stake table of one round: columns, heads, rows. */
import { formatLimit } from '../../base/quantity';
import type { Stake } from '../../stakeout/model';
import { inkBox, inkRule, inkText } from '../ink';
import type { Kit } from '../kit';
import { FAINT, type Mark } from '../marks';
import { setWords } from '../stake-words';
import { kindSign, warningSign } from '../symbols';

/** Readings are read at arm's length: never under 11 pt. */
export const READING_SIZE = 12.5;
export const CHECK_SIZE = 11;
const STAKE_SIZE = 15;
const WORD_SIZE = 9;
export const ROW_HEIGHT = 20;
export const TABLE_HEAD = 16;

/** Left ends of the columns, points from the left margin; `w` is the width between the margins. */
const columns = (w: number) => ({
  sign: 34,
  kind: 43,
  method: 80,
  from1: 102,
  reading1: 119,
  from2: 192,
  reading2: 209,
  side: 279,
  check: 310,
  checkFrom: 338,
  checkReading: 358,
  within: 420,
  limit: 446,
  over: 481,
  in: w - 30,
  out: w - 12,
});

export function tableHead(kit: Kit, y: number): Mark[] {
  const { left, right } = kit.paper;
  const at = columns(right - left);
  const head = (x: number, text: string) => inkText(left + x, y, text, { size: 8 });
  return [
    head(0, 'stake'),
    head(at.kind, 'kind'),
    head(at.method, 'how'),
    head(at.from1, 'first tape'),
    head(at.from2, 'second tape'),
    head(at.side, 'side'),
    head(at.check, 'then measure the check, and its limit'),
    head(at.in - 1, 'in'),
    head(at.out - 2, 'out'),
    inkRule(left, right, y + 4, 1.2),
  ];
}

/** One row; `y` is its baseline. Every fifth row ends in a heavier rule. */
export function stakeRow(kit: Kit, stake: Stake, index: number, y: number): Mark[] {
  const { left, right } = kit.paper;
  const at = columns(right - left);
  const over = kit.plan.stakes?.overTarget.includes(stake.id) ?? false;
  const word = (x: number, text: string) => inkText(left + x, y, text, { size: WORD_SIZE });
  const middle = { x: left + at.sign, y: y - 4.6 };
  const heavy = index % 5 === 4;
  return [
    inkText(left, y, stake.id, { size: STAKE_SIZE, font: 'bold' }),
    ...kindSign(stake.kind, middle, 3.6),
    word(at.kind, stake.kind),
    ...setCells(left, y, stake, at),
    ...checkCells(kit, stake, y, at),
    ...(over ? overCells(left + at.over, y) : []),
    inkBox(left + at.in, y - 10, 12, 12),
    inkBox(left + at.out, y - 10, 12, 12),
    inkRule(left, right, y + 5.4, heavy ? 1 : 0.35, heavy ? 0 : FAINT),
  ];
}

type Columns = ReturnType<typeof columns>;

function setCells(left: number, y: number, stake: Stake, at: Columns): Mark[] {
  const { first, second, side } = setWords(stake);
  const from = { size: 10, font: 'bold' } as const;
  const reading = { size: READING_SIZE, font: 'bold' } as const;
  const small = { size: WORD_SIZE };
  const one = [
    inkText(left + at.method, y, second === null ? 'line' : 'ties', small),
    inkText(left + at.from1, y, first.from, from),
    inkText(left + at.reading1, y, first.reading, reading),
  ];
  if (second === null)
    return [...one, inkText(left + at.from2, y, side, { size: 11, font: 'bold' })];
  return [
    ...one,
    inkText(left + at.from2, y, second.from, from),
    inkText(left + at.reading2, y, second.reading, reading),
    inkText(left + at.side, y, side, { size: 10, font: 'bold' }),
  ];
}

function checkCells(kit: Kit, stake: Stake, y: number, at: Columns): Mark[] {
  const { left } = kit.paper;
  const { check } = stake;
  const small = { size: WORD_SIZE };
  return [
    inkText(left + at.check, y, 'check', small),
    inkText(left + at.checkFrom, y, check.from, { size: 10, font: 'bold' }),
    inkText(left + at.checkReading, y, check.reading.text, { size: CHECK_SIZE }),
    inkText(left + at.within, y, 'within', small),
    inkText(left + at.limit, y, formatLimit(check.limitIn, kit.plan.project.units), {
      size: CHECK_SIZE,
    }),
  ];
}

const overCells = (x: number, y: number): Mark[] => [
  inkText(x, y, 'over', { size: 8.5, font: 'bold' }),
  warningSign({ x: x + 24, y }, 8),
];
