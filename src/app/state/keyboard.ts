/** Keys that work everywhere: undo, redo, arrows to nudge, escape to let go. */
import { moveGraphic } from '../../project/edits';
import { stepDrive, stepPass, togglePlay, wholePlan } from '../drive/play';
import { isStill } from '../drive/still.svelte';
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
  } else if (event.key === ' ' && isOnPlan(event) && session.plan && !isStill()) {
    event.preventDefault();
    togglePlay(session.plan);
  } else if (!command && ARROWS[event.key] && !(event.target instanceof HTMLInputElement)) {
    arrow(event);
  }
}

/** A space that is no button's own. */
const isOnPlan = (event: KeyboardEvent): boolean =>
  view.stage === 'passes' &&
  !(
    event.target instanceof HTMLElement && event.target.closest('button, input, label, a') !== null
  );

function letGo(): void {
  if (session.undo.dragging) session.abortDrag();
  else if (view.jobOpen) view.jobOpen = false;
  else if (view.problemsOpen) view.problemsOpen = false;
  else if (view.how !== null) view.how = null;
  else if (view.stage === 'passes' && view.driveAt !== null) wholePlan();
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
  } else if (view.stage === 'passes' && dx !== 0 && session.plan) {
    event.preventDefault();
    if (event.shiftKey) stepPass(session.plan, dx > 0 ? 1 : -1);
    else stepDrive(session.plan, dx > 0 ? 1 : -1);
  } else if (view.stage === 'stakes' && dx !== 0) {
    event.preventDefault();
    stepStake(dx);
  }
}
