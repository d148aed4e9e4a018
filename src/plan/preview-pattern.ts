/** A pattern on the project's own field, without a graphic: what the gallery shows. */
import { fail, succeed, type Result } from '../base/result';
import { composeDesign } from '../design/compose-design';
import { buildField } from '../field/build-field';
import type { Field } from '../field/model';
import { EMPTY_REGION, type Region } from '../geometry/region';
import { designWidths, findMachines } from '../mowing/machines';
import type { PatternSpec } from '../pattern/model';
import type { Project } from '../project/model';
import { patchShade } from '../view/patch-shade';

export interface PatternPreview {
  readonly field: Pick<Field, 'surfaces' | 'fenceLine' | 'foulLines'>;
  /** Patches of the pattern, each from −1 (dark) to 1 (light). */
  readonly patches: readonly { readonly region: Region; readonly shade: number }[];
}

/** Problems: those of the field, the machines and the design. */
export function previewPattern(project: Project, pattern: PatternSpec): Result<PatternPreview> {
  const field = buildField(project.field, project.units, project.stakeout.tape);
  const machines = findMachines(project.mowing);
  if (!field.ok || !machines.ok) return fail(...field.problems, ...machines.problems);
  const design = composeDesign({
    field: field.value,
    pattern,
    design: project.design,
    graphic: EMPTY_REGION,
    ...designWidths(machines.value),
    toleranceIn: project.stakeout.toleranceIn,
  });
  if (!design.ok) return design;
  const patches = design.value.patches
    .filter((patch) => patch.kind === 'background')
    .map((patch) => ({ region: patch.region, shade: patchShade(patch) }));
  const { surfaces, fenceLine, foulLines } = field.value;
  return succeed({ field: { surfaces, fenceLine, foulLines }, patches }, design.problems);
}
