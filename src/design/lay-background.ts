/** The bands over the grass inside the clean-up laps: one patch each, with its passes. */
import type { Field } from '../field/model';
import { rectangle, regionBox, regionIntersect, type Region } from '../geometry/region';
import { layBands } from '../pattern/lay-bands';
import type { BandsSpec } from '../pattern/model';
import type { WideCut } from './edge-laps';
import { intoFrame, layFrame, outOfFrame, regionIntoFrame } from './lay-frame';
import { bandMiddles, layLanes } from './lay-lanes';
import type { Stroke } from './model';

export interface LaidBand {
  readonly id: string;
  readonly number: number;
  /** The band's own ground, graphic not cut out. */
  readonly region: Region;
  /** The whole strip, as far as the grass reaches; field frame. */
  readonly strip: Region;
  readonly bearingDeg: number;
  readonly strokes: readonly Stroke[];
}

/** Bands with any ground in them, left to right looking along the bearing, numbered from 1. */
export function layBackground(
  field: Field,
  pattern: BandsSpec,
  ground: Region,
  wide: WideCut,
): LaidBand[] {
  const frame = layFrame(pattern.bearingDeg);
  const box = regionBox(regionIntoFrame(frame, field.outfieldGrass));
  if (!box) return [];
  const origin = intoFrame(frame, field.bases.second).x;
  const strips = layBands(pattern, wide.swathFt, origin, box.minX, box.maxX);
  return strips
    .map((strip) => {
      const reach = { ...box, minX: strip.fromX, maxX: strip.toX };
      const corners = rectangle(reach).map((ring) => ring.map((p) => outOfFrame(frame, p)));
      return { strip, corners, region: regionIntersect(corners, ground) };
    })
    .filter(({ region }) => region.length > 0)
    .map(({ strip, corners, region }, i) => {
      const id = `band-${String(i + 1).padStart(2, '0')}`;
      const own = layFrame(strip.bearingDeg);
      const turned = sameWay(own.along, frame.along);
      const middles = bandMiddles(strip.fromX, pattern.passesPerBand, wide.swathFt);
      const lines = layLanes(region, field.outfieldGrass, {
        frame: own,
        middles: turned ? middles : middles.map((x) => -x),
        ...wide,
      });
      const strokes = lines.map((line) => ({
        patch: id,
        line,
        widthFt: wide.cutFt,
        group: 0,
        band: i + 1,
      }));
      const { bearingDeg } = strip;
      return { id, number: i + 1, region, strip: corners, bearingDeg, strokes };
    });
}

const sameWay = (
  a: { readonly x: number; readonly y: number },
  b: { readonly x: number; readonly y: number },
): boolean => a.x * b.x + a.y * b.y > 0;
