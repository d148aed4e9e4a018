/** What a contour learns from a drawn outline that was found wanting, before it is fitted again. */
import type { ContourTask } from './draft-outline';
import { linkKey } from './fit-chain';
import type { JoinedContour } from './join-outline';
import { partFrom } from './part-contours';
import type { Offence } from './review-outline';

/** How much closer a stretch must keep after it was found too far off. */
const TIGHTEN = 0.8;
/** The same after it crossed another line that it cannot be parted from. */
const TIGHTEN_CROSSED = 0.5;

/** Tightens the rules where lines stray or cross; true when there is something to fit again. */
export function tightenOffences(offences: readonly Offence[]): boolean {
  const found = mergeOffences(offences);
  for (const offence of found) {
    const { task, from, to, crosses } = offence;
    task.chain = null;
    if (crosses && partFrom(offence, crosses)) continue;
    const factor = crosses ? TIGHTEN_CROSSED : TIGHTEN;
    for (let i = from; i <= to; i++) task.tube[i % task.trace.count]! *= factor;
  }
  return found.length > 0;
}

/** Each offending stretch once for all its gaps, and once for each line that it crosses. */
function mergeOffences(offences: readonly Offence[]): Offence[] {
  const seen = new Map<string, Offence>();
  for (const o of offences) {
    const c = o.crosses;
    const other = c ? `${c.task.art.contour} ${c.from} ${c.to}` : '';
    seen.set(`${o.task.art.contour} ${o.from} ${o.to} ${other}`, o);
  }
  return [...seen.values()];
}

/** Bans the pieces that stakes cannot draw; true when there were any. */
export function banFailed(
  tasks: readonly ContourTask[],
  joined: readonly JoinedContour[],
): boolean {
  let changed = false;
  joined.forEach((contour, i) => {
    if (contour.ok || contour.failed.kind === 'string') return;
    const task = tasks[i]!;
    if (contour.failed.kind === 'circle') task.circleAllowed = false;
    else task.banned.add(linkKey(task.trace, contour.failed.link.from, contour.failed.link.to));
    task.chain = null;
    changed = true;
  });
  return changed;
}
