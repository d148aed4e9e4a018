/** A project file in, a folder of files out. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fail, succeed, type Result } from '../base/result';
import { keptCrewPage } from '../crew/template/kept-crew-page';
import { engine } from '../engine/api';
import type { Summary } from '../plan/summarise';
import { readInput, readSheetFonts } from './read-input';

/** Plans the project at `path` and writes every file into `folder`. */
export async function writePlan(path: string, folder: string): Promise<Result<Summary>> {
  const input = readInput(path);
  if (!input.ok) return input;
  const plan = engine.makePlan(input.value.project, input.value.assets);
  if (!plan.ok) return fail(...input.problems, ...plan.problems);
  const files = engine.makeFiles(plan.value);
  const [packet, { page }] = await Promise.all([
    engine.makePacket(plan.value, readSheetFonts()),
    keptCrewPage(),
  ]);
  const crew = engine.makeCrewPage(plan.value, page);
  mkdirSync(folder, { recursive: true });
  const all = { ...files, 'packet.pdf': packet, 'crew.html': crew };
  for (const [name, content] of Object.entries(all)) {
    writeFileSync(join(folder, name), content);
  }
  return succeed(engine.summarise(plan.value), [...input.problems, ...plan.problems]);
}
