import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random';
import { DEFAULT_GUIDES, driftIn, reachPasses } from '../../src/guide/drift';
import type { GuideSpec } from '../../src/guide/model';

const DAYS = 20000;

/** Share of simulated days on which the edge `passes` after a strung pass is within `limitIn`. */
function shareWithin(spec: GuideSpec, passes: number, limitIn: number): number {
  const random = seededRandom(100 + passes);
  let within = 0;
  for (let day = 0; day < DAYS; day++) {
    let off = spec.stringSigmaIn * random.normal();
    for (let k = 0; k < passes; k++) off += spec.passBiasIn + spec.passSigmaIn * random.normal();
    if (Math.abs(off) <= limitIn) within++;
  }
  return within / DAYS;
}

const specs: readonly GuideSpec[] = [
  DEFAULT_GUIDES,
  { ...DEFAULT_GUIDES, toleranceIn: 12 },
  { ...DEFAULT_GUIDES, passBiasIn: 0, toleranceIn: 5 },
  { ...DEFAULT_GUIDES, passSigmaIn: 0.5, stringSigmaIn: 2, toleranceIn: 9 },
];
/** Three standard errors of a share of 0.95 from that many days. */
const CHANCE = 3 * Math.sqrt((0.95 * 0.05) / DAYS);

describe('drift from a strung pass', () => {
  it('keeps the tolerance on 95 days of 100 at every edge within reach, by simulation', () => {
    for (const spec of specs) {
      const reach = reachPasses(spec, 500);
      expect(reach).toBeGreaterThan(1);
      for (let k = 0; k <= reach; k++) {
        expect(shareWithin(spec, k, spec.toleranceIn)).toBeGreaterThan(0.95 - CHANCE);
      }
    }
  });

  it('is neither too small nor far too large: 95 to 97.5 days of 100 are within it', () => {
    for (const spec of specs) {
      for (const k of [0, 1, 4, 9, 25]) {
        const share = shareWithin(spec, k, driftIn(spec, k));
        expect(share).toBeGreaterThan(0.95 - CHANCE);
        expect(share).toBeLessThan(0.975 + CHANCE);
      }
    }
  });

  it('goes as far as the tolerance allows, and not one pass farther', () => {
    for (const spec of specs) {
      const reach = reachPasses(spec, 500);
      expect(driftIn(spec, reach)).toBeLessThanOrEqual(spec.toleranceIn);
      expect(driftIn(spec, reach + 1)).toBeGreaterThan(spec.toleranceIn);
    }
    expect(reachPasses({ ...DEFAULT_GUIDES, toleranceIn: 1 }, 500)).toBe(-1);
  });
});
