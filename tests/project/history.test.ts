import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProject } from '../../src/project/default-project';
import {
  abort,
  begin,
  commit,
  HISTORY_CAP,
  record,
  redo,
  redoLabel,
  startHistory,
  undo,
  undoLabel,
  update,
  type History,
} from '../../src/project/history';
import type { Project } from '../../src/project/model';

const named = (name: string): Project => ({ ...defaultProject(), name });
const names = (h: History): string[] => [...h.past.map((s) => s.project.name), h.present.name];

/** A random walk: what was done, to build any history that a person can reach. */
const act = fc.oneof(
  fc.record({ do: fc.constant('record' as const), name: fc.stringMatching(/^[a-d]$/) }),
  fc.record({ do: fc.constant('drag' as const), name: fc.stringMatching(/^[a-d]$/) }),
  fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const), name: fc.constant('') }),
);
type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;

function play(history: History, a: Act): History {
  if (a.do === 'undo') return undo(history);
  if (a.do === 'redo') return redo(history);
  if (a.do === 'record') return record(history, `to ${a.name}`, named(a.name));
  return commit(update(update(begin(history, `drag ${a.name}`), named('moving')), named(a.name)));
}

const anyHistory = fc
  .array(act, { maxLength: 25 })
  .map((acts) => acts.reduce(play, startHistory(named('start'))));

const run = (check: (h: History, name: string) => void): void =>
  fc.assert(fc.property(anyHistory, fc.stringMatching(/^[e-h]$/), check), {
    seed: 5,
    numRuns: 60,
  });

describe('history', () => {
  it('takes back what was done: undo after an edit is the project before it', () => {
    run((h, name) => {
      const after = record(h, 'edit', named(name));
      expect(after.present.name).toBe(name);
      expect(undo(after).present).toBe(h.present);
      expect(undoLabel(after)).toBe('edit');
      expect(redoLabel(undo(after))).toBe('edit');
    });
  });

  it('does again what was taken back: redo after undo changes nothing', () => {
    run((h) => {
      if (h.past.length === 0) expect(undo(h)).toEqual(h);
      else expect(stripKeys(redo(undo(h)))).toEqual(stripKeys(h));
      if (h.future.length === 0) expect(redo(h)).toEqual(h);
      else expect(stripKeys(undo(redo(h)))).toEqual(stripKeys(h));
    });
  });

  it('forgets what was undone once something new is done', () => {
    run((h, name) => {
      expect(record(undo(h), 'new', named(name)).future).toEqual([]);
      expect(commit(update(begin(undo(h), 'new'), named(name))).future).toEqual([]);
    });
  });

  it('keeps no step that changes nothing', () => {
    run((h, name) => {
      expect(record(h, 'nothing', { ...h.present })).toEqual(h);
      const there = update(begin(h, 'drag'), named(name));
      const andBack = commit(update(there, { ...h.present }));
      expect(andBack.past).toEqual(h.past);
      expect(andBack.future).toEqual(h.future);
      expect(andBack.present).toBe(h.present);
      expect(andBack.open).toBeNull();
    });
  });

  it('makes one step of a drag, and none of one given up', () => {
    run((h, name) => {
      let dragged = begin(h, 'drag');
      for (const stop of ['p', 'q', 'r', name]) {
        dragged = update(dragged, named(stop));
        expect(dragged.present.name).toBe(stop);
        expect(dragged.past).toEqual(h.past);
      }
      expect(abort(dragged)).toEqual(h);
      const done = commit(dragged);
      expect(names(done)).toEqual([...names(h), name]);
      expect(undo(done).present).toBe(h.present);
    });
  });

  it('joins a run of edits of one key into one step', () => {
    let h = startHistory(named('a'));
    for (const name of ['b', 'c', 'd']) h = record(h, 'nudge', named(name), 'nudge');
    expect(names(h)).toEqual(['a', 'd']);
    h = record(h, 'other', named('e'));
    h = record(h, 'nudge', named('f'), 'nudge');
    expect(names(h)).toEqual(['a', 'd', 'e', 'f']);
    h = record(redo(undo(h)), 'nudge', named('g'), 'nudge');
    expect(names(h)).toEqual(['a', 'd', 'e', 'f', 'g']);
  });

  it('finishes an open drag before anything else is done', () => {
    const dragging = update(begin(startHistory(named('a')), 'drag'), named('b'));
    expect(names(record(dragging, 'edit', named('c')))).toEqual(['a', 'b', 'c']);
    expect(undo(dragging).present.name).toBe('a');
    expect(update(startHistory(named('a')), named('b')).present.name).toBe('a');
  });

  it(`keeps the last ${HISTORY_CAP} steps`, () => {
    let h = startHistory(named('0'));
    for (let i = 1; i <= HISTORY_CAP + 20; i++) h = record(h, `step ${i}`, named(String(i)));
    expect(h.past.length).toBe(HISTORY_CAP);
    expect(h.past[0]!.project.name).toBe('20');
  });
});

/** A redone step no longer joins later edits; everything else is the same. */
const stripKeys = (h: History): History => ({
  ...h,
  past: h.past.map(({ label, project }) => ({ label, project })),
});
