/** The three typefaces of the printed sheets, fetched when the first packet is made. */
import bold from '@expo-google-fonts/archivo/700Bold/Archivo_700Bold.ttf?url';
import regular from '@expo-google-fonts/archivo/500Medium/Archivo_500Medium.ttf?url';
import heading from '@expo-google-fonts/besley/600SemiBold/Besley_600SemiBold.ttf?url';
import { fail, problem, succeed, type Result } from '../base/result';
import type { SheetFonts } from '../sheets/fonts';
import { fetchBytes } from './assets';

let kept: SheetFonts | null = null;

/** Fetched once and kept. Problem `sheet-type-unreachable`. */
export async function loadSheetFonts(): Promise<Result<SheetFonts>> {
  if (kept) return succeed(kept);
  const [r, b, h] = await Promise.all([regular, bold, heading].map(fetchBytes));
  if (!r || !b || !h) {
    return fail(
      problem(
        'sheet-type-unreachable',
        'packet',
        "the sheets' typefaces could not be fetched",
        'check the connection and try again',
      ),
    );
  }
  kept = { regular: r, bold: b, heading: h };
  return succeed(kept);
}
