/** `guides.csv` and `edges.csv`: strings along first passes, and what one tape marks on each edge. */
import { feetToInches, type Feet } from '../base/units';
import type { EdgeTable, GuideStake } from '../guide/model';
import type { StringTurn } from '../guide/string-turns';
import { writeCsv, type Cell } from './csv';

const GUIDE_COLUMNS =
  'guide,from_stake,to_stake,pass,from_edge,from_along_ft,from_along_text,from_x_ft,from_y_ft,' +
  'to_edge,to_along_ft,to_along_text,to_x_ft,to_y_ft,string_side,middle_ft,middle_text,clear_in,' +
  'lift_before_pass,over_pass';
const EDGE_COLUMNS = 'edge,seq,mark,kind,along_ft,along_text,x_ft,y_ft';

/**
 * One row for each pass driven along a string, in driving order; the header alone without strings.
 * `halfFt`: half the machine, of which the rest of the distance from the string is clear.
 */
export const guidesCsv = (turns: readonly StringTurn[], halfFt: Feet): string =>
  writeCsv(
    GUIDE_COLUMNS.split(','),
    turns.map(({ string, pass, liftBefore, over }): Cell[] => [
      string.id,
      string.from.id,
      string.to.id,
      pass.number,
      ...stakeCells(string.from),
      ...stakeCells(string.to),
      string.side,
      string.middleFt.ft,
      string.middleFt.text,
      feetToInches(string.middleFt.ft - halfFt),
      liftBefore,
      over,
    ]),
  );

const stakeCells = ({ edge, along, at }: GuideStake): Cell[] => [
  edge,
  along.ft,
  along.text,
  at.x,
  at.y,
];

/** One row per mark of each edge in the order of the tape; the header alone without bands. */
export const edgesCsv = (tables: readonly EdgeTable[]): string =>
  writeCsv(
    EDGE_COLUMNS.split(','),
    tables.flatMap(({ edge, marks }) =>
      marks.map((mark, i) => [
        edge,
        i + 1,
        mark.name,
        mark.kind,
        mark.along.ft,
        mark.along.text,
        mark.at.x,
        mark.at.y,
      ]),
    ),
  );
