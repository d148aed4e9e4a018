/** From an element's style to the brushes that paint it: fill and stroke, in paint order. */
import { readPaint, type Paint } from './colour';
import { describe, type SvgElement } from './element';
import { readLength, readNumber, readNumbers } from './numbers';
import type { Brush } from './paint-item';
import type { Report } from './report';
import { wholeOf, type Extent } from './shapes';
import type { Pen } from './stroke';
import type { Property, Style } from './style';

/** A brush with its tone, ready to paint. */
export interface TonedBrush {
  readonly brush: Brush;
  readonly tone: 'dark' | 'white';
}

/** The brushes of a shape, first painted first; `seen` is the opacity of the groups round it. */
export function brushesOf(
  element: SvgElement,
  style: Style,
  extent: Extent,
  seen: number,
  report: Report,
): TonedBrush[] {
  const toned = (which: 'fill' | 'stroke'): TonedBrush[] => {
    const tone = toneOf(element, style, which, seen, report);
    const brush = tone === 'none' ? null : brushOf(element, style, which, extent, report);
    return brush && tone !== 'none' ? [{ brush, tone }] : [];
  };
  const order = strokeFirst(style) ? (['stroke', 'fill'] as const) : (['fill', 'stroke'] as const);
  return order.flatMap(toned);
}

const strokeFirst = (style: Style): boolean => {
  const order = style['paint-order'];
  const stroke = order.indexOf('stroke');
  const fill = order.indexOf('fill');
  return stroke >= 0 && (fill < 0 || stroke < fill);
};

function toneOf(
  element: SvgElement,
  style: Style,
  which: 'fill' | 'stroke',
  seen: number,
  report: Report,
): Paint['tone'] {
  const paint = readPaint(style[which], style.color);
  if (!paint || paint.tone === 'none') return 'none';
  const opacity = seen * paint.alpha * readOpacity(style[`${which}-opacity`]);
  if (opacity === 0) return 'none';
  const { line } = element;
  if (paint.server !== null) reportServer(paint.server, which, element, report);
  if (opacity < 1) report.add('svg-translucent', describe(element), line);
  return paint.tone;
}

function reportServer(server: string, which: string, element: SvgElement, report: Report): void {
  const subject = `${which} "${server.slice(0, 60)}" on ${describe(element)}`;
  report.add(server.startsWith('#') ? 'svg-gradient' : 'svg-external', subject, element.line);
}

/** 0 to 1, from a number or a percentage. */
export function readOpacity(text: string): number {
  const value = readLength(text.replace(/\s+/g, ''), 1);
  return value === null ? 1 : Math.min(1, Math.max(0, value));
}

function brushOf(
  element: SvgElement,
  style: Style,
  which: 'fill' | 'stroke',
  extent: Extent,
  report: Report,
): Brush | null {
  if (which === 'fill') {
    return { kind: 'fill', rule: style['fill-rule'] === 'evenodd' ? 'even-odd' : 'non-zero' };
  }
  const pen = penOf(style, extent);
  if (pen.width > 0) return { kind: 'stroke', pen };
  report.add('svg-hairline', describe(element), element.line);
  return null;
}

function penOf(style: Style, extent: Extent): Pen {
  const whole = wholeOf('both', extent);
  const cap = style['stroke-linecap'];
  const join = style['stroke-linejoin'];
  return {
    width: readLength(style['stroke-width'], whole) ?? 1,
    cap: cap === 'round' || cap === 'square' ? cap : 'butt',
    join: join === 'round' || join === 'bevel' ? join : 'miter',
    miterLimit: Math.max(1, readNumber(style['stroke-miterlimit']) ?? 4),
    dashes: readDashes(style['stroke-dasharray'], whole),
    dashOffset: readLength(style['stroke-dashoffset'], whole) ?? 0,
  };
}

/** On and off lengths, repeated when odd in number; none when any is negative or all are zero. */
function readDashes(text: string, whole: number): number[] {
  if (text === 'none') return [];
  const parts = text.split(/[\s,]+/).filter((part) => part !== '');
  const values = parts.map((part) => readLength(part, whole) ?? -1);
  if (values.some((v) => v < 0) || values.every((v) => v === 0)) return [];
  return values.length % 2 === 0 ? values : [...values, ...values];
}

/** Whether a value of a property can be used; others are skipped, so that inheritance goes on. */
export function isUsable(property: Property, value: string): boolean {
  if (/^(inherit|initial|unset)$/.test(value)) return true;
  switch (property) {
    case 'fill':
    case 'stroke':
      return readPaint(value, 'black') !== null;
    case 'stroke-width':
      return (readLength(value, 1) ?? -1) >= 0;
    case 'stroke-dashoffset':
      return readLength(value, 1) !== null;
    case 'stroke-miterlimit':
      return (readNumber(value) ?? 0) >= 1;
    case 'stroke-dasharray':
      return value === 'none' || readNumbers(value.replace(/[a-z%]+/gi, ' ')) !== null;
    case 'opacity':
    case 'fill-opacity':
    case 'stroke-opacity':
      return readLength(value, 1) !== null;
    default:
      return value !== '';
  }
}
