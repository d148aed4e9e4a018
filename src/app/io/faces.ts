/** The word's faces on the screen: the same files as the engine reads, fetched when first shown. */
import { FONT_CATALOGUE } from '../../art/fonts';
import { wordFontUrl } from '../../worker/font-urls';

const asked = new Set<string>();

export const faceFamily = (id: string): string => `"word ${id}", var(--text)`;

export async function loadFace(id: string): Promise<void> {
  const file = FONT_CATALOGUE.find((f) => f.id === id)?.file;
  const url = file === undefined ? undefined : wordFontUrl(file);
  if (url === undefined || asked.has(id)) return;
  asked.add(id);
  try {
    document.fonts.add(await new FontFace(`word ${id}`, `url(${url})`).load());
  } catch {
    // The name in the list is still readable; the plan itself reports a font that cannot be fetched.
    asked.delete(id);
  }
}
