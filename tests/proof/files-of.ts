/** The output files of a plan that proofs read, as text. */
import { designJson, summaryJson } from '../../src/exchange/json-files';
import { controlsCsv, outlineCsv, stakesCsv } from '../../src/exchange/stake-files';
import type { Plan } from '../../src/plan/model';
import type { Files } from './read-job';

export function filesOf(plan: Plan): Files {
  return {
    'controls.csv': controlsCsv(plan.stakes!.controls),
    'stakes.csv': stakesCsv(plan.stakes),
    'outline.csv': outlineCsv(plan.stakes),
    'design.json': designJson(plan),
    'summary.json': summaryJson(plan),
  };
}
