import { describe, expect, it } from 'vitest';
import { checkProject } from '../../src/project/check-project';
import { defaultProject } from '../../src/project/default-project';
import type { SeatSpec } from '../../src/view/model';

describe('seats in a project', () => {
  const found = (change: Partial<SeatSpec>): (readonly [string, string])[] => {
    const project = defaultProject();
    const [first, ...rest] = project.seats;
    const result = checkProject({ ...project, seats: [...rest, { ...first!, ...change }] }, 'job');
    return result.problems.map((p) => [p.code, p.where] as const);
  };

  it('are taken as they start', () => {
    expect(found({})).toEqual([]);
  });

  it('are refused, with their place, when nothing can be seen from them', () => {
    expect(found({ eyeHeightFt: 0 })).toEqual([['seat-height', 'job: seats[2].eyeHeightFt']]);
    expect(found({ lookAt: { x: 0, y: -60 } })).toEqual([['seat-look', 'job: seats[2].lookAt']]);
  });
});
