/** The packet's fonts, as a shell hands them in. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { SheetFonts } from '../../src/sheets/fonts';

const { resolve } = createRequire(import.meta.url);
const read = (file: string) => new Uint8Array(readFileSync(resolve(`@expo-google-fonts/${file}`)));

export const sheetFonts = (): SheetFonts => ({
  regular: read('archivo/500Medium/Archivo_500Medium.ttf'),
  bold: read('archivo/700Bold/Archivo_700Bold.ttf'),
  heading: read('besley/600SemiBold/Besley_600SemiBold.ttf'),
});
