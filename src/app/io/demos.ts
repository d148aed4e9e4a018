/** The demo projects that come with the app, with the drawings that they name. */
const texts = import.meta.glob<string>('../../../demo-data/*.{json,svg}', {
  query: '?raw',
  import: 'default',
});

export const DEMOS = [
  { id: 'word', name: 'Lanterns, a word in script', file: 'lanterns-word.json' },
  { id: 'emblem', name: 'Lantern, an emblem from a drawing', file: 'lantern-emblem.json' },
] as const;

export type DemoId = (typeof DEMOS)[number]['id'];

const load = (file: string): Promise<string> | undefined => texts[`../../../demo-data/${file}`]?.();

export const demoText = (id: DemoId): Promise<string> | undefined => {
  const demo = DEMOS.find((d) => d.id === id);
  return demo && load(demo.file);
};

/** Every drawing that comes with the demos, by file name. */
export async function demoDrawings(): Promise<Record<string, string>> {
  const out: Record<string, string> = {};
  for (const [path, read] of Object.entries(texts)) {
    if (path.endsWith('.svg')) out[path.slice(path.lastIndexOf('/') + 1)] = await read();
  }
  return out;
}
