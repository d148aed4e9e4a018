/** A few words on one stake. */
import { button, el } from '../dom';
import type { Crew } from '../page';

const LONGEST = 300;

export function showNote(body: HTMLElement, crew: Crew): void {
  const { id } = crew.now.stake;
  const field = el('textarea', {
    ...{ id: 'crew-note', rows: 5, maxlength: LONGEST, 'data-focus': true },
  });
  field.value = crew.entry.note;
  body.append(
    el(
      'section',
      { class: 'crew-write' },
      el('h1', {}, `Note on ${id}`),
      el('label', { for: 'crew-note' }, 'What the office should know'),
      field,
    ),
    el(
      'div',
      { class: 'crew-foot' },
      button('crew-main', 'Keep the note', () => crew.note(field.value.trim())),
      button('crew-link', 'Back', () => crew.open('stake')),
    ),
  );
}
