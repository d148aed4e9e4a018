/** Keys that work everywhere: undo, redo, arrows to nudge, escape to let go. */
import { moveGraphic } from '../../project/edits';
import { session } from './session.svelte';
import { stepStake } from './stake-walk';
import { view } from './view.svelte';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|SELECT|TEXTAREA)$/.test(target.tagName));

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function onKey(event: KeyboardEvent): void {
  const command = event.ctrlKey || event.metaKey;
  const key = event.key.toLowerCase();
  if (command && key === 's') {
    event.preventDefault();
    view.jobOpen = true;
    return;
  }
  if (
    isTyping(event.target) &&
    !(event.target instanceof HTMLInputElement && event.target.type === 'radio')
  )
    return;
  if (command && (key === 'y' || (key === 'z' && event.shiftKey))) {
    event.preventDefault();
    session.goForward();
  } else if (command && key === 'z') {
    event.preventDefault();
    session.goBack();
  } else if (event.key === 'Escape') {
    letGo();
  } else if (!command && ARROWS[event.key] && !(event.target instanceof HTMLInputElement)) {
    arrow(event);
  }
}

function letGo(): void {
  if (session.undo.dragging) session.abortDrag();
  else if (view.jobOpen) view.jobOpen = false;
  else if (view.problemsOpen) view.problemsOpen = false;
  else if (view.how !== null) view.how = null;
  else {
    view.stake = null;
    view.pass = null;
  }
}

function arrow(event: KeyboardEvent): void {
  const [dx, dy] = ARROWS[event.key]!;
  if (view.stage === 'design' && session.project?.art) {
    event.preventDefault();
    const step = (event.shiftKey ? 12 : 1) / 12;
    const { x, y } = session.project.art.placement.centre;
    session.apply(moveGraphic, { x: x + dx * step, y: y + dy * step }, 'nudge');
  } else if (view.stage === 'stakes' && dx !== 0) {
    event.preventDefault();
    stepStake(dx);
  }
}
