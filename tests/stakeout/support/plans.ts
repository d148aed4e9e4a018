/** Stake-outs to test: real words in bundled fonts, and an emblem of arcs, on the default field. */
import { readFileSync } from 'node:fs';
import { FONT_CATALOGUE } from '../../../src/art/fonts';
import { loadArtwork } from '../../../src/art/load-artwork';
import { placeArtwork } from '../../../src/art/place-artwork';
import type { Problem, Result } from '../../../src/base/result';
import { buildField } from '../../../src/field/build-field';
import { defaultFieldSpec } from '../../../src/field/default-field';
import type { Field } from '../../../src/field/model';
import type { Region } from '../../../src/geometry/region';
import type { StakeoutSpec, StakePlan } from '../../../src/stakeout/model';
import { planStakes } from '../../../src/stakeout/plan-stakes';

export const SPEC: StakeoutSpec = {
  toleranceIn: 3,
  target95In: 4,
  tape: { readingSigmaIn: 0.25, proportional: 1 / 3750, scaleSigma: 1 / 5000, limitFt: 200 },
  system: 'feet-inches',
  crew: 3,
};

function need<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

let field: Field | null = null;
export const defaultField = (): Field =>
  (field ??= need(buildField(defaultFieldSpec(), 'feet-inches')));

export function wordRegion(text: string, font: string, widthFt = 150, centre = { x: 0, y: 270 }) {
  const entry = FONT_CATALOGUE.find((f) => f.id === font)!;
  const url = new URL(`../../../node_modules/${entry.package}/${entry.file}`, import.meta.url);
  const assets = { fonts: { [font]: new Uint8Array(readFileSync(url)) }, files: {} };
  const artwork = need(loadArtwork({ kind: 'text', text, font }, assets));
  return need(placeArtwork(artwork, { centre, widthFt, rotationDeg: 0 }));
}

/** A round badge with a lantern in it: circles, arcs, straight edges, holes, a narrow handle. */
export function emblemRegion(cx = 0, cy = 270, scale = 1): Region {
  const circle = (x: number, y: number, r: number, clockwise = false) =>
    Array.from({ length: 240 }, (_, i) => {
      const a = ((clockwise ? -1 : 1) * i * 2 * Math.PI) / 240;
      return { x: cx + scale * (x + r * Math.cos(a)), y: cy + scale * (y + r * Math.sin(a)) };
    });
  const body: [number, number][] = [
    [-9, -14],
    [9, -14],
    [11, -10],
    [7, 6],
    [4, 9],
    [-4, 9],
    [-7, 6],
    [-11, -10],
  ];
  return [
    circle(0, 0, 32),
    circle(0, 0, 27, true),
    body.map(([x, y]) => ({ x: cx + scale * x, y: cy + scale * y })),
    circle(0, -3, 4, true),
    // It touches the body in one place.
    circle(0, 15, 6),
    circle(0, 15, 4.5, true),
  ];
}

export interface Planned {
  readonly graphic: Region;
  readonly plan: StakePlan;
  readonly problems: readonly Problem[];
}

export function planned(graphic: Region, spec: StakeoutSpec = SPEC): Planned {
  const result = planStakes({ field: defaultField(), graphic, spec });
  return { graphic, plan: need(result), problems: result.problems };
}
