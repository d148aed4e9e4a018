/** A check reading, typed with keys that a thumb finds; judged while it is typed. */
import { button, el } from '../dom';
import type { Crew } from '../page';
import { lengthText, limitText } from '../words';

const FEET_KEYS = ['7', '8', '9', '¼', '4', '5', '6', '½', '1', '2', '3', '¾', '⌫', '0', '′', '″'];
const METRE_KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '⌫', '0', '.'];
const SHOWN: Readonly<Record<string, string>> = { '′': '′ ft', '″': '″ in' };
const NAMES: Readonly<Record<string, string>> = {
  '¼': 'a quarter',
  '½': 'a half',
  '¾': 'three quarters',
  '⌫': 'wipe the last',
  '′': 'feet',
  '″': 'inches',
  '.': 'point',
};

export function showCheck(body: HTMLElement, crew: Crew): void {
  const { stake, list } = crew.now;
  const field = el('input', {
    ...{ id: 'crew-read', type: 'text', inputmode: 'none', autocomplete: 'off' },
    ...{ 'data-focus': true, 'aria-describedby': 'crew-says' },
  });
  field.value = crew.entry.read;
  const says = el('p', { id: 'crew-says', class: 'crew-says', role: 'status' });
  const judge = (): void => {
    const verdict = field.value.trim() === '' ? null : crew.verdictOf(field.value);
    says.textContent = verdict
      ? `${verdict.good ? '✓' : '▲'} ${verdict.text}`
      : `Good within ${limitText(stake.check.limit, list.system)}`;
    says.classList.toggle('crew-bad', verdict?.good === false);
  };
  const done = (event: Event): void => {
    event.preventDefault();
    const empty = field.value.trim() === '';
    if (empty || crew.verdictOf(field.value)) return crew.check(field.value);
    says.textContent =
      list.system === 'metric'
        ? '▲ Not a length. Type it like 45.72'
        : '▲ Not a length. Type it like 148′ 2½ or 148 2';
    says.classList.add('crew-bad');
  };
  field.addEventListener('input', judge);
  const press = (key: string): void => {
    if (key === '⌫') field.value = field.value.trimEnd().slice(0, -1);
    else field.value += key === '′' ? '′ ' : key;
    field.focus();
    judge();
  };
  body.append(
    el(
      'form',
      { class: 'crew-write', onsubmit: done },
      el('h1', {}, `${stake.id} from ${stake.check.from}`),
      el(
        'p',
        { class: 'crew-should' },
        `The sheet says ${lengthText(stake.check.steps, list.system)}`,
      ),
      el('label', { for: 'crew-read' }, 'You read'),
      field,
      says,
      keypad(list.system === 'metric' ? METRE_KEYS : FEET_KEYS, press),
      el(
        'div',
        { class: 'crew-foot' },
        el('button', { type: 'submit', class: 'crew-main' }, 'Check it'),
        button('crew-link', 'Back', () => crew.open('stake')),
      ),
    ),
  );
  judge();
}

const keypad = (keys: readonly string[], press: (key: string) => void): HTMLElement =>
  el(
    'div',
    {
      class: keys.length > 12 ? 'crew-keys crew-four' : 'crew-keys',
      role: 'group',
      'aria-label': 'Keys',
    },
    ...keys.map((key) =>
      button('crew-key', SHOWN[key] ?? key, () => press(key), { 'aria-label': NAMES[key] ?? key }),
    ),
  );
