/** Straight bands at one bearing. */
import { bearingNormalise } from '../../geometry/angle';
import { rectangle, regionBox, type Region } from '../../geometry/region';
import type { GuideBand } from '../guide-band';
import { intoFrame, layFrame, outOfFrame, regionIntoFrame } from '../lay-frame';
import type { Way } from '../model';
import type { BandWidth, Guides, SwathWidths } from '../resolved';
import { passMiddles, spanBands, wayOf } from '../span-bands';

type Parallel = Extract<Guides, { readonly kind: 'parallel' }>;

/** Bands over the box of `reach`, left to right looking along the bearing. */
export function layParallel(
  guides: Parallel,
  widths: readonly BandWidth[],
  lays: readonly Way[],
  reach: Region,
  { swathFt }: SwathWidths,
): GuideBand[] {
  const frame = layFrame(guides.bearingDeg);
  const box = regionBox(regionIntoFrame(frame, reach));
  if (!box) return [];
  const half = guides.on === 'middle' ? widths[0]!.ft / 2 : 0;
  const start = intoFrame(frame, guides.through).x + guides.shiftFt - half;
  return spanBands(widths, start, box.minX, box.maxX).map((span) => {
    const way = wayOf(lays, span.index);
    const out = way === 'out';
    const bearingDeg = bearingNormalise(guides.bearingDeg + (out ? 0 : 180));
    const corners = rectangle({ ...box, minX: span.from, maxX: span.to });
    const middles = passMiddles(span, swathFt);
    return {
      index: span.index,
      way,
      strip: corners.map((ring) => ring.map((p) => outOfFrame(frame, p))),
      lay: { bearingDeg },
      lanes: { kind: 'straight', bearingDeg, middles: out ? middles : middles.map((x) => -x) },
    };
  });
}
