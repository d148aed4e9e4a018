/** The verb `plan`. */
import { Command } from 'commander';
import { formatLimit } from '../../base/quantity';
import type { Summary } from '../../plan/summarise';
import { printJson, reportProblems } from '../report';

/** `plan PROJECT.json --out DIR`: the packet and every file of the output contract. */
export function planCommand(): Command {
  return new Command('plan')
    .description('Make the whole plan: packet.pdf and the files beside it (see docs/files.md).')
    .argument('<project>', 'project file (JSON)')
    .requiredOption('--out <folder>', 'folder to write to; made when it is not there')
    .option('--json', 'print the summary as JSON')
    .action(async (path: string, options: { out: string; json?: boolean }) => {
      const { writePlan } = await import('../write-plan');
      const result = await writePlan(path, options.out);
      if (options.json) {
        printJson(
          result.ok ? { ok: true, ...result.value } : { ok: false, problems: result.problems },
        );
      } else if (result.ok) {
        process.stdout.write(`${headline(result.value)}\nWritten to ${options.out}\n`);
      }
      reportProblems(result.problems);
      process.exitCode = result.ok ? 0 : 1;
    });
}

function headline(s: Summary): string {
  const hours = (h: number): string => h.toFixed(1);
  return [
    `${s.name}: ${s.stakes} stakes in ${s.rounds} rounds, ${s.strings} strings, ${s.swings} swings, ${s.bends} bends.`,
    ...savingLine(s),
    ...loadLine(s),
    ...tapeLine(s),
    `Person-hours ${hours(s.person_hours_p50)} (P50), ${hours(s.person_hours_p90)} (P90); ` +
      `clock ${hours(s.clock_hours_p50)} h, ${hours(s.clock_hours_p90)} h: ` +
      (s.fits_p90 ? 'fits the window at P90.' : 'does not fit the window at P90.'),
  ].join('\n');
}

/** Beside the customary way; docs/stakeout.md says how it is computed. */
function savingLine({ grid_saving: saving, tolerance_in: tolerance }: Summary): string[] {
  if (!saving) return [];
  const share = Math.round(100 * saving.ratio);
  return [
    `${saving.marks} outline stakes and pins, and ${saving.bend_marks} bend marks, stand for ${saving.grid_marks} ` +
      `marks of a grid of ${saving.cell_ft.toFixed(2)}-ft cells that keeps the same ${tolerance} in: ${share} %.`,
  ];
}

/** What the tapes are tested by before the first stake. */
function tapeLine({ scale_check: check }: Summary): string[] {
  if (!check) return [];
  return [
    `Before round 1: tape the ${check.count} distances of the Controls sheet; read less printed, their mean ` +
      `is within ${formatLimit(check.limit_in, 'feet-inches')}, or the tape is not used.`,
  ];
}

/** The heart of the load; `inventory.csv` has the rest. */
function loadLine({ inventory }: Summary): string[] {
  const of = (id: string): number => inventory[id] ?? 0;
  if (of('stakes-all') === 0) return [];
  return [
    `To load: ${of('stakes-control')} control stakes, ${of('stakes-outline')} outline stakes, ` +
      `${of('stakes-pin')} pins (${of('stakes-all')} to count out and in), ${of('string')} ft of string, ` +
      `${of('dots')} paint dots, ${of('flags')} flags. The whole list: inventory.csv.`,
  ];
}
