/** One stake: its readings as large as the page is wide, the side, the check, and the tick. */
import { button, el } from '../dom';
import { roundStakes } from '../job';
import { isIn } from '../log';
import type { Crew } from '../page';
import { drawSketch, FACINGS } from '../sketch';
import {
  kindName,
  lengthText,
  limitText,
  pullsOf,
  sideSentence,
  withPrimes,
  type Pull,
} from '../words';

const LARGEST_READING_PX = 72;

export function showStake(body: HTMLElement, crew: Crew): void {
  const sketch = el('div', { class: 'crew-sketch' });
  body.append(
    topLine(crew),
    heading(crew),
    ...pullsOf(crew.now.stake, crew.now.list.system).map(pullRow),
    sketch,
    checkRow(crew),
    buttons(crew),
  );
  if (crew.log.pausedAt !== null) body.append(pausedBar(crew));
  for (const reading of body.querySelectorAll<HTMLElement>('.crew-reading')) fitReading(reading);
  const { clientWidth, clientHeight } = sketch;
  sketch.append(
    drawSketch(crew.job, crew.now, crew.place.facing, { width: clientWidth, height: clientHeight }),
    button(
      'crew-turn',
      `↑ ${FACINGS[crew.place.facing % FACINGS.length]!(crew.now.stake)}`,
      crew.turn,
      {
        'data-key': 'turn',
        'aria-label': 'Turn the picture',
      },
    ),
  );
}

function topLine(crew: Crew): HTMLElement {
  const { list } = crew.now;
  const own = roundStakes(crew.job, list.round);
  const done = own.filter((s) => isIn(crew.log, s.stake.id)).length;
  const text = `${done} set, ${own.length - done} to go`;
  const bar = el('i', {});
  bar.style.width = `${(100 * done) / own.length}%`;
  return el(
    'header',
    { class: 'crew-top' },
    button('crew-link', `Round ${list.round} of ${list.rounds}`, () => crew.open('list'), {
      'data-key': 'list',
      'aria-label': `Round ${list.round} of ${list.rounds}: rounds and stakes`,
    }),
    el('p', {}, text),
    el(
      'div',
      {
        ...{ class: 'crew-bar', role: 'progressbar', 'aria-label': 'Stakes set, this round' },
        ...{ 'aria-valuemin': 0, 'aria-valuemax': own.length, 'aria-valuenow': done },
      },
      bar,
    ),
  );
}

function heading(crew: Crew): HTMLElement {
  const { stake } = crew.now;
  const { note } = crew.entry;
  return el(
    'div',
    { class: 'crew-head' },
    el(
      'h1',
      { class: stake.id.length > 2 ? 'crew-long' : null, tabindex: -1, 'data-focus': true },
      stake.id,
    ),
    el(
      'div',
      {},
      el('p', { class: 'crew-kind' }, kindName(stake)),
      el('p', {}, sideSentence(stake)),
    ),
    button('crew-note', note === '' ? 'Note' : 'Note ✓', () => crew.open('note'), {
      'data-key': 'note',
    }),
  );
}

function pullRow(pull: Pull): HTMLElement {
  const mark = el('i', { 'aria-hidden': 'true' }, pull.at === null ? '∟' : '▲');
  return el(
    'div',
    { class: 'crew-pull' },
    el('p', { class: 'crew-from' }, mark, pull.label),
    el('p', { class: 'crew-reading' }, pull.reading),
  );
}

/** As large as the row takes. */
function fitReading(reading: HTMLElement): void {
  const { clientWidth, scrollWidth } = reading;
  const size = Math.min(1, clientWidth / scrollWidth) * LARGEST_READING_PX;
  reading.style.fontSize = `${Math.floor(size)}px`;
}

function checkRow(crew: Crew): HTMLElement {
  const { stake, list } = crew.now;
  const { verdict, entry } = crew;
  const said = verdict
    ? `${verdict.good ? '✓' : '▲'} ${verdict.text}`
    : `good within ${limitText(stake.check.limit, list.system)}`;
  return el(
    'div',
    { class: 'crew-check' },
    el(
      'p',
      {},
      el('span', {}, `Check from ${stake.check.from}`),
      el('strong', {}, lengthText(stake.check.steps, list.system)),
    ),
    button(
      'crew-read',
      entry.readFt === null ? 'Enter what you read' : `You read ${withPrimes(entry.read)}`,
      () => crew.open('check'),
      { 'data-key': 'check' },
    ),
    el('p', { class: verdict?.good === false ? 'crew-verdict crew-bad' : 'crew-verdict' }, said),
  );
}

function buttons(crew: Crew): HTMLElement {
  const { index, job } = crew;
  const before = job.stakes[index - 1];
  const after = job.stakes[index + 1];
  return el(
    'div',
    { class: 'crew-buttons' },
    button('crew-step', before ? `‹ ${before.stake.id}` : '‹', () => crew.goTo(index - 1), {
      ...{ disabled: !before, 'data-key': 'back' },
      'aria-label': before ? `Back to ${before.stake.id}` : 'No stake before this',
    }),
    mainButton(crew),
    button('crew-step', after ? `${after.stake.id} ›` : '›', () => crew.goTo(index + 1), {
      ...{ disabled: !after, 'data-key': 'next' },
      'aria-label': after ? `Skip to ${after.stake.id}` : 'No stake after this',
    }),
  );
}

function mainButton(crew: Crew): HTMLElement {
  const { id } = crew.now.stake;
  const key = { 'data-key': 'main' };
  if (crew.entry.at !== null) {
    return button('crew-main', `${id} is set: take back`, crew.takeBack, key);
  }
  if (crew.verdict?.good !== false) return button('crew-main', `✓ ${id} is set`, crew.tick, key);
  return el(
    'div',
    { class: 'crew-pair' },
    button('crew-main', `▲ Set ${id} again`, () => crew.check(''), key),
    button('crew-link', `Leave ${id} as it is`, crew.tick, { 'data-key': 'leave' }),
  );
}

const pausedBar = (crew: Crew): HTMLElement =>
  el(
    'div',
    { class: 'crew-paused' },
    el('p', {}, 'Paused: no time is counted.'),
    button('crew-main', 'Go on', crew.goOn, { 'data-key': 'go-on' }),
  );
