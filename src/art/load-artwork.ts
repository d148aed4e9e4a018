/** Art from its source: a word in a font, or an SVG drawing. */
import { fail, problem, type Result } from '../base/result';
import type { ArtSource, Artwork, Assets } from './model';
import { svgToOutline } from './svg-to-outline';
import { textToOutline } from './text-to-outline';

/**
 * Clean outlines of the source, in the art frame (y up). Nothing is fetched: fonts come from
 * `assets.fonts` by catalogue id and drawings from `source.svg` or `assets.files` by name.
 * Problems: `font-missing`, `art-file-missing`, and those of `textToOutline` and `svgToOutline`.
 */
export function loadArtwork(source: ArtSource, assets: Assets): Result<Artwork> {
  return source.kind === 'text' ? loadText(source, assets) : loadSvg(source, assets);
}

function loadText(
  source: Extract<ArtSource, { readonly kind: 'text' }>,
  assets: Assets,
): Result<Artwork> {
  const bytes = Object.hasOwn(assets.fonts, source.font) ? assets.fonts[source.font] : undefined;
  if (bytes) return textToOutline(source.text, source.font, bytes);
  const known = Object.keys(assets.fonts).sort();
  return fail(
    problem(
      'font-missing',
      `font ${source.font}`,
      `there is no font "${source.font}"`,
      known.length > 0 ? `choose one of ${known.join(', ')}` : 'add a font file; none was found',
    ),
  );
}

function loadSvg(
  source: Extract<ArtSource, { readonly kind: 'svg' }>,
  assets: Assets,
): Result<Artwork> {
  const text =
    source.svg ??
    (Object.hasOwn(assets.files, source.file) ? assets.files[source.file] : undefined);
  if (text !== undefined) return svgToOutline(text, source.file);
  const known = Object.keys(assets.files).sort();
  return fail(
    problem(
      'art-file-missing',
      source.file,
      'the drawing file was not found',
      known.length > 0 ? `choose one of ${known.join(', ')}` : 'add the SVG file to the project',
    ),
  );
}
