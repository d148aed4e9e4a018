/** Where broken JSON breaks (RFC 8259), the same on every platform: engines word it differently. */

export interface JsonError {
  /** From 1. */
  readonly line: number;
  readonly column: number;
  readonly what: string;
}

/** Deeper nesting than any project has; keeps the reader's own stack safe. */
const DEEPEST = 200;

/** The first place where `text` is not JSON, or null when it is. */
export function locateJsonError(text: string): JsonError | null {
  const at = skipSpace(text, 0);
  const end = readValue(text, at, 0);
  const broken = typeof end === 'number' ? afterValue(text, end) : end;
  return broken && { ...position(text, broken.at), what: broken.what };
}

interface Broken {
  readonly at: number;
  readonly what: string;
}
/** The index behind what was read, or where it breaks. */
type Read = number | Broken;

const broken = (at: number, what: string): Broken => ({ at, what });

function afterValue(text: string, end: number): Broken | null {
  const at = skipSpace(text, end);
  return at < text.length ? broken(at, 'more text follows the end') : null;
}

function position(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  return { line: before.length, column: before[before.length - 1]!.length + 1 };
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && ' \t\r\n'.includes(text[at]!)) at++;
  return at;
}

function readValue(text: string, at: number, depth: number): Read {
  if (depth > DEEPEST) return broken(at, 'the nesting is too deep');
  const start = text[at];
  if (start === undefined) return broken(at, 'the text ends too early');
  if (start === '{') return readList(text, at, depth, '}', readEntry);
  if (start === '[') return readList(text, at, depth, ']', readValue);
  if (start === '"') return readString(text, at);
  return readPlain(text, at);
}

/** A group or a list: items with commas between them, up to `close`. */
function readList(
  text: string,
  open: number,
  depth: number,
  close: string,
  readItem: (text: string, at: number, depth: number) => Read,
): Read {
  let at = skipSpace(text, open + 1);
  if (text[at] === close) return at + 1;
  for (;;) {
    const end = readItem(text, at, depth + 1);
    if (typeof end !== 'number') return end;
    at = skipSpace(text, end);
    if (text[at] === close) return at + 1;
    if (text[at] !== ',') return broken(at, missing(text, at, `a comma or ${close}`));
    at = skipSpace(text, at + 1);
  }
}

function readEntry(text: string, at: number, depth: number): Read {
  if (text[at] !== '"') return broken(at, missing(text, at, 'a key in double quotes'));
  const key = readString(text, at);
  if (typeof key !== 'number') return key;
  const colon = skipSpace(text, key);
  if (text[colon] !== ':') return broken(colon, missing(text, colon, 'a colon'));
  return readValue(text, skipSpace(text, colon + 1), depth);
}

const missing = (text: string, at: number, wanted: string): string =>
  at >= text.length ? 'the text ends too early' : `${wanted} is missing`;

const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

function readString(text: string, open: number): Read {
  let at = open + 1;
  while (at < text.length) {
    const c = text[at]!;
    if (c === '"') return at + 1;
    if (c < ' ') return broken(at, 'a text in quotes runs over the end of its line');
    if (c !== '\\') {
      at++;
      continue;
    }
    ESCAPE.lastIndex = at;
    const escape = ESCAPE.exec(text);
    if (!escape) return broken(at, 'a backslash stands before something it cannot stand before');
    at += escape[0].length;
  }
  return broken(open, 'a text in quotes has no end');
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

function readPlain(text: string, at: number): Read {
  for (const name of ['true', 'false', 'null']) {
    if (text.startsWith(name, at)) return at + name.length;
  }
  NUMBER.lastIndex = at;
  const number = NUMBER.exec(text);
  return number ? at + number[0].length : broken(at, 'a value is missing or is not one of JSON’s');
}
