/** The page in the outfield: one stake at a time, what was done, and where the hand is. */
import { parseLength } from '../base/quantity';
import { el } from './dom';
import { writeCrewFile } from './write-crew-file';
import { joinJob, roundStakes, type CrewSource, type Job, type PlacedStake } from './job';
import {
  comeBack,
  entryOf,
  goOn,
  isIn,
  lastTickOf,
  pause,
  startRound,
  takeBack,
  tickStake,
  writeCheck,
  writeNote,
  type RoundLog,
  type StakeEntry,
} from './log';
import { offerFile } from './offer-file';
import { signalCheck } from './signal';
import type { Place, Store } from './store';
import { showCheck } from './views/check-view';
import { showList } from './views/list-view';
import { showNote } from './views/note-view';
import { showStake } from './views/stake-view';
import { showStart } from './views/start-view';
import { judgeCheck, type Verdict } from './words';

export type View = 'stake' | 'check' | 'note' | 'list';

/** What a view may read and do. */
export interface Crew {
  readonly job: Job;
  readonly now: PlacedStake;
  readonly index: number;
  readonly log: RoundLog;
  readonly entry: StakeEntry;
  readonly verdict: Verdict | null;
  readonly place: Place;
  /** False once this browser refused to keep something. */
  readonly keeps: boolean;
  readonly logOf: (round: number) => RoundLog;
  readonly verdictOf: (read: string) => Verdict | null;
  readonly open: (view: View) => void;
  readonly goTo: (index: number) => void;
  readonly goToId: (id: string) => boolean;
  readonly goToRound: (round: number) => void;
  readonly start: () => void;
  readonly tick: () => void;
  readonly takeBack: () => void;
  readonly check: (read: string) => void;
  readonly note: (note: string) => void;
  readonly pause: () => void;
  readonly goOn: () => void;
  readonly turn: () => void;
  readonly setSound: (on: boolean) => void;
  readonly save: () => void;
}

export interface CrewOptions {
  readonly store: Store;
  /** Milliseconds of the clock. */
  readonly clock?: () => number;
}

/** Puts the page for `source` into `host`; the returned function takes it out again. */
export function mountCrew(host: HTMLElement, source: CrewSource, options: CrewOptions): () => void {
  const job = joinJob(source);
  const root = el('div', { class: 'crew' });
  host.append(root);
  const stop = job ? run(root, job, options) : showNothing(root);
  return () => {
    stop();
    root.remove();
  };
}

function showNothing(root: HTMLElement): () => void {
  root.append(el('p', { class: 'crew-none' }, 'Nothing to set out: there are no stakes here.'));
  return () => undefined;
}

function run(root: HTMLElement, job: Job, { store, clock = Date.now }: CrewOptions): () => void {
  const logs = new Map(job.rounds.map((r) => [r.round, store.round(job.plan, r.round)]));
  let place = store.place(job.plan);
  let view: View = 'stake';
  let drawn: View | null = null;
  let keeps = true;
  const body = el('div', { class: 'crew-body' });
  const spoken = el('p', { class: 'crew-away', role: 'status' });
  root.append(body, spoken);

  const logOf = (round: number): RoundLog => logs.get(round)!;
  const found = (): number => job.stakes.findIndex((s) => s.stake.id === place.stake);
  const firstOpen = (): number =>
    job.stakes.findIndex((s) => !isIn(logOf(s.list.round), s.stake.id));
  const indexNow = (): number => Math.max(0, found() < 0 ? firstOpen() : found());
  const keepPlace = (change: Partial<Place>): void => {
    place = { ...place, ...change };
    keeps = store.keepPlace(job.plan, place) && keeps;
  };
  const change = (round: number, next: (log: RoundLog) => RoundLog): void => {
    logs.set(round, next(logOf(round)));
    keeps = store.keepRound(job.plan, round, logOf(round)) && keeps;
  };
  const tell = (words: string): void => {
    spoken.textContent = words;
  };

  function goTo(index: number): void {
    const to = job.stakes[Math.min(job.stakes.length - 1, Math.max(0, index))]!;
    const from = job.stakes[indexNow()]!;
    if (to.list.round !== from.list.round && logOf(to.list.round).startedAt !== null) {
      change(to.list.round, comeBack);
    }
    keepPlace({ stake: to.stake.id });
    view = 'stake';
    draw();
  }

  /** The next stake that is not in; the list when all are. */
  function goOnFrom(index: number): void {
    const order = [...job.stakes.keys()];
    const next = [...order.slice(index + 1), ...order.slice(0, index)].find(
      (i) => !isIn(logOf(job.stakes[i]!.list.round), job.stakes[i]!.stake.id),
    );
    if (next === undefined) open('list');
    else goTo(next);
  }

  function open(next: View): void {
    view = next;
    draw();
  }

  function verdictOf(read: string): Verdict | null {
    const { stake, list } = job.stakes[indexNow()]!;
    const value = parseLength(read, 'reading', list.system);
    return value.ok ? judgeCheck(stake.check, value.value, list.system) : null;
  }

  function check(read: string): void {
    const { stake, list } = job.stakes[indexNow()]!;
    const value = parseLength(read, 'reading', list.system);
    const verdict = verdictOf(read);
    change(list.round, (log) =>
      writeCheck(log, stake.id, verdict ? read.trim() : '', value.ok ? value.value : null),
    );
    open('stake');
    if (!verdict) return tell('Check taken out');
    signalCheck(verdict.good, `${stake.id}. ${verdict.said}`, place.sound);
    tell(`${stake.id}: ${verdict.text}`);
  }

  function crewNow(): Crew {
    const index = indexNow();
    const now = job.stakes[index]!;
    const { stake, list } = now;
    const log = logOf(list.round);
    const entry = entryOf(log, stake.id);
    const others = job.rounds.filter((r) => r.round !== list.round);
    const lastTick = Math.max(...others.map((r) => lastTickOf(logOf(r.round)) ?? -Infinity));
    const set = (next: (log: RoundLog) => RoundLog): void => change(list.round, next);
    return {
      ...{ job, now, index, log, entry, place, keeps, logOf, verdictOf, open, goTo, check },
      verdict: entry.readFt === null ? null : judgeCheck(stake.check, entry.readFt, list.system),
      goToId: (id) => {
        const i = job.stakes.findIndex((s) => s.stake.id.toLowerCase() === id.trim().toLowerCase());
        if (i >= 0) goTo(i);
        return i >= 0;
      },
      goToRound: (round) => {
        const own = roundStakes(job, round);
        const first = own.find((s) => !isIn(logOf(round), s.stake.id)) ?? own[0]!;
        goTo(job.stakes.indexOf(first));
      },
      start: () => {
        set((l) => startRound(l, clock(), Number.isFinite(lastTick) ? lastTick : null));
        open('stake');
      },
      tick: () => {
        set((l) => tickStake(l, stake.id, clock()));
        goOnFrom(index);
        tell(`${stake.id} is set`);
      },
      takeBack: () => {
        set((l) => takeBack(l, stake.id));
        open('stake');
      },
      note: (note) => {
        set((l) => writeNote(l, stake.id, note));
        open('stake');
      },
      pause: () => {
        set((l) => pause(l, clock()));
        draw();
      },
      goOn: () => {
        set((l) => goOn(l, clock()));
        draw();
      },
      turn: () => {
        keepPlace({ facing: place.facing + 1 });
        draw();
      },
      setSound: (sound) => {
        keepPlace({ sound });
        draw();
      },
      save: () => {
        const file = writeCrewFile(job, logOf, clock());
        offerFile(`crew-${job.plan}.json`, file);
      },
    };
  }

  function draw(): void {
    const kept = view === drawn ? document.activeElement?.getAttribute('data-key') : null;
    if (view !== drawn) body.scrollTop = 0;
    drawn = view;
    const crew = crewNow();
    body.replaceChildren();
    if (view === 'list') showList(body, crew);
    else if (crew.log.startedAt === null) showStart(body, crew);
    else if (view === 'check') showCheck(body, crew);
    else if (view === 'note') showNote(body, crew);
    else showStake(body, crew);
    const again = kept ? body.querySelector<HTMLElement>(`[data-key="${kept}"]`) : null;
    const first = body.querySelector<HTMLElement>('[data-focus]');
    (again ?? first)?.focus({ preventScroll: true });
  }

  function onKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (view !== 'stake') {
      if (event.key === 'Escape') open('stake');
      return;
    }
    const keys: Readonly<Record<string, () => void>> = {
      ArrowRight: () => goTo(indexNow() + 1),
      ArrowLeft: () => goTo(indexNow() - 1),
      c: () => open('check'),
      n: () => open('note'),
      l: () => open('list'),
    };
    const act = Object.hasOwn(keys, event.key) ? keys[event.key] : undefined;
    if (!act) return;
    event.preventDefault();
    act();
  }

  const onSize = (): void => {
    if (view === 'stake') draw();
  };
  document.addEventListener('keydown', onKey);
  window.addEventListener('resize', onSize);
  draw();
  return () => {
    document.removeEventListener('keydown', onKey);
    window.removeEventListener('resize', onSize);
  };
}
