import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { productionPackages, thirdPartyText } from './support/third-party.mjs';

const ALLOWED =
  /^\(?(MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BSL-1\.0|MPL-2\.0|OFL-1\.1|Unlicense|Zlib|EDL-1\.0|EPL-1\.0)( (AND|OR) (MIT|Zlib|OFL-1\.1|EPL-1\.0))*\)?$/;

describe('licences', () => {
  it('ships only packages under allowed licences', () => {
    const wrong = productionPackages().filter((p) => !ALLOWED.test(p.licence));
    expect(wrong).toEqual([]);
  });

  it('keeps the third-party notice true', () => {
    const notice = readFileSync(join(resolve(import.meta.dirname, '..'), 'THIRD-PARTY.md'), 'utf8');
    expect(notice).toBe(thirdPartyText());
  });
});
