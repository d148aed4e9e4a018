/** Writes sheets as PDF. It only writes what the marks say; equal input gives equal bytes. */
import fontkit from '@pdf-lib/fontkit';
import {
  appendBezierCurve,
  beginText,
  clip,
  closePath,
  endPath,
  endText,
  fill,
  lineTo,
  moveTo,
  PDFDocument,
  PDFHexString,
  PDFOperator,
  PDFOperatorNames,
  popGraphicsState,
  pushGraphicsState,
  setDashPattern,
  setFillingGrayscaleColor,
  setFontAndSize,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingGrayscaleColor,
  setTextMatrix,
  showText,
  stroke,
  type PDFFont,
  type PDFName,
  type PDFPage,
} from 'pdf-lib';
import type { Point } from '../geometry/point';
import { FONT_FEATURES, FONT_NAMES, readFontMetrics, type SheetFonts } from './fonts';
import type { CircleMark, FontName, Mark, Sheet, Stroke, TextMark } from './marks';
import { boxRing } from './ink';

export interface PdfInfo {
  readonly title: string;
  /** ISO date written as the creation date; a fixed day when missing. */
  readonly created?: string;
}

const FIXED_DAY = '2000-01-01T00:00:00Z';

interface Writer {
  readonly height: number;
  readonly keys: Readonly<Record<FontName, PDFName>>;
  readonly encode: (text: string, font: FontName) => string;
  readonly width: (text: string, size: number, font: FontName) => number;
}

/**
 * PDF bytes of the sheets, fonts embedded as subsets. Promise of the caller: every character is in
 * its font (`composePacket` sees to it).
 */
export async function writePdf(
  sheets: readonly Sheet[],
  fonts: SheetFonts,
  info: PdfInfo,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.create({ updateMetadata: false });
  pdf.registerFontkit(fontkit);
  setInfo(pdf, info);
  const embedded = await embedFonts(pdf, fonts);
  const encode = cachedEncoder(embedded);
  const { width } = readFontMetrics(fonts);
  for (const sheet of sheets) {
    const page = pdf.addPage([sheet.width, sheet.height]);
    const writer = { height: sheet.height, keys: fontKeys(page, embedded), encode, width };
    page.pushOperators(...sheet.marks.flatMap((mark) => markOperators(writer, mark)));
  }
  return pdf.save();
}

function setInfo(pdf: PDFDocument, info: PdfInfo): void {
  const day = new Date(info.created ?? FIXED_DAY);
  pdf.setTitle(info.title, { showInWindowTitleBar: true });
  pdf.setProducer('Swathscribe');
  pdf.setCreator('Swathscribe');
  pdf.setLanguage('en-US');
  pdf.setCreationDate(day);
  pdf.setModificationDate(day);
}

async function embedFonts(pdf: PDFDocument, fonts: SheetFonts) {
  const options = { subset: true, features: FONT_FEATURES };
  return {
    regular: await pdf.embedFont(fonts.regular, options),
    bold: await pdf.embedFont(fonts.bold, options),
    heading: await pdf.embedFont(fonts.heading, options),
  };
}

/** Without kerning and ligatures a text's code is its characters' codes one after another. */
function cachedEncoder(fonts: Readonly<Record<FontName, PDFFont>>): Writer['encode'] {
  const codes = new Map<string, string>();
  const one = (character: string, font: FontName): string => {
    const key = `${font} ${character}`;
    const found = codes.get(key);
    if (found !== undefined) return found;
    const code = fonts[font].encodeText(character).asString();
    codes.set(key, code);
    return code;
  };
  return (text, font) => [...text].map((character) => one(character, font)).join('');
}

function fontKeys(page: PDFPage, fonts: Readonly<Record<FontName, PDFFont>>) {
  const [regular, bold, heading] = FONT_NAMES.map((name) =>
    page.node.newFontDictionary(fonts[name].name, fonts[name].ref),
  );
  return { regular: regular!, bold: bold!, heading: heading! };
}

function markOperators(w: Writer, mark: Mark): PDFOperator[] {
  if (mark.kind === 'text') return textOperators(w, mark);
  if (mark.kind === 'polyline') {
    const path = ringOperators(w, mark.points, mark.closed);
    return wrapped([...strokeOperators(mark.stroke), ...path, stroke()]);
  }
  if (mark.kind === 'fill') {
    const paths = mark.rings.flatMap((ring) => ringOperators(w, ring, true));
    const evenOdd = PDFOperator.of(PDFOperatorNames.FillEvenOdd);
    return wrapped([setFillingGrayscaleColor(mark.grey), ...paths, evenOdd]);
  }
  if (mark.kind === 'circle') return circleOperators(w, mark);
  const edge = ringOperators(w, boxRing(mark.clip), true);
  const inner = mark.marks.flatMap((m) => markOperators(w, m));
  return wrapped([...edge, clip(), endPath(), ...inner]);
}

const wrapped = (operators: PDFOperator[]): PDFOperator[] => [
  pushGraphicsState(),
  ...operators,
  popGraphicsState(),
];

/** A hundredth of a point is 0.0035 mm: finer than any printer, and short in the file. */
const round = (value: number): number => Math.round(value * 100) / 100;

function textOperators(w: Writer, mark: TextMark): PDFOperator[] {
  const share = mark.align === 'left' ? 0 : mark.align === 'right' ? 1 : 0.5;
  const x = mark.at.x - share * w.width(mark.text, mark.size, mark.font);
  return [
    beginText(),
    setFillingGrayscaleColor(mark.grey),
    setFontAndSize(w.keys[mark.font], round(mark.size)),
    setTextMatrix(1, 0, 0, 1, round(x), round(w.height - mark.at.y)),
    showText(PDFHexString.of(w.encode(mark.text, mark.font))),
    endText(),
  ];
}

function strokeOperators(s: Stroke): PDFOperator[] {
  const dash = s.dash ? [setDashPattern([...s.dash], 0)] : [];
  return [
    setLineWidth(round(s.width)),
    setStrokingGrayscaleColor(s.grey),
    setLineJoin(1),
    setLineCap(s.dash ? 0 : 1),
    ...dash,
  ];
}

function ringOperators(w: Writer, points: readonly Point[], closed: boolean): PDFOperator[] {
  const path = points.map((p, i) => (i === 0 ? moveTo : lineTo)(round(p.x), round(w.height - p.y)));
  return closed ? [...path, closePath()] : path;
}

/** Four Bezier quarters; 0.5523 keeps within 0.03 % of the radius (common practice). */
const QUARTER = 0.5523;

function circleOperators(w: Writer, mark: CircleMark): PDFOperator[] {
  const { radius: r } = mark;
  const x = mark.centre.x;
  const y = w.height - mark.centre.y;
  const k = r * QUARTER;
  const bezier = (...n: [number, number, number, number, number, number]) =>
    appendBezierCurve(...(n.map(round) as typeof n));
  const path = [
    moveTo(round(x + r), round(y)),
    bezier(x + r, y + k, x + k, y + r, x, y + r),
    bezier(x - k, y + r, x - r, y + k, x - r, y),
    bezier(x - r, y - k, x - k, y - r, x, y - r),
    bezier(x + k, y - r, x + r, y - k, x + r, y),
    closePath(),
  ];
  const inside = mark.fill === null ? [] : [setFillingGrayscaleColor(mark.fill), ...path, fill()];
  const edge = mark.stroke === null ? [] : [...strokeOperators(mark.stroke), ...path, stroke()];
  return wrapped([...inside, ...edge]);
}
