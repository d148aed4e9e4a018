/** The verb `times`. */
import { Command } from 'commander';
import type { OwnRate } from '../../labour/own-rates';
import { printJson, reportProblems } from '../report';

interface Options {
  readonly out?: string;
  readonly json?: boolean;
}

/** `times PROJECT.json CREW.json … --out NEW.json`: the crew's own pace, put into a new project. */
export function timesCommand(): Command {
  return new Command('times')
    .description("Turn the phone page's files into the crew's own rates (see docs/crew-page.md).")
    .argument('<project>', 'project file (JSON)')
    .argument('<files...>', 'files saved by the phone page')
    .option('--out <file>', 'new project file with the rates in it; never one that is there')
    .option('--json', 'print the result as JSON')
    .action(async (path: string, files: string[], options: Options) => {
      const { takeTimes } = await import('../take-times');
      const result = takeTimes(path, files, options.out);
      if (options.json) {
        printJson(
          result.ok ? { ok: true, rates: result.value } : { ok: false, problems: result.problems },
        );
      } else if (result.ok) process.stdout.write(`${result.value.map(rateLine).join('\n')}\n`);
      reportProblems(result.problems);
      process.exitCode = result.ok ? 0 : 1;
    });
}

function rateLine({ task, used, leftOut, rate }: OwnRate): string {
  const left = leftOut > 0 ? `, ${leftOut} left out as too short` : '';
  if (!rate) return `${task}: too few times to go by (${used}${left})`;
  return `${task}: ${rate.low} to ${rate.high} min each, likely ${rate.likely} (${used} times${left})`;
}
