/** A job as its files have it: controls.csv, stakes.csv, outline.csv, design.json, summary.json. */
import type { JobSheet, Method, SetRow } from '../support/field-crew';
import { parseCsv, readingFeet, type Xy } from '../support/stranger';

export type Files = Readonly<Record<string, string>>;

/** 95 % ellipse of one stake about its place; inches, degrees clockwise from +y. */
export interface PrintedEllipse {
  readonly x: number;
  readonly y: number;
  readonly semiMajorIn: number;
  readonly semiMinorIn: number;
  readonly bearingDeg: number;
}

interface SummaryFigures {
  readonly tolerance_in: number;
  readonly square_sigma_deg: number;
  readonly tapes: readonly {
    readonly reading_sigma_in: number;
    readonly proportional: number;
    readonly scale_sigma: number;
  }[];
}

export const summaryOf = (files: Files): SummaryFigures =>
  JSON.parse(files['summary.json']!) as SummaryFigures;

export function readJob(files: Files): JobSheet {
  const summary = summaryOf(files);
  return {
    fixed: parseCsv(files['controls.csv']!)
      .filter((c) => c['kind'] === 'fixed')
      .map((c) => ({
        id: c['id']!,
        x: Number(c['x_ft']),
        y: Number(c['y_ft']),
        sigmaIn: Number(c['sigma_in']),
      })),
    rows: parseCsv(files['stakes.csv']!).map(setRow),
    ...errorsOf(files),
    squareDeg: summary.square_sigma_deg,
  };
}

/** The errors of taping, which are the world's and not on the crew's list. */
export function errorsOf(files: Files): Pick<JobSheet, 'tapes' | 'squareDeg'> {
  const { tapes, square_sigma_deg } = summaryOf(files);
  return {
    tapes: tapes.map((t) => ({
      readingIn: t.reading_sigma_in,
      proportional: t.proportional,
      scale: t.scale_sigma,
    })),
    squareDeg: square_sigma_deg,
  };
}

const feet = (text: string | undefined): number => (text ? readingFeet(text) : 0);
const tapeNumber = (text: string | undefined): number => (text ? Number(text) - 1 : 0);

function setRow(r: Record<string, string>): SetRow {
  return {
    stake: r['stake']!,
    kind: r['kind']!,
    method: r['method'] as Method,
    from1: r['tie1_from']!,
    from2: r['tie2_from']!,
    first: feet(r['tie1_text']),
    second: feet(r['tie2_text']),
    offset: feet(r['offset_text']),
    side: r['side']!,
    checkFrom: r['check_from']!,
    check: feet(r['check_text']),
    limitIn: Number(r['check_limit_in']),
    tape1: tapeNumber(r['tie1_tape']),
    tape2: tapeNumber(r['tie2_tape']),
    checkTape: tapeNumber(r['check_tape']),
  };
}

/** Where the file puts each stake and how well, in the order of its rows. */
export const ellipsesOf = (files: Files): readonly PrintedEllipse[] =>
  parseCsv(files['stakes.csv']!).map((r) => ({
    x: Number(r['x_ft']),
    y: Number(r['y_ft']),
    semiMajorIn: Number(r['semi_major_95_in']),
    semiMinorIn: Number(r['semi_minor_95_in']),
    bearingDeg: Number(r['major_bearing_deg']),
  }));

/** The true art. */
export function artOf(files: Files): readonly (readonly Xy[])[] {
  const design = JSON.parse(files['design.json']!) as {
    readonly graphics: readonly { readonly rings: readonly (readonly Xy[])[] }[];
  };
  return design.graphics.flatMap((g) => g.rings);
}
