/** The command line: reads files, calls the engine, writes files. Exit 0 done, 1 problems, 2 usage. */
import { Command, CommanderError } from 'commander';
import { auditCommand } from './commands/audit';
import { checkCommand } from './commands/check';
import { planCommand } from './commands/plan';
import { recipesCommand } from './commands/recipes';
import { timesCommand } from './commands/times';

const program = new Command('swathscribe')
  .description('Lays a pattern or a graphic on a ballpark outfield and prints what a crew needs.')
  .showHelpAfterError('(add --help for the options)')
  .exitOverride();
const commands = [planCommand(), checkCommand(), recipesCommand(), timesCommand(), auditCommand()];
for (const command of commands) program.addCommand(command.exitOverride());

try {
  await program.parseAsync(process.argv);
} catch (error) {
  if (!(error instanceof CommanderError)) throw error;
  const asked = error.code === 'commander.helpDisplayed' || error.code === 'commander.help';
  process.exitCode = error.exitCode === 0 || (asked && process.argv.length > 2) ? 0 : 2;
}
