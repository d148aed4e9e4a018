/** The verb `plan`. */
import { Command } from 'commander';
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
    `${s.name}: ${s.stakes} stakes in ${s.rounds} rounds, ${s.strings} strings, ${s.swings} swings.`,
    `Person-hours ${hours(s.person_hours_p50)} (P50), ${hours(s.person_hours_p90)} (P90); ` +
      `clock ${hours(s.clock_hours_p50)} h, ${hours(s.clock_hours_p90)} h: ` +
      (s.fits_p90 ? 'fits the window at P90.' : 'does not fit the window at P90.'),
  ].join('\n');
}
