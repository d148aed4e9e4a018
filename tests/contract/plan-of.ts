/** Plans made once per test file: a demo by name, or a word in a bundled font. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import type { Assets } from '../../src/art/model';
import { seededRandom } from '../../src/base/random';
import type { Result } from '../../src/base/result';
import { engine } from '../../src/engine/api';
import { controlsCsv, outlineCsv, stakesCsv } from '../../src/exchange/stake-files';
import type { Region } from '../../src/geometry/region';
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

export function assetsOf(project: Project): Assets {
  const source = project.art?.source;
  const fonts = source?.kind === 'text' ? { [source.font]: fontBytes(source.font) } : {};
  const files =
    source?.kind === 'svg' ? { [source.file]: readFileSync(join(DEMOS, source.file), 'utf8') } : {};
  return { fonts, files };
}

function take<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.problems.map((p) => `${p.code} ${p.where} ${p.what}`).join('; '));
}

const planned = new Map<string, Plan>();

/** Equal projects give equal plans: each is planned once, and shared between test files. */
export function planOf(project: Project): Plan {
  const key = JSON.stringify(project);
  const plan = planned.get(key) ?? take(engine.makePlan(project, assetsOf(project)));
  planned.set(key, plan);
  return plan;
}

const packets = new Map<Plan, Promise<Uint8Array>>();

/** The packet of a plan made here, written once. */
export function packetOf(plan: Plan): Promise<Uint8Array> {
  const packet = packets.get(plan) ?? engine.makePacket(plan, sheetFonts());
  packets.set(plan, packet);
  return packet;
}

/** The stake files and the art. */
export function stakeFilesOf(project: Project): {
  readonly files: Readonly<Record<string, string>>;
  readonly graphic: Region;
} {
  const { stakes, design } = planOf(project);
  const files = {
    'controls.csv': controlsCsv(stakes!.controls),
    'stakes.csv': stakesCsv(stakes),
    'outline.csv': outlineCsv(stakes),
  };
  return { files, graphic: design.graphic };
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

/** Six words in two scripts, drawn by seed from ordinary words of the season. */
export function drawnWords(): [string, string, number][] {
  const words = [
    'Harvest',
    'Meadow',
    'Thunder',
    'Rivals',
    'Seniors',
    'Opener',
    'Sunday',
    'Welcome',
  ];
  const random = seededRandom(90);
  const scripts = ['pacifico', 'kaushan-script'] as const;
  return scripts.flatMap((font) =>
    Array.from({ length: 3 }, (): [string, string, number] => [
      words.splice(random.integer(words.length), 1)[0]!,
      font,
      130 + random.integer(40),
    ]),
  );
}
