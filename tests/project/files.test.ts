import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defaultProject } from '../../src/project/default-project';
import { migrate } from '../../src/project/migrate';
import { readProject } from '../../src/project/read-project';
import { writeProject } from '../../src/project/write-project';
import { buildField } from '../../src/field/build-field';
import { findMachines } from '../../src/mowing/machines';
import { checkSeat } from '../../src/view/check-seat';
import { FONT_CATALOGUE } from '../../src/art/fonts';
import { regionContains } from '../../src/geometry/region';
import { anyProject } from './arbitrary';

const DEMOS = join(import.meta.dirname, '../../demo-data');

describe('project files', () => {
  it('come back exactly as they were saved', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        const read = readProject(writeProject(project), 'saved');
        expect(read.problems).toEqual([]);
        expect(read.ok && read.value).toEqual(project);
      }),
      { seed: 2027, numRuns: 80 },
    );
  });

  it('have the same bytes whatever order the keys were made in', () => {
    const shuffle = (value: unknown): unknown => {
      if (typeof value !== 'object' || value === null) return value;
      if (Array.isArray(value)) return value.map(shuffle);
      return Object.fromEntries(
        Object.entries(value)
          .map(([k, v]) => [k, shuffle(v)] as const)
          .reverse(),
      );
    };
    fc.assert(
      fc.property(anyProject, (project) => {
        const text = writeProject(project);
        expect(writeProject(shuffle(project) as typeof project)).toBe(text);
        expect(text.endsWith('}\n')).toBe(true);
        const again = readProject(text, 'saved');
        expect(again.ok && writeProject(again.value)).toBe(text);
      }),
      { seed: 9, numRuns: 30 },
    );
  });

  it('start with what the file is', () => {
    expect(writeProject(defaultProject()).slice(0, 64)).toContain(
      '{\n  "format": "swathscribe-project",\n  "version": 2,\n',
    );
  });

  it('may carry a byte order mark and other ends of line', () => {
    const text = writeProject(defaultProject());
    expect(readProject(`\uFEFF${text}`, 'saved').ok).toBe(true);
    expect(readProject(text.replaceAll('\n', '\r\n'), 'saved').ok).toBe(true);
  });
});

describe('a new job', () => {
  const project = defaultProject();

  it('is one that every layer takes without a problem', () => {
    const field = buildField(project.field, project.units);
    expect(field.problems).toEqual([]);
    expect(findMachines(project.mowing).problems).toEqual([]);
    expect(project.seats.flatMap((seat) => checkSeat(seat, 'seats'))).toEqual([]);
    expect(field.ok && regionContains(field.value.ground, project.mowing.gate)).toBe(true);
  });

  it('is fresh each time', () => {
    expect(defaultProject()).toEqual(project);
    expect(defaultProject().field).not.toBe(project.field);
  });
});

describe('demo projects', () => {
  const files = readdirSync(DEMOS).filter((name) => name.endsWith('.json'));

  it('are the word and the emblem', () => {
    expect(files).toEqual(expect.arrayContaining(['lanterns-word.json', 'lantern-emblem.json']));
  });

  it.each(files)('%s reads without a problem and is saved as it stands', (name) => {
    const text = readFileSync(join(DEMOS, name), 'utf8');
    const read = readProject(text, name);
    expect(read.problems).toEqual([]);
    if (!read.ok) return;
    expect(writeProject(read.value)).toBe(text);
    expect(buildField(read.value.field, read.value.units).problems).toEqual([]);
    expect(findMachines(read.value.mowing).problems).toEqual([]);
    const source = read.value.art?.source;
    if (source?.kind === 'text') {
      expect(FONT_CATALOGUE.map((f) => f.id)).toContain(source.font);
    } else {
      expect(readdirSync(DEMOS)).toContain(source?.file);
    }
  });
});

describe('migrations', () => {
  const steps = [
    { from: 1, change: (d: object) => ({ ...d, added: true }) },
    { from: 2, change: (d: object) => ({ ...d, renamed: 'yes' }) },
  ];

  it('run one after another up to the newest version', () => {
    const old = { format: 'x', version: 1 };
    const result = migrate(old, 'old', steps, 3);
    expect(result.ok && result.value).toEqual({
      format: 'x',
      version: 3,
      added: true,
      renamed: 'yes',
    });
    expect(old).toEqual({ format: 'x', version: 1 });
    const newer = migrate({ version: 2 }, 'old', steps, 3);
    expect(newer.ok && newer.value).toEqual({ version: 3, renamed: 'yes' });
  });

  it.each([4, 0, -1, 1.5, '1', null, undefined, true])('refuse version %s', (version) => {
    const result = migrate({ version }, 'file', steps, 3);
    expect(result.problems.map((p) => p.code)).toEqual(['version-unknown']);
  });
});
