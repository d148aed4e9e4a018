/** Fetches what a project names: the word's font, from the app's own files. */
import type { Assets } from '../art/model';
import { FONT_CATALOGUE } from '../art/fonts';
import { fail, problem, succeed, type Result } from '../base/result';
import type { Project } from '../project/model';
import { wordFontUrl } from './font-urls';

const loaded = new Map<string, Uint8Array>();

/** Fonts once fetched stay in memory. A font outside the catalogue, and a drawing
 * that the project names but does not hold, are left to the engine to report. */
export async function loadAssets(project: Project): Promise<Result<Assets>> {
  const source = project.art?.source;
  if (source?.kind !== 'text') return succeed({ fonts: {}, files: {} });
  const file = FONT_CATALOGUE.find((font) => font.id === source.font)?.file;
  const url = file === undefined ? undefined : wordFontUrl(file);
  if (url === undefined) return succeed({ fonts: {}, files: {} });
  const bytes = loaded.get(url) ?? (await fetchBytes(url));
  if (bytes === null) return fail(unreachable(source.font));
  loaded.set(url, bytes);
  return succeed({ fonts: { [source.font]: bytes }, files: {} });
}

const unreachable = (font: string) =>
  problem(
    'font-unreachable',
    `font ${font}`,
    'the font file could not be fetched',
    'check the connection and change anything to try again; the work is kept',
  );

/** The bytes behind an URL of the app's own, or null when it cannot be reached. */
export async function fetchBytes(url: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    const response = await fetch(url);
    return response.ok ? new Uint8Array(await response.arrayBuffer()) : null;
  } catch {
    return null;
  }
}
