/** What the stakes save over the customary grid transfer at the same tolerance. */
import { gridTransfer } from './grid-transfer';
import type { Contour, GridSaving, Stake, StakeoutSpec } from './model';
import { plannedTubeFt, type Trace } from './trace';

/** The comparison; null when no grid serves. Set controls and the strings' own stakes are left out. */
export function gridSaving(
  traces: readonly Trace[],
  stakes: readonly Stake[],
  contours: readonly Contour[],
  spec: StakeoutSpec,
): GridSaving | null {
  const grid = gridTransfer(traces, plannedTubeFt(spec.toleranceIn), spec.system);
  if (!grid) return null;
  const marks = stakes.filter((s) => s.kind !== 'control').length;
  return {
    cellFt: grid.cellFt,
    gridMarks: grid.marks,
    marks,
    bendMarks: contours.flatMap((c) => c.pieces).filter((p) => p.kind === 'bend').length,
    ratio: marks / grid.marks,
  };
}
