/** `plan.svg`: the plan view, feet as user units, north (centre field) up. */
import type { Surface, SurfaceKind } from '../field/model';
import { boxGrow } from '../geometry/box';
import type { Point } from '../geometry/point';
import type { Polyline } from '../geometry/polyline';
import { regionBox, type Region } from '../geometry/region';
import type { Patch } from '../design/model';
import type { Plan } from '../plan/model';
import { CLAY_HEX, LAY_HEX, toneHex } from '../view/colour';
import { layAtPatch } from '../view/lay-map';
import { patchShade } from '../view/patch-shade';

const FILL: Record<SurfaceKind, string> = {
  'outfield-grass': LAY_HEX.light,
  'infield-grass': LAY_HEX.light,
  'foul-grass': '#BFDA94',
  skin: CLAY_HEX,
  mound: CLAY_HEX,
  'home-circle': CLAY_HEX,
  'warning-track': CLAY_HEX,
};
const MARGIN_FT = 12;
const WIDTH_PX = 1200;

const number = (value: number): string => String(Math.round(value * 1000) / 1000);
const xy = (p: Point): string => `${number(p.x)} ${number(-p.y)}`;
const ringPath = (region: Region): string =>
  region.map((ring) => `M${ring.map(xy).join('L')}Z`).join('');
const linePath = (line: Polyline): string => `M${line.map(xy).join('L')}`;
const escape = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c]!);

/** The plan view as SVG text. */
export function planSvg(plan: Plan): string {
  const box = boxGrow(regionBox(plan.field.ground)!, MARGIN_FT);
  const view = [box.minX, -box.maxY, box.maxX - box.minX, box.maxY - box.minY].map(number);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${view.join(' ')}" width="${WIDTH_PX}" height="${number((WIDTH_PX * (box.maxY - box.minY)) / (box.maxX - box.minX))}">`,
    `<title>${escape(plan.project.name)}</title>`,
    `<desc>Feet in the field frame; home plate's rear point is 0 0, centre field is up.</desc>`,
    ...plan.field.surfaces.map(surfaceMark),
    ...patchMarks(plan),
    `<path d="${linePath(plan.field.fenceLine)}" fill="none" stroke="#16211D" stroke-width="1.5"/>`,
    ...[plan.field.foulLines.left, plan.field.foulLines.right].map(
      (line) => `<path d="${linePath(line)}" fill="none" stroke="#FFFFFF" stroke-width=".6"/>`,
    ),
    ...stakeMarks(plan),
    '</svg>',
    '',
  ].join('\n');
}

const surfaceMark = (s: Surface): string =>
  `<path id="${escape(s.id)}" d="${ringPath(s.region)}" fill="${FILL[s.kind]}" fill-rule="evenodd"/>`;

/** Grass laid toward home is darker, as from behind home plate. */
function patchMarks(plan: Plan): string[] {
  return plan.design.patches.map((patch) => {
    const fill = patch.tool === 'narrow' ? '#4B7C38' : wideFill(plan, patch);
    return `<path id="${escape(patch.id)}" d="${ringPath(patch.region)}" fill="${fill}" fill-rule="evenodd"/>`;
  });
}

function wideFill(plan: Plan, patch: Patch): string {
  if (patch.kind === 'background') return toneHex(patchShade(patch));
  return layAtPatch(plan.design, patch).y < 0 ? LAY_HEX.dark : LAY_HEX.light;
}

function stakeMarks(plan: Plan): string[] {
  if (!plan.stakes) return [];
  const controls = plan.stakes.controls.map(
    (c) =>
      `<path d="M${xy({ x: c.at.x, y: c.at.y + 3 })}L${xy({ x: c.at.x + 2.6, y: c.at.y - 1.5 })}L${xy({ x: c.at.x - 2.6, y: c.at.y - 1.5 })}Z" fill="#FFFFFF" stroke="#16211D" stroke-width=".5"><title>${escape(c.id)}</title></path>`,
  );
  const stakes = plan.stakes.stakes
    .filter((s) => s.kind !== 'control')
    .map((s) => {
      const look =
        s.kind === 'pin' ? 'fill="none" stroke="#16211D" stroke-width=".25"' : 'fill="#16211D"';
      return `<circle cx="${number(s.at.x)}" cy="${number(-s.at.y)}" r=".6" ${look}><title>${escape(s.id)}</title></circle>`;
    });
  return [...controls, ...stakes];
}
