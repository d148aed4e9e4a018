/** The verb `times`: files of the phone page into a new project. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { takeTimes } from '../../src/cli/take-times';
import { engine } from '../../src/engine/api';

const DEMO = resolve(import.meta.dirname, '../../demo-data/lantern-emblem.json');
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'swathscribe-times-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** `count` pins of 90 s each, one tick that came afterwards, and one that cannot be told. */
function crewFile(name: string, count: number): string {
  const seconds = [...Array.from({ length: count }, () => 90), 3, null];
  const stakes = seconds.map((s, i) => ({
    ...{ stake: String(i + 1), kind: 'pin', round: 1, set_at: '2027-04-16T06:35:00Z', seconds: s },
    ...{ check_from: 'K1', check_ft: null, check_text: '', note: '' },
  }));
  const head = { format: 'swathscribe-crew', version: 1, plan: '0123abcd', job: 'x' };
  const path = join(folder, name);
  writeFileSync(
    path,
    JSON.stringify({ ...head, saved_at: '2027-04-16T12:00:00Z', rounds: [], stakes }),
  );
  return path;
}

const codes = (result: { problems: readonly { code: string; where: string }[] }) =>
  result.problems.map((p) => `${p.code} ${p.where}`);

describe('the verb times', () => {
  it('writes a new project with the rates, and nothing else in it changed', () => {
    const out = join(folder, 'new.json');
    const result = takeTimes(DEMO, [crewFile('a.json', 12)], out);
    expect(result).toMatchObject({
      ok: true,
      value: [
        { task: 'set-pins', used: 12, leftOut: 1, rate: { low: 1.5, likely: 1.5, high: 1.5 } },
      ],
    });
    const before = engine.readProject(readFileSync(DEMO, 'utf8'), 'old');
    const after = engine.readProject(readFileSync(out, 'utf8'), 'new');
    if (!before.ok || !after.ok) throw new Error('unread');
    const { rates } = before.value.labour;
    const pins = { low: 1.5, likely: 1.5, high: 1.5 };
    expect(after.value).toEqual({
      ...before.value,
      labour: { ...before.value.labour, rates: { ...rates, 'set-pins': pins } },
    });
  });

  it('writes over nothing', () => {
    const out = join(folder, 'kept.json');
    writeFileSync(out, 'mine');
    const result = takeTimes(DEMO, [crewFile('a.json', 12)], out);
    expect(result.ok).toBe(false);
    expect(codes(result)).toEqual(['file-there kept.json']);
    expect(readFileSync(out, 'utf8')).toBe('mine');
  });

  it('says that there are too few times, and names each file that is wrong', () => {
    expect(codes(takeTimes(DEMO, [crewFile('few.json', 4)], undefined))).toEqual([
      'times-few times',
    ]);
    writeFileSync(join(folder, 'bad.json'), '{');
    const wrong = takeTimes(DEMO, [join(folder, 'bad.json'), DEMO, 'gone.json'], undefined);
    expect(codes(wrong)).toEqual([
      'json-broken bad.json: line 1, column 2',
      'not-a-crew-file lantern-emblem.json',
      'file-missing gone.json',
    ]);
  });
});
