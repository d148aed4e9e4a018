/** Any family of guide lines laid out in bands. */
import type { Feet } from '../base/units';
import type { Field } from '../field/model';
import type { Region } from '../geometry/region';
import { layDrawnLine, layWaves } from './families/copies';
import { layEdge } from './families/edge';
import { layParallel } from './families/parallel';
import { layRays } from './families/rays';
import { layRings } from './families/rings';
import { laySpiral } from './families/spiral';
import type { LaidFamily } from './guide-band';
import type { Mowing, SwathWidths } from './resolved';

/**
 * The bands of a mowing as far as `reach` goes; `inset` is the width of the clean-up laps, where
 * bands beside an edge begin.
 */
export function layFamily(
  { guides, widths, lays }: Mowing,
  reach: Region,
  swath: SwathWidths,
  field: Field,
  inset: Feet,
): LaidFamily {
  switch (guides.kind) {
    case 'parallel':
      return { bands: layParallel(guides, widths, lays, reach, swath), tight: 0 };
    case 'rings':
      return layRings(guides, widths, lays, reach, swath);
    case 'rays':
      return { bands: layRays(guides, widths, lays, reach, swath), tight: 0 };
    case 'waves':
      return { bands: layWaves(guides, widths, lays, reach, swath), tight: 0 };
    case 'spiral':
      return laySpiral(guides, widths, lays, reach, swath);
    case 'edge':
      return { bands: layEdge(guides, widths, lays, reach, swath, field, inset), tight: 0 };
    case 'line':
      return { bands: layDrawnLine(guides, widths, lays, reach, swath), tight: 0 };
  }
}
