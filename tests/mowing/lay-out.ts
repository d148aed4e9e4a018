/** A design laid out with catalogue machines, for the swath tests. */
import { layOutSwaths } from '../../src/mowing/lay-out-swaths';
import { compose, fieldWith, machines, type composeInput } from '../design/grass';
import type { PatchCover } from '../design/raster';

export type Over = NonNullable<Parameters<typeof composeInput>[0]>;

export function layOut(over: Over = {}) {
  const design = compose(over);
  const field = fieldWith(over.field);
  const pair = machines(over.wide);
  const layout = layOutSwaths({ field, design, ...pair, toleranceIn: over.toleranceIn ?? 3 });
  const width = (m: typeof pair.wide) => ({
    cutFt: m.cutWidthIn / 12,
    overlapFt: m.overlapIn / 12,
  });
  return {
    design,
    field,
    layout,
    pair,
    widths: { wide: width(pair.wide), narrow: width(pair.narrow) },
  };
}

/** Share of the cells farther than one overlap from an edge that have the wanted lay. */
export const layShare = (rows: readonly PatchCover[]) =>
  rows.reduce((n, r) => n + r.innerRight, 0) / rows.reduce((n, r) => n + r.inner, 0);
