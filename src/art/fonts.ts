/** The lettering that ships with the product: open fonts, found by the shell as npm packages. */

export interface CatalogueFont {
  readonly id: string;
  readonly name: string;
  readonly style: 'script' | 'block' | 'slab';
  /** SPDX identifier of the font itself. */
  readonly licence: string;
  readonly package: string;
  /** Path of the TrueType file inside the package. */
  readonly file: string;
}

const bundled = (
  id: string,
  name: string,
  style: CatalogueFont['style'],
  file: string,
): CatalogueFont => ({
  id,
  name,
  style,
  licence: 'OFL-1.1',
  package: `@expo-google-fonts/${id}`,
  file,
});

/** Every font that a project may name, in the order in which it is offered. */
export const FONT_CATALOGUE: readonly CatalogueFont[] = [
  bundled('pacifico', 'Pacifico', 'script', '400Regular/Pacifico_400Regular.ttf'),
  bundled('kaushan-script', 'Kaushan Script', 'script', '400Regular/KaushanScript_400Regular.ttf'),
  bundled('leckerli-one', 'Leckerli One', 'script', '400Regular/LeckerliOne_400Regular.ttf'),
  bundled('oleo-script', 'Oleo Script', 'script', '400Regular/OleoScript_400Regular.ttf'),
  bundled('lobster', 'Lobster', 'script', '400Regular/Lobster_400Regular.ttf'),
  bundled('graduate', 'Graduate', 'block', 'Graduate_400Regular.ttf'),
  bundled('alfa-slab-one', 'Alfa Slab One', 'slab', '400Regular/AlfaSlabOne_400Regular.ttf'),
];
