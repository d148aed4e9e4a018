/** Where the built app serves each font file from, by its path in its package. */
import alfa from '@expo-google-fonts/alfa-slab-one/400Regular/AlfaSlabOne_400Regular.ttf?url';
import graduate from '@expo-google-fonts/graduate/Graduate_400Regular.ttf?url';
import kaushan from '@expo-google-fonts/kaushan-script/400Regular/KaushanScript_400Regular.ttf?url';
import leckerli from '@expo-google-fonts/leckerli-one/400Regular/LeckerliOne_400Regular.ttf?url';
import lobster from '@expo-google-fonts/lobster/400Regular/Lobster_400Regular.ttf?url';
import oleo from '@expo-google-fonts/oleo-script/400Regular/OleoScript_400Regular.ttf?url';
import oleoBold from '@expo-google-fonts/oleo-script/700Bold/OleoScript_700Bold.ttf?url';
import pacifico from '@expo-google-fonts/pacifico/400Regular/Pacifico_400Regular.ttf?url';

/** By file name: unique across the packages. */
export const WORD_FONT_URLS: Readonly<Record<string, string>> = {
  'AlfaSlabOne_400Regular.ttf': alfa,
  'Graduate_400Regular.ttf': graduate,
  'KaushanScript_400Regular.ttf': kaushan,
  'LeckerliOne_400Regular.ttf': leckerli,
  'Lobster_400Regular.ttf': lobster,
  'OleoScript_400Regular.ttf': oleo,
  'OleoScript_700Bold.ttf': oleoBold,
  'Pacifico_400Regular.ttf': pacifico,
};

/** The URL of a catalogue font, or undefined for a file the app does not carry. */
export function wordFontUrl(file: string): string | undefined {
  return WORD_FONT_URLS[file.slice(file.lastIndexOf('/') + 1)];
}
