/** The measured tables of docs/proof.md: compared with what was measured now, or written anew. */
import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { format } from 'prettier';

const PATH = resolve(import.meta.dirname, '../../docs/proof.md');

export type Cell = string | number;

export interface Table {
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

const line = (cells: readonly Cell[]): string => `| ${cells.join(' | ')} |`;

const textOf = ({ head, rows }: Table): string =>
  [line(head), line(head.map((_, i) => (i === 0 ? '---' : '---:'))), ...rows.map(line)].join('\n');

/** What stands between the marks of `name`. */
const between = (doc: string, name: string): RegExpExecArray => {
  const found = new RegExp(`(<!-- measured: ${name} -->\n)([^]*?)(\n<!-- end -->)`).exec(doc);
  if (!found) throw new Error(`docs/proof.md has no table ${name}`);
  return found;
};

/**
 * With PROOF_WRITE=1 in the environment the table is written. Else: the largest difference between a
 * figure there and now, 0 when equal; Infinity when words or rows differ.
 */
export async function holdTable(name: string, table: Table): Promise<number> {
  const doc = readFileSync(PATH, 'utf8');
  const [whole, open, , close] = between(doc, name);
  if (process.env['PROOF_WRITE'] === '1') {
    const next = doc.replace(whole, () => `${open}\n${textOf(table)}\n${close}`);
    writeFileSync(PATH, await format(next, { parser: 'markdown', printWidth: 100 }));
    return 0;
  }
  const now = await format(textOf(table), { parser: 'markdown' });
  return difference(cellsOf(between(doc, name)[2]!), cellsOf(now));
}

const cellsOf = (text: string): string[] =>
  text
    .split('\n')
    .filter((l) => l.startsWith('|') && !/^[|\s:-]+$/.test(l))
    .flatMap((l) => l.split('|').slice(1, -1))
    .map((c) => c.trim());

function difference(then: readonly string[], now: readonly string[]): number {
  if (then.length !== now.length) return Infinity;
  return then.reduce((most, cell, i) => {
    const [a, b] = [Number(cell.replace('−', '-')), Number(now[i]!.replace('−', '-'))];
    if (Number.isNaN(a) || Number.isNaN(b)) return cell === now[i] ? most : Infinity;
    return Math.max(most, Math.abs(a - b));
  }, 0);
}

/** A share as per cent with one decimal. */
export const percent = (share: number): string => (100 * share).toFixed(1);
