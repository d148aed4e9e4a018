/** What the reader had to leave out or change, gathered while a drawing is read. */
import { problem, type Problem, type Severity } from '../../base/result';

interface Remark {
  readonly severity: Severity;
  /** What was done, after the subject: `<text> was left out`. */
  readonly done: string;
  readonly fix: string;
}

const remark = (severity: Severity, done: string, fix: string): Remark => ({ severity, done, fix });

/** Every remark by its code: one place to see what is not honoured, and what is done instead. */
export const REMARKS = {
  'svg-text': remark(
    'warning',
    'was left out: lettering needs its font',
    'turn the text into paths in the drawing program',
  ),
  'svg-image': remark(
    'warning',
    'was left out: pictures have no outlines, and none is fetched',
    'trace the picture into paths in the drawing program',
  ),
  'svg-external': remark(
    'warning',
    'was not fetched: it points outside the file',
    'copy what it points at into the file',
  ),
  'svg-script': remark(
    'warning',
    'was ignored: nothing in a drawing is run',
    'save the drawing as plain SVG',
  ),
  'svg-animation': remark(
    'warning',
    'was ignored: the drawing is taken at rest',
    'check that the drawing at rest is the one wanted',
  ),
  'svg-foreign': remark('warning', 'was left out: it is not a drawing', 'draw it with paths'),
  'svg-gradient': remark(
    'note',
    'was taken as solid',
    'nothing to do, unless part of it should stay open',
  ),
  'svg-clip': remark(
    'warning',
    'was ignored: the shape is drawn whole',
    'cut the shape in the drawing program (intersect)',
  ),
  'svg-mask': remark(
    'warning',
    'was ignored: the shape is drawn whole',
    'cut the shape in the drawing program (subtract)',
  ),
  'svg-filter': remark(
    'warning',
    'was ignored: the shape is drawn without it',
    'turn the effect into paths if it matters',
  ),
  'svg-marker': remark(
    'warning',
    'was left out',
    'turn arrow heads and other line marks into paths',
  ),
  'svg-style': remark(
    'warning',
    'was skipped: it cannot be followed',
    'use plain class, id or tag selectors, or attributes',
  ),
  'svg-colour': remark(
    'warning',
    'is not a colour and was ignored',
    'use a colour name, #rrggbb or rgb()',
  ),
  'svg-translucent': remark(
    'note',
    'is see-through and was taken as solid',
    'nothing to do: grass has no half tones',
  ),
  'svg-white': remark(
    'note',
    'is white and cuts what lies below it',
    'nothing to do, or delete the white shape to keep the ground whole',
  ),
  'svg-all-white': remark(
    'note',
    'has only white shapes, so these were taken as the graphic',
    'nothing to do',
  ),
  'svg-outside': remark(
    'note',
    'reaches outside the page and was cut at its edge',
    'make the page larger if the rest is wanted',
  ),
  'svg-transform': remark(
    'warning',
    'has a transform that cannot be read, so the shape was left out',
    'use matrix, translate, scale, rotate, skewX or skewY with numbers',
  ),
  'svg-number': remark(
    'warning',
    'has a number that cannot be read, so the shape was left out',
    'give plain numbers',
  ),
  'svg-path': remark(
    'warning',
    'has a mistake in its path and was drawn up to there',
    'save the drawing again from the drawing program',
  ),
  'svg-use-loop': remark(
    'warning',
    'uses itself and was left out',
    'break the loop: a symbol cannot contain itself',
  ),
  'svg-use-missing': remark(
    'warning',
    'uses something that is not in the file and was left out',
    'check the name after the #',
  ),
  'svg-viewbox': remark(
    'warning',
    'has a view box without size and was left out',
    'give it a width and a height',
  ),
  'svg-dashes': remark(
    'note',
    'has dashes too fine to count and was drawn solid',
    'use longer dashes',
  ),
  'svg-hairline': remark(
    'note',
    'has a line too thin to draw',
    'give the line a width, or delete it',
  ),
} as const satisfies Record<string, Remark>;

export type RemarkCode = keyof typeof REMARKS;

export interface Report {
  /** Notes that `subject`, on `line`, was dealt with as the code says. */
  add(code: RemarkCode, subject: string, line: number): void;
  /** One problem per code, at its first place, with how often it came up. */
  problems(): Problem[];
}

/** An empty report on `file`. */
export function createReport(file: string): Report {
  const seen = new Map<RemarkCode, { subject: string; line: number; count: number }>();
  return {
    add(code, subject, line) {
      const before = seen.get(code);
      if (before) before.count += 1;
      else seen.set(code, { subject, line, count: 1 });
    },
    problems: () =>
      [...seen].map(([code, { subject, line, count }]) => {
        const { severity, done, fix } = REMARKS[code];
        const often = count > 1 ? ` (first of ${count})` : '';
        return problem(code, place(file, line), `${subject} ${done}${often}`, fix, severity);
      }),
  };
}

/** `emblem.svg line 12`, or the file alone when the line is not known. */
export const place = (file: string, line: number): string =>
  line > 0 ? `${file} line ${line}` : file;
