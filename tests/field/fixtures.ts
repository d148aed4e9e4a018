import { expect } from 'vitest';
import { buildField } from '../../src/field/build-field';
import { defaultFieldSpec } from '../../src/field/default-field';
import type { Field, FieldSpec, Surface, SurfaceKind } from '../../src/field/model';

export const specWith = (change: Partial<FieldSpec> = {}): FieldSpec => ({
  ...defaultFieldSpec(),
  ...change,
});

/** Poles and centre only: the fence is one circle through the three. */
export const circleFence = (poleFt: number, centreFt: number): FieldSpec['fence'] => [
  { bearingDeg: -45, distanceFt: poleFt },
  { bearingDeg: 0, distanceFt: centreFt },
  { bearingDeg: 45, distanceFt: poleFt },
];

/** A lopsided park with a short porch, for what symmetry would hide. */
export const LOPSIDED: FieldSpec['fence'] = [
  { bearingDeg: -45, distanceFt: 318 },
  { bearingDeg: -30, distanceFt: 352 },
  { bearingDeg: -9, distanceFt: 398 },
  { bearingDeg: 12, distanceFt: 404 },
  { bearingDeg: 31, distanceFt: 361 },
  { bearingDeg: 45, distanceFt: 337 },
];

export function fieldWith(change: Partial<FieldSpec> = {}): Field {
  const built = buildField(specWith(change), 'feet-inches');
  expect(built.problems).toEqual([]);
  if (!built.ok) throw new Error('the field was refused');
  return built.value;
}

export function surfaceOf(field: Field, kind: SurfaceKind): Surface {
  const found = field.surfaces.find((s) => s.kind === kind);
  if (!found) throw new Error(`no ${kind}`);
  return found;
}
