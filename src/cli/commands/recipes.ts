/** The verb `recipes`. */
import { Command } from 'commander';
import type { Parameter, ParameterValue, Recipe } from '../../pattern/model';
import { printJson, reportProblems } from '../report';

/** `recipes`: the patterns of the folder `patterns` with what can be set of each. */
export function recipesCommand(): Command {
  return new Command('recipes')
    .description('List the pattern recipes with their parameters (see docs/recipes.md).')
    .option('--json', 'print the list as JSON')
    .action(async (options: { json?: boolean }) => {
      const { readRecipes } = await import('../read-recipes');
      const { recipes, problems } = readRecipes();
      const ok = problems.every((p) => p.severity !== 'error');
      if (options.json) printJson({ ok, recipes: recipes.map(listed), problems });
      else process.stdout.write(`${recipes.map(inWords).join('\n')}\n`);
      reportProblems(problems);
      process.exitCode = ok ? 0 : 1;
    });
}

const listed = ({ id, name, about, parameters }: Recipe) => ({ id, name, about, parameters });

function inWords({ id, name, about, parameters }: Recipe): string {
  const rows = parameters.map((p) => `    ${p.id}: ${p.name}, ${kindInWords(p)}`);
  return [`${id}: ${name}`, `  ${about}`, ...rows].join('\n');
}

function kindInWords(p: Parameter): string {
  const value = valueInWords(p.value);
  switch (p.kind) {
    case 'bearing':
      return `degrees clockwise from home to second base, ${value}`;
    case 'count':
      return `whole number ${p.least} to ${p.most}, ${value}`;
    case 'length':
      return `feet ${p.least} to ${p.most}, ${value}`;
    case 'factor':
      return `number ${p.least} to ${p.most}, ${value}`;
    case 'width':
      return `passes or feet, ${value}`;
    case 'place':
      return `a named place or x and y in feet, ${value}`;
    case 'choice':
      return `${p.options.map((o) => o.value).join(' or ')}, ${value}`;
  }
}

function valueInWords(value: ParameterValue): string {
  if (typeof value !== 'object') return `${value} unless set`;
  if ('passes' in value) return `${value.passes} passes unless set`;
  if ('feet' in value) return `${value.feet} ft unless set`;
  return `${value.x}, ${value.y} unless set`;
}
