/** A project file in, a folder of files out. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fail, succeed, type Result } from '../base/result';
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
  const packet = await engine.makePacket(plan.value, readSheetFonts());
  mkdirSync(folder, { recursive: true });
  for (const [name, content] of Object.entries({ ...files, 'packet.pdf': packet })) {
    writeFileSync(join(folder, name), content);
  }
  return succeed(engine.summarise(plan.value), [...input.problems, ...plan.problems]);
}
