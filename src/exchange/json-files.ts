/** `route.json`, `design.json`, `hours.json`, `summary.json`. Keys are stable: docs/files.md. */
import type { Lay, Patch } from '../design/model';
import type { Point } from '../geometry/point';
import type { Region } from '../geometry/region';
import type { Task } from '../labour/model';
import type { Leg } from '../mowing/model';
import type { Plan } from '../plan/model';
import { summarise } from '../plan/summarise';
import { pathFlatten } from '../geometry/arc';

const write = (value: unknown): string => `${JSON.stringify(value)}\n`;
const pair = (p: Point): [number, number] => [p.x, p.y];
const rings = (region: Region): [number, number][][] => region.map((ring) => ring.map(pair));

/** `route.json`: every leg in order, feet and seconds. */
export function routeJson(plan: Plan): string {
  return write({ units: 'ft', legs: plan.passes.legs.map(legOut) });
}

function legOut(leg: Leg) {
  return {
    seq: leg.seq,
    machine: leg.machine,
    visit: leg.visit,
    phase: leg.phase,
    kind: leg.kind,
    pass: leg.pass,
    patch: leg.patch,
    width_ft: leg.widthFt,
    points: leg.points.map(pair),
    start_s: leg.startS,
    seconds: leg.seconds,
    reels: leg.reels,
    lays: leg.lays,
    ...(leg.gear === undefined ? {} : { gear: leg.gear }),
  };
}

/** `design.json`: surfaces, patches, guides and the graphic, rings in feet. */
export function designJson(plan: Plan): string {
  const { field, design } = plan;
  return write({
    units: 'ft',
    surfaces: field.surfaces.map((s) => ({
      id: s.id,
      kind: s.kind,
      name: s.name,
      area_sqft: s.areaSqFt,
      rings: rings(s.region),
    })),
    patches: design.patches.map(patchOut),
    guides: Object.entries(design.guides).map(([id, path]) => ({
      id,
      points: pathFlatten(path, false).map(pair),
    })),
    graphics: design.graphic.length === 0 ? [] : [{ id: '1', rings: rings(design.graphic) }],
  });
}

function patchOut(patch: Patch) {
  return {
    id: patch.id,
    kind: patch.kind,
    layer: patch.layer,
    tool: patch.tool,
    lays: patch.lays.map(layOut),
    area_sqft: patch.areaSqFt,
    rings: rings(patch.region),
  };
}

function layOut(lay: Lay) {
  return 'bearingDeg' in lay
    ? { order: lay.order, bearing_deg: lay.bearingDeg }
    : { order: lay.order, guides: lay.guides, sense: lay.sense };
}

/** `hours.json`: tasks with their rates, totals and the window. */
export function hoursJson(plan: Plan): string {
  const { hours } = plan;
  return write({
    tasks: hours.tasks.map(taskOut),
    visits: hours.visits.map((v) => ({ visit: v.visit, ...totalsOut(v) })),
    totals: totalsOut(hours.totals),
    window: {
      opens: hours.window.opens,
      closes: hours.window.closes,
      fits_p90: hours.window.fitsP90,
      spare_minutes_p90: hours.window.spareMinutesP90,
      finish_p50: hours.window.finishP50,
      finish_p90: hours.window.finishP90,
      chance_of_finishing: hours.window.chance,
    },
  });
}

function taskOut(task: Task) {
  return {
    id: task.id,
    name: task.name,
    visit: task.visit,
    quantity: task.quantity,
    unit: task.unit,
    rate_low: task.rate.low,
    rate_likely: task.rate.likely,
    rate_high: task.rate.high,
    rate_unit: task.rate.unit,
    source: task.rate.source,
    people: task.people,
    minutes_p50: task.minutesP50,
    minutes_p90: task.minutesP90,
    after: task.after,
  };
}

function totalsOut(t: Plan['hours']['totals']) {
  return {
    person_hours_p50: t.personHoursP50,
    person_hours_p90: t.personHoursP90,
    clock_hours_p50: t.clockHoursP50,
    clock_hours_p90: t.clockHoursP90,
  };
}

/** `summary.json`: the headline figures, indented for reading. */
export const summaryJson = (plan: Plan): string => `${JSON.stringify(summarise(plan), null, 2)}\n`;
