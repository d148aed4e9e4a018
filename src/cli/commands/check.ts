/** The verb `check`. */
import { Command } from 'commander';
import { printJson, reportProblems } from '../report';

/** `check PROJECT.json`: reads it, makes the plan, prints what is wrong; writes nothing. */
export function checkCommand(): Command {
  return new Command('check')
    .description('Read a project, try the plan, and print its problems. Writes nothing.')
    .argument('<project>', 'project file (JSON)')
    .option('--json', 'print the result as JSON')
    .action(async (path: string, options: { json?: boolean }) => {
      const [{ engine }, { readInput }] = await Promise.all([
        import('../../engine/api'),
        import('../read-input'),
      ]);
      const input = readInput(path);
      const plan = input.ok ? engine.makePlan(input.value.project, input.value.assets) : input;
      const problems = plan.ok ? [...input.problems, ...plan.problems] : plan.problems;
      if (options.json) printJson({ ok: plan.ok, problems });
      else if (plan.ok) process.stdout.write('This can be planned.\n');
      reportProblems(problems);
      process.exitCode = plan.ok ? 0 : 1;
    });
}
