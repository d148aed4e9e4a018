/** Every file of the output contract but the packet, by name. */
import { invariant } from '../base/result';
import { machineHalfFt } from '../guide/lay-strings';
import { stringTurns } from '../guide/string-turns';
import { guideWork } from '../labour/guide-work';
import type { Plan } from '../plan/model';
import { renderSeat } from '../view/render-seat';
import { gridCsv } from './grid-csv';
import { inventoryCsv } from './inventory-csv';
import { designJson, hoursJson, routeJson, summaryJson } from './json-files';
import { planDxf } from './plan-dxf';
import { planSvg } from './plan-svg';
import { encodePng } from './png';
import { edgesCsv, guidesCsv } from './guide-files';
import { controlsCsv, outlineCsv, stakesCsv } from './stake-files';

export type PlanFiles = Readonly<Record<string, string | Uint8Array>>;

/** Pixels of `view-<seat>.png`. */
const VIEW_SIZE = { width: 1200, height: 600 } as const;

/** The files of a plan: text, or bytes for pictures. Equal plans give equal bytes. */
export function planFiles(plan: Plan): PlanFiles {
  const views = plan.project.seats.map((seat): [string, Uint8Array] => [
    `view-${seat.id}.png`,
    encodePng(renderSeat(plan.field, plan.design, seat, VIEW_SIZE.width, VIEW_SIZE.height)),
  ]);
  const grid = gridCsv(plan);
  return {
    'controls.csv': controlsCsv(plan.stakes?.controls ?? plan.field.controls),
    'stakes.csv': stakesCsv(plan.stakes),
    'outline.csv': outlineCsv(plan.stakes),
    'guides.csv': guidesCsv(stringTurns(plan.guides, plan.passes), halfOf(plan)),
    'edges.csv': edgesCsv(plan.guides.tables),
    'inventory.csv': inventoryCsv(plan.stakes, guideWork(plan.guides, plan.passes)),
    ...(grid === null ? {} : { 'grid.csv': grid }),
    'route.json': routeJson(plan),
    'design.json': designJson(plan),
    'hours.json': hoursJson(plan),
    'summary.json': summaryJson(plan),
    'plan.svg': planSvg(plan),
    'plan.dxf': planDxf(plan),
    ...Object.fromEntries(views),
  };
}

/** Half of what the wide mower takes up, feet. */
const halfOf = ({ passes }: Plan): number => {
  const wide = passes.machines.find((machine) => machine.role === 'wide');
  invariant(wide, 'every plan has a wide mower');
  return machineHalfFt(wide);
};
