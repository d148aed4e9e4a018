/** A drag on a handle of the plan: begin, follow in field feet, end or abort. */
import type { Point } from '../../geometry/point';
import { session } from '../state/session.svelte';
import type { Project } from '../../project/model';

export interface DragOptions {
  readonly label: string;
  /** Pixels of the drawing to field feet. */
  readonly toField: (p: Point) => Point;
  /** Makes one moment of the drag, of the project as the drag found it. */
  readonly change: (base: Project, from: Point, to: Point) => void;
  readonly hold?: (active: boolean) => void;
}

export function dragHandle(node: SVGElement, initial: DragOptions) {
  let options = initial;
  let from: Point | null = null;

  const at = (e: PointerEvent): Point => {
    const box = node.ownerSVGElement!.getBoundingClientRect();
    return options.toField({ x: e.clientX - box.left, y: e.clientY - box.top });
  };

  function down(e: PointerEvent): void {
    if (e.button !== 0) return;
    e.preventDefault();
    e.stopPropagation();
    node.setPointerCapture(e.pointerId);
    node.focus();
    from = at(e);
    session.beginDrag(options.label);
    options.hold?.(true);
  }

  function move(e: PointerEvent): void {
    if (!from || !session.undo.dragging) return;
    const base = session.undo.base;
    if (base) options.change(base, from, at(e));
  }

  function up(e: PointerEvent): void {
    if (!from) return;
    from = null;
    options.hold?.(false);
    if (!session.undo.dragging) return;
    if (e.type === 'pointerup') session.endDrag();
    else session.abortDrag();
  }

  node.addEventListener('pointerdown', down as EventListener);
  node.addEventListener('pointermove', move as EventListener);
  node.addEventListener('pointerup', up as EventListener);
  node.addEventListener('pointercancel', up as EventListener);
  return {
    update(next: DragOptions): void {
      options = next;
    },
    destroy(): void {
      node.removeEventListener('pointerdown', down as EventListener);
      node.removeEventListener('pointermove', move as EventListener);
      node.removeEventListener('pointerup', up as EventListener);
      node.removeEventListener('pointercancel', up as EventListener);
    },
  };
}

/** Rounds to the inch, or to the centimetre: the step of design. */
export function snap(ft: number, metric: boolean): number {
  const step = metric ? 0.01 / 0.3048 : 1 / 12;
  return Math.round(ft / step) * step;
}
