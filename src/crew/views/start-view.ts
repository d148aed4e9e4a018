/** A round before its first stake: where the tapes are held, and the start of its time. */
import { button, el } from '../dom';
import { missingParts, roundStakes } from '../job';
import type { Crew } from '../page';

export function showStart(body: HTMLElement, crew: Crew): void {
  const { list } = crew.now;
  const count = roundStakes(crew.job, list.round).length;
  const missing = missingParts(crew.job, list.round);
  body.append(
    el(
      'section',
      { class: 'crew-start' },
      el('p', { class: 'crew-job' }, crew.job.source.name),
      el('h1', {}, `Round ${list.round} of ${list.rounds}`),
      el('p', {}, `${count} ${count === 1 ? 'stake' : 'stakes'}`),
      ...holdLines(crew),
      missing > 0
        ? el(
            'p',
            { class: 'crew-bad' },
            `▲ ${missing} more code${missing > 1 ? 's' : ''} of this round to open.`,
          )
        : null,
      crew.keeps ? null : keepsNothing(),
    ),
    el(
      'div',
      { class: 'crew-foot' },
      button('crew-main', list.hold ? 'Tapes are held: start' : 'Start', crew.start, {
        'data-key': 'main',
        'data-focus': true,
      }),
      button('crew-link', 'Rounds and stakes', () => crew.open('list'), { 'data-key': 'list' }),
    ),
  );
}

function holdLines(crew: Crew): HTMLElement[] {
  const { hold } = crew.now.list;
  if (!hold) return [el('p', { class: 'crew-hold' }, 'Short tapes, from stake to stake')];
  return hold.map((id) => {
    const touch = crew.job.source.touches[id];
    return el(
      'p',
      { class: 'crew-hold' },
      el('i', { 'aria-hidden': 'true' }, '▲'),
      `Hold a tape at ${id}`,
      touch ? el('span', {}, touch) : null,
    );
  });
}

/** Said as soon as the browser refuses: ticks live only as long as the page. */
export const keepsNothing = (): HTMLElement =>
  el(
    'p',
    { class: 'crew-bad' },
    '▲ This browser keeps nothing for this page. Leave it open, and save the file before it is closed.',
  );
