/** Reads a project file and the fonts and drawings it names. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import { FONT_CATALOGUE } from '../art/fonts';
import type { Assets } from '../art/model';
import { fail, problem, succeed, type Result } from '../base/result';
import { engine } from '../engine/api';
import type { Project } from '../project/model';
import type { SheetFonts } from '../sheets/fonts';

const require = createRequire(import.meta.url);

const readPackageFile = (specifier: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(specifier)));

/** A text file, or a problem that names it. */
export function readText(path: string): Result<string> {
  const name = basename(path);
  if (!existsSync(path) || !statSync(path).isFile()) {
    return fail(
      problem('file-missing', name, 'there is no such file', 'check the name and folder'),
    );
  }
  try {
    return succeed(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)));
  } catch {
    return fail(
      problem('file-unreadable', name, 'it is not a text file in UTF-8', 'save it again'),
    );
  }
}

/** The project at `path`, with its drawing read from the same folder. */
export function readInput(path: string): Result<{ project: Project; assets: Assets }> {
  const text = readText(path);
  if (!text.ok) return text;
  const project = engine.readProject(text.value, basename(path));
  if (!project.ok) return project;
  const assets = readAssets(project.value, dirname(resolve(path)));
  if (!assets.ok) return fail(...project.problems, ...assets.problems);
  return succeed({ project: project.value, assets: assets.value }, project.problems);
}

function readAssets(project: Project, folder: string): Result<Assets> {
  const source = project.art?.source;
  if (source?.kind === 'text') return succeed({ fonts: fontBytes(source.font), files: {} });
  if (source?.kind !== 'svg' || source.svg !== undefined) return succeed({ fonts: {}, files: {} });
  const path = resolve(folder, source.file);
  const inside = relative(folder, path);
  if (isAbsolute(source.file) || isAbsolute(inside) || inside.split(sep)[0] === '..') {
    return fail(
      problem(
        'file-outside',
        `art.source.file: ${source.file}`,
        'it lies outside the folder of the project',
        'put the drawing beside the project file',
      ),
    );
  }
  const svg = readText(path);
  return svg.ok ? succeed({ fonts: {}, files: { [source.file]: svg.value } }) : svg;
}

/** The bytes of a catalogue font; none for an id that the catalogue lacks (the engine says so). */
function fontBytes(id: string): Record<string, Uint8Array> {
  const font = FONT_CATALOGUE.find((f) => f.id === id);
  return font ? { [id]: readPackageFile(`${font.package}/${font.file}`) } : {};
}

/** The three typefaces of the printed sheets, out of their packages. */
export function readSheetFonts(): SheetFonts {
  return {
    regular: readPackageFile('@expo-google-fonts/archivo/500Medium/Archivo_500Medium.ttf'),
    bold: readPackageFile('@expo-google-fonts/archivo/700Bold/Archivo_700Bold.ttf'),
    heading: readPackageFile('@expo-google-fonts/besley/600SemiBold/Besley_600SemiBold.ttf'),
  };
}
