/** Opens what a person picks or drops: a saved project, or a drawing. */
import { problem } from '../../base/result';
import { RECIPE_FORMAT } from '../../pattern/model';
import { setDrawing, setRecipe } from '../../project/edits';
import { PROJECT_FORMAT } from '../../project/model';
import { gallery } from '../state/gallery.svelte';
import { session } from '../state/session.svelte';
import { view } from '../state/view.svelte';

/** Larger drawings than this choke every step after: refused before they are read. */
export const MAX_DRAWING_BYTES = 5_000_000;
const MAX_PROJECT_BYTES = 20_000_000;

export async function openFile(file: File): Promise<void> {
  const isDrawing = /\.svg$/i.test(file.name) || file.type === 'image/svg+xml';
  const isProject = /\.json$/i.test(file.name) || file.type === 'application/json';
  if (!isDrawing && !isProject) return refuseKind(file);
  const most = isDrawing ? MAX_DRAWING_BYTES : MAX_PROJECT_BYTES;
  if (file.size > most) return refuseSize(file, most);
  const text = await file.text();
  if (isDrawing) openDrawing(file.name, text);
  else if (text.includes(`"${RECIPE_FORMAT}"`) && !text.includes(`"${PROJECT_FORMAT}"`))
    await openRecipe(file.name, text);
  else if (await session.openText(text, file.name)) view.jobOpen = false;
}

/** Lays a drawing on the ground as one undoable change; what it lacks shows in the problems. */
function openDrawing(name: string, svg: string): void {
  if (!session.apply(setDrawing, { file: name, svg })) return;
  view.jobOpen = false;
  view.open('design');
}

/** Keeps a recipe among the patterns and lays it on the grass as one undoable change. */
async function openRecipe(file: string, text: string): Promise<void> {
  const recipe = await gallery.add({ file, text });
  if (!recipe || !session.apply(setRecipe, recipe)) return;
  view.jobOpen = false;
  view.open('design');
}

function refuseKind(file: File): void {
  session.refuse(
    problem(
      'file-kind',
      file.name,
      'this is neither a drawing nor a project nor a pattern',
      'open an SVG drawing, a project file (JSON) saved by this app, or a pattern’s recipe (JSON)',
    ),
  );
}

function refuseSize(file: File, most: number): void {
  const megabytes = (n: number) => `${(n / 1_000_000).toFixed(n < 10_000_000 ? 1 : 0)} MB`;
  session.refuse(
    problem(
      'file-too-large',
      file.name,
      `the file is ${megabytes(file.size)}; the most is ${megabytes(most)}`,
      'simplify the drawing, or export its outlines only',
    ),
  );
}
