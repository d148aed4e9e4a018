/** `controls.csv`, `stakes.csv`, `outline.csv`, `guides.csv`: all that a crew needs to set out. */
import { semiMajor95 } from '../adjust/ellipse';
import type { Control } from '../field/model';
import type { OutlinePiece, Stake, StakePlan } from '../stakeout/model';
import { writeCsv, type Cell } from './csv';

const CONTROL_COLUMNS = 'id,name,touch,kind,x_ft,y_ft,sigma_in,semi_major_95_in';
const STAKE_COLUMNS =
  'stake,kind,round,method,x_ft,y_ft,tie1_from,tie1_ft,tie1_text,tie2_from,tie2_ft,tie2_text,' +
  'side,check_from,check_ft,check_text,check_limit_in,intersection_deg,semi_major_95_in';
const OUTLINE_COLUMNS =
  'graphic,contour,seq,kind,from_stake,to_stake,pin_stake,radius_ft,radius_text,sweep';
const GUIDE_COLUMNS = 'guide,from_stake,to_stake,pass';

const header = (columns: string): string[] => columns.split(',');

/** One row per control: feet, precision in inches. */
export function controlsCsv(controls: readonly Control[]): string {
  return writeCsv(
    header(CONTROL_COLUMNS),
    controls.map((c) => [
      c.id,
      c.name,
      c.touch,
      c.kind,
      c.at.x,
      c.at.y,
      Math.sqrt((c.covariance.xx + c.covariance.yy) / 2),
      semiMajor95(c.covariance),
    ]),
  );
}

/** One row per stake in setting order; the header alone without a graphic. */
export function stakesCsv(plan: StakePlan | null): string {
  return writeCsv(header(STAKE_COLUMNS), plan?.stakes.map(stakeRow) ?? []);
}

function stakeRow(s: Stake): Cell[] {
  const { set, check } = s;
  const second = set.method === 'ties' ? set.tie2 : null;
  return [
    s.id,
    s.kind,
    s.round,
    set.method,
    s.at.x,
    s.at.y,
    set.tie1.from,
    set.tie1.reading.ft,
    set.tie1.reading.text,
    set.method === 'ties' ? set.tie2.from : set.lineTo,
    second?.reading.ft ?? null,
    second?.reading.text ?? null,
    set.side,
    check.from,
    check.reading.ft,
    check.reading.text,
    check.limitIn,
    set.method === 'ties' ? set.intersectionDeg : null,
    s.semiMajor95In,
  ];
}

/** One row per string, swing or circle, head to tail; the header alone without a graphic. */
export function outlineCsv(plan: StakePlan | null): string {
  const rows = (plan?.contours ?? []).flatMap((contour) =>
    contour.pieces.map((piece, i) => [
      contour.graphic,
      contour.contour,
      i + 1,
      ...pieceCells(piece),
    ]),
  );
  return writeCsv(header(OUTLINE_COLUMNS), rows);
}

function pieceCells(piece: OutlinePiece): Cell[] {
  switch (piece.kind) {
    case 'string':
      return ['string', piece.from, piece.to, null, null, null, null];
    case 'swing':
      return [
        'swing',
        piece.from,
        piece.to,
        piece.pin,
        piece.radius.ft,
        piece.radius.text,
        piece.sweep,
      ];
    case 'circle':
      return ['circle', null, null, piece.pin, piece.radius.ft, piece.radius.text, 'ccw'];
  }
}

/** The header alone until a plan has strung passes: the file is always there. */
export function guidesCsv(): string {
  return writeCsv(header(GUIDE_COLUMNS), []);
}
