/** Plans made once per test file: a demo by name, or a word in a bundled font. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { engine } from '../../src/engine/api';
import type { Plan } from '../../src/plan/model';
import type { Project } from '../../src/project/model';
import type { SheetFonts } from '../../src/sheets/fonts';

const require = createRequire(import.meta.url);
const DEMOS = resolve(import.meta.dirname, '../../demo-data');

const bytes = (specifier: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(specifier)));

export function fontBytes(id: string): Uint8Array {
  const font = FONT_CATALOGUE.find((f) => f.id === id)!;
  return bytes(`${font.package}/${font.file}`);
}

export const sheetFonts = (): SheetFonts => ({
  regular: bytes('@expo-google-fonts/archivo/500Medium/Archivo_500Medium.ttf'),
  bold: bytes('@expo-google-fonts/archivo/700Bold/Archivo_700Bold.ttf'),
  heading: bytes('@expo-google-fonts/besley/600SemiBold/Besley_600SemiBold.ttf'),
});

export function readDemo(file: string): Project {
  const read = engine.readProject(readFileSync(join(DEMOS, file), 'utf8'), file);
  if (!read.ok) throw new Error(read.problems.map((p) => p.what).join('; '));
  return read.value;
}

export function planOf(project: Project): Plan {
  const source = project.art?.source;
  const fonts = source?.kind === 'text' ? { [source.font]: fontBytes(source.font) } : {};
  const files =
    source?.kind === 'svg' ? { [source.file]: readFileSync(join(DEMOS, source.file), 'utf8') } : {};
  const plan = engine.makePlan(project, { fonts, files });
  if (!plan.ok)
    throw new Error(plan.problems.map((p) => `${p.code} ${p.where} ${p.what}`).join('; '));
  return plan.value;
}

/** The word demo with another word in another font. */
export function wordProject(text: string, font: string, widthFt: number): Project {
  const base = readDemo('lanterns-word.json');
  const art = base.art!;
  return {
    ...base,
    name: text,
    art: {
      source: { kind: 'text', text, font },
      placement: { ...art.placement, widthFt },
    },
  };
}

export function fileText(
  files: Readonly<Record<string, string | Uint8Array>>,
  name: string,
): string {
  const content = files[name];
  if (typeof content !== 'string') throw new Error(`${name} is not a text file of the plan`);
  return content;
}
