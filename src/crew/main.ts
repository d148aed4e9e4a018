/** Starts the page: lists inside it, or in the address behind the `#`, or kept from before. */
import './crew.css';
import { decodeCrewList } from '../exchange/crew-code';
import type { CrewList } from '../exchange/crew-data';
import type { CrewBundle } from '../exchange/crew-page';
import { el } from './dom';
import type { CrewSource } from './job';
import { isIn } from './log';
import { mountCrew } from './page';
import { serveOffline } from './serve-offline';
import { openStore, type Store } from './store';

const host = document.getElementById('crew')!;
const store = openStore();
let stop: (() => void) | null = null;

function readLists(codes: readonly string[]): CrewList[] {
  return codes.flatMap((code) => {
    const list = decodeCrewList(code);
    return list.ok ? [list.value] : [];
  });
}

/** The lists that are written into this page, or null when it came without. */
function inside(): CrewSource | null {
  const data = document.getElementById('crew-data')?.textContent ?? '{}';
  const { crew } = JSON.parse(data) as { crew: CrewBundle | null };
  if (!crew) return null;
  return {
    lists: readLists(crew.codes),
    lines: crew.lines,
    touches: crew.touches,
    name: crew.name,
  };
}

/** Lists of the plan that a code belongs to, with those opened before; the newest of each part. */
function fromCode(list: CrewList, text: string): CrewSource {
  const isSame = (other: string): boolean => {
    const [before] = readLists([other]);
    return before?.round === list.round && before.part === list.part;
  };
  const codes = [...store.codes(list.plan).filter((other) => !isSame(other)), text];
  const kept = store.keepCodes(list.plan, codes);
  // Kept lists open by themselves at a reload, where the hand is then; else the address has to do it.
  if (kept) history.replaceState(null, '', location.pathname);
  else show('This browser keeps nothing for this page: scan the code again after it was closed.');
  const log = store.round(list.plan, list.round);
  const next = list.stakes.find((s) => !isIn(log, s.id)) ?? list.stakes[0];
  if (next) store.keepPlace(list.plan, { ...store.place(list.plan), stake: next.id });
  return fromCodes(codes);
}

function fromCodes(codes: readonly string[]): CrewSource {
  const lists = readLists(codes).sort((a, b) => a.round - b.round || a.part - b.part);
  return { lists, lines: [], touches: {}, name: lists[0]?.name ?? '' };
}

function kept(from: Store): CrewSource | null {
  const plan = from.lastPlan();
  const codes = plan === null ? [] : from.codes(plan);
  return codes.length > 0 ? fromCodes(codes) : null;
}

function show(what: string, fix = ''): void {
  host.append(el('p', { class: 'crew crew-none', role: 'alert' }, `▲ ${what} ${fix}`.trim()));
}

/** A sentence from a problem's words. */
const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function open(): void {
  stop?.();
  stop = null;
  host.replaceChildren();
  const source = inside() ?? fromAddress();
  if (source) stop = mountCrew(host, source, { store });
}

function fromAddress(): CrewSource | null {
  const text = location.hash.slice(1);
  if (text === '') {
    const before = kept(store);
    if (!before) show('No round is open here.', 'Scan a code on the code sheet of the packet.');
    return before;
  }
  const list = decodeCrewList(text, 'the printed code');
  if (list.ok) return fromCode(list.value, text);
  const [problem] = list.problems;
  show(sentence(`this code cannot be read: ${problem!.what}`), sentence(problem!.fix));
  return null;
}

open();
addEventListener('hashchange', open);
serveOffline();
