/** The bundled fonts as a shell would hand them in. */
import { readFileSync } from 'node:fs';
import { FONT_CATALOGUE } from '../../../src/art/fonts';
import type { Assets } from '../../../src/art/model';

export const fontPath = (id: string): string => {
  const font = FONT_CATALOGUE.find((f) => f.id === id)!;
  return `node_modules/${font.package}/${font.file}`;
};

export const fontBytes = (id: string): Uint8Array => new Uint8Array(readFileSync(fontPath(id)));

export function assetsWith(
  ids: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Assets {
  return Object.freeze({
    fonts: Object.freeze(Object.fromEntries(ids.map((id) => [id, fontBytes(id)]))),
    files: Object.freeze({ ...files }),
  });
}

export const svgFixture = (name: string): string =>
  readFileSync(`tests/fixtures/svg/${name}.svg`, 'utf8');
