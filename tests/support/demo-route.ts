/** A demo project's design and route, as the files say them. */
import { readFileSync } from 'node:fs';
import { composeDesign } from '../../src/design/compose-design';
import { designJson, routeJson } from '../../src/exchange/json-files';
import { buildField } from '../../src/field/build-field';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { designWidths, findMachines } from '../../src/mowing/machines';
import type { Machine, PassPlan } from '../../src/mowing/model';
import { planPasses } from '../../src/mowing/plan-passes';
import { placeGraphic } from '../../src/plan/make-plan';
import type { Plan } from '../../src/plan/model';
import type { Result } from '../../src/base/result';
import type { Project } from '../../src/project/model';
import { readProject } from '../../src/project/read-project';
import type { BodyFigures, DesignFile, RouteLeg } from './raster';

export interface DemoRoute {
  readonly project: Project;
  readonly design: DesignFile;
  readonly legs: readonly RouteLeg[];
  readonly plan: PassPlan;
  readonly problems: readonly string[];
  readonly machines: { readonly wide: Machine; readonly narrow: Machine };
  readonly bodies: Readonly<Record<string, BodyFigures>>;
}

const root = new URL('../../', import.meta.url);
const readText = (path: string) => readFileSync(new URL(path, root), 'utf8');

function need<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

function assetsOf() {
  const fonts = Object.fromEntries(
    FONT_CATALOGUE.map((font) => [
      font.id,
      new Uint8Array(readFileSync(new URL(`node_modules/${font.package}/${font.file}`, root))),
    ]),
  );
  return { fonts, files: { 'lantern-emblem.svg': readText('demo-data/lantern-emblem.svg') } };
}

/** Plans the passes of a demo project, changed by `change`; two hours of setting out. */
export function demoRoute(name: string, change: (p: Project) => Project = (p) => p): DemoRoute {
  const project = change(need(readProject(readText(`demo-data/${name}.json`), name)));
  const field = need(buildField(project.field, project.units));
  const machines = need(findMachines(project.mowing));
  const toleranceIn = project.stakeout.toleranceIn;
  const composed = composeDesign({
    field,
    pattern: project.pattern,
    design: project.design,
    graphic: need(placeGraphic(project, assetsOf())),
    ...designWidths(machines),
    toleranceIn,
  });
  const gate = project.mowing.gate;
  const ordered = planPasses({
    field,
    design: need(composed),
    ...machines,
    gate,
    overLaySecondsPerFt: project.mowing.overLaySecondsPerFt,
    toleranceIn,
    setOutSeconds: 7200,
  });
  const plan = need(ordered);
  const written = { field, design: need(composed), passes: plan } as unknown as Plan;
  const bodies = Object.fromEntries(
    [machines.wide, machines.narrow, ...machines.further].map((m) => [
      m.id,
      {
        widthFt: m.bodyWidthIn / 12,
        frontFt: m.frontOverhangIn / 12,
        rearFt: m.rearOverhangIn / 12,
      },
    ]),
  );
  return {
    project,
    design: JSON.parse(designJson(written)) as DesignFile,
    legs: (JSON.parse(routeJson(written)) as { legs: RouteLeg[] }).legs,
    plan,
    problems: ordered.problems.map((p) => `${p.code}: ${p.what}`),
    machines,
    bodies,
  };
}
