/** Comma-separated values as RFC 4180 has them: header row, CRLF, quotes where needed. */
export type Cell = string | number | null;

/** Rows under a header. Numbers keep full decimals; null is an empty field. */
export function writeCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [header, ...rows].map((row) => row.map(writeCell).join(',')).join('\r\n') + '\r\n';
}

function writeCell(cell: Cell): string {
  if (cell === null) return '';
  const text = typeof cell === 'number' ? writeNumber(cell) : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A plain decimal without an exponent; never `NaN` or `Infinity`, which no reader accepts. */
function writeNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a figure to be written is ${value}`);
  const text = String(value);
  return text.includes('e') ? value.toFixed(12) : text;
}
