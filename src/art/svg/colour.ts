/** Paints: what matters on grass is whether a shape is drawn, and whether it is dark or white. */

/** How a shape's inside or line is painted. */
export interface Paint {
  /** `none`: not drawn. `white`: cuts what lies below. `dark`: any other colour, drawn. */
  readonly tone: 'none' | 'dark' | 'white';
  /** Opacity of the colour itself, 0 to 1. */
  readonly alpha: number;
  /** The paint is a gradient or a pattern, by the name that it is kept under. */
  readonly server: string | null;
}

/** Every channel at least this (of 255) reads as white. */
const WHITE_FROM = 230;

const NONE: Paint = { tone: 'none', alpha: 1, server: null };

/**
 * Reads `fill` or `stroke`; `current` is the value of `color`. Null when it is no paint at all. A
 * paint server, `url(#name)`, counts as dark.
 */
export function readPaint(text: string, current: string): Paint | null {
  const value = text.trim();
  const server = /^url\(\s*(['"]?)([^'")]*)\1\s*\)\s*(.*)$/i.exec(value);
  if (server) return { tone: 'dark', alpha: 1, server: server[2]!.trim() };
  const lower = value.toLowerCase();
  if (lower === 'none' || lower === 'transparent') return NONE;
  if (lower === 'context-fill' || lower === 'context-stroke') return NONE;
  const rgba = readColour(lower === 'currentcolor' ? current.trim().toLowerCase() : lower);
  if (!rgba) return null;
  const [red, green, blue, alpha] = rgba;
  const white = Math.min(red, green, blue) >= WHITE_FROM;
  return { tone: white ? 'white' : 'dark', alpha, server: null };
}

type Rgba = readonly [number, number, number, number];

function readColour(text: string): Rgba | null {
  if (text.startsWith('#')) return readHex(text.slice(1));
  if (/^(rgb|hsl)a?\(/.test(text)) return readFunction(text);
  if (WHITE_NAMES.has(text)) return [255, 255, 255, 1];
  if (text === 'transparent') return [0, 0, 0, 0];
  if (text === 'currentcolor') return [0, 0, 0, 1];
  return DARK_NAMES.has(text) ? [0, 0, 0, 1] : null;
}

function readHex(digits: string): Rgba | null {
  if (!/^([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/.test(digits)) return null;
  const long = digits.length <= 4 ? [...digits].map((d) => d + d).join('') : digits;
  const at = (i: number): number => parseInt(long.slice(2 * i, 2 * i + 2), 16);
  return [at(0), at(1), at(2), long.length === 8 ? at(3) / 255 : 1];
}

function readFunction(text: string): Rgba | null {
  const match = /^(rgb|hsl)a?\(([^()]*)\)$/.exec(text);
  const parts = match?.[2]!
    .trim()
    .split(/[\s,/]+/)
    .filter(Boolean);
  if (!match || !parts || parts.length < 3 || parts.length > 4) return null;
  const alpha = parts[3] === undefined ? 1 : share(parts[3], 1);
  const rgb = match[1] === 'rgb' ? parts.slice(0, 3).map((p) => share(p, 255) * 255) : hsl(parts);
  const all = [...rgb, alpha];
  return all.every(Number.isFinite) ? (all as unknown as Rgba) : null;
}

/** A number out of `whole`, or a percentage, as 0 to 1; NaN when it is neither. */
function share(text: string, whole: number): number {
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(%?)$/.exec(text);
  if (!match) return NaN;
  const value = Number(match[1]) / (match[2] === '%' ? 100 : whole);
  return Math.min(1, Math.max(0, value));
}

/** CSS Color 3, 4.2.4. */
function hsl(parts: readonly string[]): number[] {
  const hue = Number(parts[0]!.replace(/deg$/, ''));
  const saturation = share(parts[1]!, 100);
  const lightness = share(parts[2]!, 100);
  const reach = saturation * Math.min(lightness, 1 - lightness);
  return [0, 8, 4].map((offset) => {
    const k = (((offset + hue / 30) % 12) + 12) % 12;
    return 255 * (lightness - reach * Math.max(-1, Math.min(k - 3, 9 - k, 1)));
  });
}

/** Colour names of CSS Color 3, 4.3, whose channels are all at least `WHITE_FROM`. */
const WHITE_NAMES: ReadonlySet<string> = new Set(
  (
    'white snow ivory floralwhite ghostwhite mintcream azure whitesmoke seashell aliceblue ' +
    'oldlace linen lavender lavenderblush honeydew'
  ).split(' '),
);

/** The other names of CSS Color 3, 4.3. */
const DARK_NAMES: ReadonlySet<string> = new Set(
  (
    'antiquewhite aqua aquamarine beige bisque black blanchedalmond blue blueviolet brown ' +
    'burlywood cadetblue chartreuse chocolate coral cornflowerblue cornsilk crimson cyan darkblue ' +
    'darkcyan darkgoldenrod darkgray darkgreen darkgrey darkkhaki darkmagenta darkolivegreen ' +
    'darkorange darkorchid darkred darksalmon darkseagreen darkslateblue darkslategray ' +
    'darkslategrey darkturquoise darkviolet deeppink deepskyblue dimgray dimgrey dodgerblue ' +
    'firebrick forestgreen fuchsia gainsboro gold goldenrod gray grey green greenyellow hotpink ' +
    'indianred indigo khaki lawngreen lemonchiffon lightblue lightcoral lightcyan ' +
    'lightgoldenrodyellow lightgray lightgreen lightgrey lightpink lightsalmon lightseagreen ' +
    'lightskyblue lightslategray lightslategrey lightsteelblue lightyellow lime limegreen ' +
    'magenta maroon mediumaquamarine mediumblue mediumorchid mediumpurple mediumseagreen ' +
    'mediumslateblue mediumspringgreen mediumturquoise mediumvioletred midnightblue mistyrose ' +
    'moccasin navajowhite navy olive olivedrab orange orangered orchid palegoldenrod palegreen ' +
    'paleturquoise palevioletred papayawhip peachpuff peru pink plum powderblue purple red ' +
    'rebeccapurple rosybrown royalblue saddlebrown salmon sandybrown seagreen sienna silver ' +
    'skyblue slateblue slategray slategrey springgreen steelblue tan teal thistle tomato ' +
    'turquoise violet wheat yellow yellowgreen'
  ).split(' '),
);
