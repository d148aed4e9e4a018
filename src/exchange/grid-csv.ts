/** `grid.csv`: every crossing of the outline with a string of the grid, on request. */
import type { Plan } from '../plan/model';
import { gridSheet } from '../stakeout/grid-sheet';
import { writeCsv } from './csv';

const COLUMNS = 'string,way,at_ft,seq,distance_ft,distance_text,x_ft,y_ft';

/** One row per mark, string by string; null when the project asks for no grid or has no graphic. */
export function gridCsv(plan: Plan): string | null {
  const { project, design } = plan;
  const { gridSheet: wanted } = project.stakeout;
  const sheet = wanted && gridSheet(design.graphic, wanted.spacingFt, project.units);
  if (!sheet) return null;
  const rows = sheet.strings.flatMap(({ name, way, atFt, marks }) =>
    marks.map((mark, i) => {
      const along = mark.ft + (way === 'up' ? sheet.nearFt : sheet.leftFt);
      const [x, y] = way === 'up' ? [atFt, along] : [along, atFt];
      return [name, way, atFt, i + 1, mark.ft, mark.text, x, y];
    }),
  );
  return writeCsv(COLUMNS.split(','), rows);
}
