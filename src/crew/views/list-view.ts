/** Rounds, stakes by number, and what concerns the whole list. */
import { button, el } from '../dom';
import { missingParts, roundStakes } from '../job';
import { entryOf, isIn } from '../log';
import type { Crew } from '../page';
import { judgeCheck } from '../words';
import { keepsNothing } from './start-view';

export function showList(body: HTMLElement, crew: Crew): void {
  const { stakes, source } = crew.job;
  const done = stakes.filter((s) => isIn(crew.logOf(s.list.round), s.stake.id)).length;
  const standing =
    done === stakes.length
      ? `All ${done} stakes are set`
      : `${done} of ${stakes.length} stakes are set`;
  body.append(
    el(
      'section',
      { class: 'crew-list' },
      el('p', { class: 'crew-job' }, source.name),
      el('h1', { tabindex: -1, 'data-focus': true }, standing),
      crew.keeps ? null : keepsNothing(),
      jumpForm(crew),
      el('h2', {}, 'Rounds'),
      ...crew.job.rounds.map((list) => roundRow(crew, list.round, list.rounds)),
      el('h2', {}, `Round ${crew.now.list.round}`),
      el(
        'div',
        { class: 'crew-grid' },
        ...roundStakes(crew.job, crew.now.list.round).map((s) => stakeCell(crew, s.stake.id)),
      ),
      el('h2', {}, 'This phone'),
      crew.log.pausedAt === null
        ? button('crew-second', 'Pause: count no time', crew.pause, { 'data-key': 'pause' })
        : button('crew-second', 'Paused: go on', crew.goOn, { 'data-key': 'pause' }),
      button(
        'crew-second',
        crew.place.sound ? 'Sound is on' : 'Sound is off',
        () => crew.setSound(!crew.place.sound),
        { 'data-key': 'sound', 'aria-pressed': crew.place.sound ? 'true' : 'false' },
      ),
      button('crew-second', 'Save times, checks and notes', crew.save, { 'data-key': 'save' }),
      el(
        'p',
        {},
        'Bring the file back to the job: its Hours stage reads the crew’s own pace from it.',
      ),
    ),
    el(
      'div',
      { class: 'crew-foot' },
      button('crew-main', `Back to ${crew.now.stake.id}`, () => crew.open('stake'), {
        'data-key': 'main',
      }),
    ),
  );
}

function jumpForm(crew: Crew): HTMLElement {
  const field = el('input', {
    ...{ type: 'text', id: 'crew-jump', autocomplete: 'off', autocapitalize: 'characters' },
    ...{ 'data-key': 'jump', 'aria-describedby': 'crew-jump-says' },
  });
  const says = el('p', { id: 'crew-jump-says', class: 'crew-bad', role: 'alert' });
  const go = (event: Event): void => {
    event.preventDefault();
    if (!crew.goToId(field.value)) says.textContent = `▲ No stake ${field.value} on this phone.`;
  };
  return el(
    'form',
    { class: 'crew-jump', onsubmit: go },
    el('label', { for: 'crew-jump' }, 'Go to stake'),
    field,
    el('button', { type: 'submit', class: 'crew-second' }, 'Go'),
    says,
  );
}

function roundRow(crew: Crew, round: number, of: number): HTMLElement {
  const list = crew.job.rounds.find((r) => r.round === round)!;
  const own = roundStakes(crew.job, round);
  const done = own.filter((s) => isIn(crew.logOf(round), s.stake.id)).length;
  const missing = missingParts(crew.job, round);
  const where = list.hold ? `tapes at ${list.hold.join(' and ')}` : 'short tapes';
  const state = done === own.length ? '✓ all set' : `${done} of ${own.length} set`;
  return button(
    round === crew.now.list.round ? 'crew-round crew-here' : 'crew-round',
    el(
      'span',
      {},
      el('strong', {}, `Round ${round} of ${of}`),
      el('span', {}, where),
      el('b', {}, missing > 0 ? `▲ ${missing} more code${missing > 1 ? 's' : ''} to open` : state),
    ),
    () => crew.goToRound(round),
    { 'data-key': `round-${round}` },
  );
}

function stakeCell(crew: Crew, id: string): HTMLElement {
  const { list, stake } = crew.job.stakes.find((s) => s.stake.id === id)!;
  const { readFt, note } = entryOf(crew.logOf(list.round), id);
  const bad = readFt !== null && !judgeCheck(stake.check, readFt, list.system).good;
  const inNow = isIn(crew.logOf(list.round), id);
  const marks = `${bad ? '▲' : inNow ? '✓' : ''}${note === '' ? '' : ' …'}`;
  const words = [inNow ? 'set' : 'to go', bad ? 'check off' : '', note === '' ? '' : 'with a note'];
  return button(
    ['crew-cell', inNow ? 'crew-in' : '', id === crew.now.stake.id ? 'crew-here' : '']
      .join(' ')
      .trim(),
    `${id} ${marks}`.trim(),
    () => crew.goToId(id),
    { 'data-key': `stake-${id}`, 'aria-label': `${id}, ${words.filter(Boolean).join(', ')}` },
  );
}
