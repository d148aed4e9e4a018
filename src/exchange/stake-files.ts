/** `controls.csv`, `stakes.csv`, `outline.csv`: all that a crew needs to set out. */
import { ELLIPSE_FACTOR_95, semiMajor95, standardEllipse } from '../adjust/ellipse';
import { toDegrees } from '../base/units';
import type { Control } from '../field/model';
import type { OutlinePiece, Stake, StakePlan } from '../stakeout/model';
import { methodControls } from '../stakeout/ties';
import { writeCsv, type Cell } from './csv';

const CONTROL_COLUMNS = 'id,name,touch,kind,x_ft,y_ft,sigma_in,semi_major_95_in';
const STAKE_COLUMNS =
  'stake,kind,round,method,x_ft,y_ft,tie1_from,tie1_ft,tie1_text,tie2_from,tie2_ft,tie2_text,' +
  'side,check_from,check_ft,check_text,check_limit_in,intersection_deg,semi_major_95_in,' +
  'offset_ft,offset_text,tie1_tape,tie2_tape,check_tape,semi_minor_95_in,major_bearing_deg';
const OUTLINE_COLUMNS =
  'graphic,contour,seq,kind,from_stake,to_stake,pin_stake,radius_ft,radius_text,sweep,' +
  'offset_ft,offset_text,side';

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
  const [from, to] = methodControls(set);
  const first = set.method === 'chord' ? null : set.tie1.reading;
  const second = set.method === 'ties' ? set.tie2.reading : null;
  const offset = set.method === 'offset' || set.method === 'chord' ? set.offset : null;
  return [
    s.id,
    s.kind,
    s.round,
    set.method,
    s.at.x,
    s.at.y,
    from,
    first?.ft ?? null,
    first?.text ?? null,
    to,
    second?.ft ?? null,
    second?.text ?? null,
    set.side,
    check.from,
    check.reading.ft,
    check.reading.text,
    check.limitIn,
    set.method === 'ties' ? set.intersectionDeg : null,
    s.semiMajor95In,
    offset?.ft ?? null,
    offset?.text ?? null,
    (set.method === 'chord' ? null : set.tie1.tape) ?? null,
    (set.method === 'ties' ? set.tie2.tape : null) ?? null,
    check.tape ?? null,
    ...ellipseCells(s.covariance),
  ];
}

/** Short half-axis of the 95 % ellipse, inches; where its long one points, 0 to 180 clockwise from +y. */
function ellipseCells(covariance: Stake['covariance']): Cell[] {
  const { semiMinor, angle } = standardEllipse(covariance);
  return [semiMinor * ELLIPSE_FACTOR_95, (450 - toDegrees(angle)) % 180];
}

/** One row per string, swing, bend or circle, head to tail; the header alone without a graphic. */
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
  const none = [null, null, null];
  switch (piece.kind) {
    case 'string':
      return ['string', piece.from, piece.to, null, null, null, null, ...none];
    case 'swing':
      return [
        'swing',
        piece.from,
        piece.to,
        piece.pin,
        piece.radius.ft,
        piece.radius.text,
        piece.sweep,
        ...none,
      ];
    case 'bend':
      return [
        'bend',
        piece.from,
        piece.to,
        null,
        null,
        null,
        null,
        piece.offset.ft,
        piece.offset.text,
        piece.side,
      ];
    case 'circle':
      return ['circle', null, null, piece.pin, piece.radius.ft, piece.radius.text, 'ccw', ...none];
  }
}
