/** The verb `audit`. */
import { Command } from 'commander';
import type { Audit } from '../../audit/model';
import { printJson, reportProblems } from '../report';

interface Options {
  readonly out?: string;
  readonly json?: boolean;
}

/** `audit PROJECT.json READINGS.csv`: what readings made on the field say of the stakes. */
export function auditCommand(): Command {
  return new Command('audit')
    .description('Check set stakes against readings made on the field (see docs/audit.md).')
    .argument('<project>', 'project file (JSON) that the stakes were set from')
    .argument('<readings>', "table of readings (CSV), or the phone page's file")
    .option(
      '--out <folder>',
      'write as-set.csv, outline-as-set.csv, outline-as-set.pdf and audit.json there',
    )
    .option('--json', 'print the result as JSON')
    .action(async (project: string, readings: string, options: Options) => {
      const [{ auditFile }, { auditLines }] = await Promise.all([
        import('../audit-file'),
        import('../../audit/report-lines'),
      ]);
      const result = await auditFile(project, readings, options.out);
      if (options.json) {
        printJson(
          result.ok
            ? { ok: true, ...result.value.audit }
            : { ok: false, problems: result.problems },
        );
      } else if (result.ok) {
        const written = options.out === undefined ? [] : [`Written to ${options.out}`];
        process.stdout.write(
          `${[...auditLines(result.value.audit, result.value.system), ...written].join('\n')}\n`,
        );
      }
      reportProblems(result.problems);
      process.exitCode = result.ok && isClean(result.value.audit) ? 0 : 1;
    });
}

const isClean = (audit: Audit): boolean => audit.suspects.length === 0;
