/** Reads separated values as people save them: RFC 4180, or with semicolons or tabs, quotes at ease. */

export interface CsvLine {
  /** From 1, blank lines counted. */
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * Lines that are not blank, cells trimmed. The separator is the one that the first of them has most of.
 * A quote opens a cell only at its beginning, so that 148' 2 1/2" may stand bare.
 */
export function parseCsv(text: string): CsvLine[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  const separator = separatorOf(lines.find((l) => l.trim() !== '') ?? '');
  return lines.flatMap((l, i) =>
    l.split(separator).every((cell) => cell.trim() === '')
      ? []
      : [{ line: i + 1, cells: splitLine(l, separator) }],
  );
}

function separatorOf(header: string): string {
  const count = (mark: string) => header.split(mark).length;
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
}

function splitLine(line: string, separator: string): string[] {
  const cells: string[] = [];
  for (let at = 0; at <= line.length;) {
    const quoted = quotedCell(line, at, separator);
    const bareEnd = line.indexOf(separator, at);
    const end = quoted ? quoted.end : bareEnd < 0 ? line.length : bareEnd;
    cells.push((quoted ? quoted.text : line.slice(at, end)).trim());
    at = end + 1;
  }
  return cells;
}

/** A cell in quotes, two quotes inside meaning one; null when it does not open or close as such. */
function quotedCell(line: string, from: number, separator: string) {
  const start = from + (/^\s*/.exec(line.slice(from))?.[0].length ?? 0);
  if (line[start] !== '"') return null;
  for (let i = start + 1; i < line.length; i++) {
    if (line[i] !== '"') continue;
    if (line[i + 1] === '"') i++;
    else {
      const after = line.slice(i + 1).match(/^\s*/)![0].length + i + 1;
      if (after < line.length && line[after] !== separator) return null;
      return { text: line.slice(start + 1, i).replaceAll('""', '"'), end: after };
    }
  }
  return null;
}
