/** Text of a PDF as another program sees it: one string per baseline, left to right. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

interface Item {
  readonly str: string;
  readonly transform: readonly number[];
}

export async function readPdfLines(bytes: Uint8Array): Promise<string[][]> {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: string[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(linesOf(items.filter((item): item is typeof item & Item => 'str' in item)));
  }
  await pdf.destroy();
  return pages;
}

function linesOf(items: readonly Item[]): string[] {
  const rows = new Map<string, Item[]>();
  for (const item of items.filter((one) => one.str.trim() !== '')) {
    const key = item.transform[5]!.toFixed(1);
    rows.set(key, [...(rows.get(key) ?? []), item]);
  }
  return [...rows.entries()]
    .sort((a, b) => Number(b[0]) - Number(a[0]))
    .map(([, row]) =>
      [...row]
        .sort((a, b) => a.transform[4]! - b.transform[4]!)
        .map((item) => item.str.trim())
        .join(' ')
        .replace(/\s+/g, ' '),
    );
}
