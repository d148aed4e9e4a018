/** The phone's file, as written by the page's own code, read back; and broken in every way. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { joinJob } from '../../src/crew/job';
import {
  EMPTY_ROUND,
  startRound,
  tickStake,
  writeCheck,
  writeNote,
  type RoundLog,
} from '../../src/crew/log';
import { writeCrewFile } from '../../src/crew/write-crew-file';
import { crewLines, crewLists } from '../../src/exchange/crew-data';
import { crewTimes, readCrewFile } from '../../src/exchange/crew-file';
import { CREW_FORMAT, CREW_VERSION, type CrewFile } from '../../src/exchange/crew-file-model';
import { fixtureCrew } from '../support/demo-crew';

const T = Date.UTC(2027, 3, 16, 6, 30);

describe('a file from the page', () => {
  const crew = fixtureCrew();
  const lists = crewLists(crew);
  const source = { lists, lines: crewLines(crew), touches: {}, name: crew.name };
  const job = joinJob(source)!;
  const largest = lists.reduce((a, b) => (a.stakes.length >= b.stakes.length ? a : b));
  const [first, second, third] = largest.stakes;
  let log: RoundLog = startRound(EMPTY_ROUND, T + 90_000, T);
  log = tickStake(log, first!.id, T + 150_000);
  log = writeCheck(tickStake(log, second!.id, T + 200_500), second!.id, '12 3', 12.25);
  log = writeNote(log, third!.id, 'head in the way, <b>"quoted"</b>');
  const text = writeCrewFile(job, (r) => (r === largest.round ? log : EMPTY_ROUND), T + 300_000);
  const read = readCrewFile(text, 'crew.json');

  it('reads back whole', () => {
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { stakes, rounds, ...head } = read.value;
    expect(head).toEqual({
      format: CREW_FORMAT,
      version: CREW_VERSION,
      plan: crew.fingerprint.slice(0, 8),
      job: crew.name,
      saved_at: '2027-04-16T06:35:00.000Z',
    });
    expect(rounds).toHaveLength(crew.stakes.rounds.length);
    expect(stakes.map((s) => [s.stake, s.seconds, s.check_ft, s.note])).toEqual([
      [first!.id, 60, null, ''],
      [second!.id, 50.5, 12.25, ''],
      [third!.id, null, null, 'head in the way, <b>"quoted"</b>'],
    ]);
    expect(stakes[1]!.check_text).toBe(`12' 3"`);
  });

  it('has no key that the handbook leaves out', () => {
    const docs = readFileSync(new URL('../../docs/crew-page.md', import.meta.url), 'utf8');
    const keys = [...text.matchAll(/"(\w+)":/g)].map((m) => m[1]!);
    expect(keys.length).toBeGreaterThan(20);
    for (const key of keys) expect(docs).toContain(`\`${key}\``);
  });

  it('gives a time per stake and per move of the tapes', () => {
    const times = crewTimes(read.ok ? [read.value] : []);
    expect(times.map((t) => t.seconds).sort((a, b) => a - b)).toEqual([50.5, 60, 90]);
    expect(times.find((t) => t.task === 'move-tapes')?.seconds).toBe(90);
  });

  it('counts a stake of two files once, by the newer', () => {
    if (!read.ok) throw new Error('unread');
    const older: CrewFile = {
      ...read.value,
      saved_at: '2027-04-15T06:35:00.000Z',
      stakes: read.value.stakes.map((s) => ({ ...s, seconds: 999 })),
    };
    const seconds = (files: CrewFile[]) =>
      crewTimes(files)
        .map((t) => t.seconds)
        .sort();
    expect(seconds([read.value, older])).toEqual(seconds([read.value]));
    const other = { ...older, plan: 'ffffffff' };
    expect(crewTimes([read.value, other])).toHaveLength(6);
  });
});

describe('a file that is not right', () => {
  const entry = {
    ...{ stake: '45', kind: 'outline', round: 2, set_at: '2027-04-16T06:35:00.000Z' },
    ...{ seconds: 60, check_from: 'K1', check_ft: null, check_text: '', note: '' },
  };
  const file = (change: object = {}) => ({
    ...{ format: CREW_FORMAT, version: 1, plan: '0123abcd', job: 'x' },
    ...{ saved_at: '2027-04-16T12:00:00.000Z', rounds: [], stakes: [entry] },
    ...change,
  });
  const found = (value: unknown): string[] => {
    const result = readCrewFile(
      typeof value === 'string' ? value : JSON.stringify(value),
      'c.json',
    );
    return result.ok ? [] : result.problems.map((p) => `${p.code}: ${p.where}`);
  };

  it('is taken when nothing is wrong', () => expect(found(file())).toEqual([]));

  it.each<[string, unknown, string]>([
    ['text that is no JSON', '{"format": ', 'json-broken: c.json: line 1, column 12'],
    ['another file', '{"format":"swathscribe-project"}', 'not-a-crew-file: c.json'],
    ['a list', '[]', 'not-a-crew-file: c.json'],
    ['a later version', file({ version: 2 }), 'crew-file-version: c.json'],
    [
      'a time below zero',
      file({ stakes: [{ ...entry, seconds: -3 }] }),
      'stake 45: stakes[0].seconds',
    ],
    [
      'a time as a word',
      file({ stakes: [{ ...entry, seconds: '60' }] }),
      'stake 45: stakes[0].seconds',
    ],
    [
      'an unknown kind',
      file({ stakes: [entry, { ...entry, stake: '46', kind: 'peg' }] }),
      'stake 46: stakes[1].kind',
    ],
    [
      'a day that is none',
      file({ stakes: [{ ...entry, set_at: 'noon' }] }),
      'stake 45: stakes[0].set_at',
    ],
    [
      'a stake without a name',
      file({ stakes: [{ ...entry, stake: '' }] }),
      'c.json: stakes[0].stake',
    ],
    ['a missing key', file({ stakes: [{ stake: '45' }] }), 'stake 45: stakes[0].kind'],
    ['a stake twice', file({ stakes: [entry, entry] }), 'crew-file-twice: c.json: stake 45'],
    ['an unknown key', file({ more: 1 }), 'c.json: more'],
  ])('%s', (_, value, expected) => {
    expect(found(value).join('\n')).toContain(expected);
  });

  it('names every entry that is wrong, not the first alone', () => {
    const bad = ['1', '2', '3'].map((id) => ({ ...entry, stake: id, seconds: null, round: 0 }));
    expect(found(file({ stakes: bad }))).toHaveLength(3);
  });
});
