/** Sets a job out from the text of its printed packet alone and measures it against the art. */
import { expect } from 'vitest';
import type { Plan } from '../../src/plan/model';
import type { Project } from '../../src/project/model';
import { readPdfLines } from '../sheets/read-pdf';
import {
  compareAreas,
  joinOutline,
  largestGap,
  perimeter,
  setOut,
  type Xy,
} from '../support/stranger';
import { readPacketLines } from './packet-reading';
import { packetOf, planOf } from './plan-of';

export async function holdPacketAgainstArt(project: Project): Promise<void> {
  const plan = planOf(project);
  const pages = await readPdfLines(await packetOf(plan));
  holdLinesAgainstArt(pages.flat(), plan);
}

/** The same for the lines of a packet that was read already. */
export function holdLinesAgainstArt(lines: readonly string[], plan: Plan): void {
  const packet = readPacketLines(lines);
  expect(packet.stakes.length).toBe(plan.stakes!.stakes.length);
  const at = setOut(packet.fixed, packet.stakes);
  const drawn = joinOutline(packet.outline, at);
  const art = plan.design.graphic.map((ring) => ring.map((p): Xy => [p.x, p.y]));
  const toleranceFt = plan.project.stakeout.toleranceIn / 12;
  expect(largestGap(drawn, art)).toBeLessThanOrEqual(toleranceFt + 0.5 / 12);
  expect(largestGap(art, drawn)).toBeLessThanOrEqual(toleranceFt + 0.5 / 12);
  const areas = compareAreas(drawn, art);
  const missed = 1 - areas.both / (areas.a + areas.b - areas.both);
  expect(missed).toBeLessThanOrEqual((0.55 * toleranceFt * perimeter(art)) / areas.b);
}
