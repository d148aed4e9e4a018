/** The codes of both demos in both systems of units, planned in full. */
import { describe } from 'vitest';
import { checkCodes } from '../support/check-codes';
import { demoCrew, DEMOS } from '../support/demo-crew';

describe.each(DEMOS)('the codes of %s', (file) => {
  describe.each(['feet-inches', 'metric'] as const)('in %s', (system) => {
    checkCodes(demoCrew(file, system));
  });
});
