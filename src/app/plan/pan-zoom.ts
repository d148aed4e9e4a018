/** Pan by dragging, zoom about the pointer by wheel, pinch with two fingers, click for picking. */
import { panBy, zoomAt, type Size, type Viewport } from './viewport';

interface Options {
  readonly get: () => Viewport | null;
  readonly size: () => Size;
  readonly set: (v: Viewport) => void;
  readonly click?: (event: MouseEvent) => void;
}

const CLICK_SLOP_PX = 4;

export function panZoom(node: HTMLElement, options: Options) {
  const fingers = new Map<number, { x: number; y: number }>();
  let moved = 0;

  const local = (e: { clientX: number; clientY: number }) => {
    const box = node.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };

  function down(e: PointerEvent): void {
    if (e.button !== 0) return;
    node.setPointerCapture(e.pointerId);
    fingers.set(e.pointerId, local(e));
    if (fingers.size === 1) moved = 0;
  }

  function move(e: PointerEvent): void {
    const before = fingers.get(e.pointerId);
    const v = options.get();
    if (!before || !v) return;
    const now = local(e);
    moved += Math.hypot(now.x - before.x, now.y - before.y);
    const other = [...fingers].find(([id]) => id !== e.pointerId)?.[1];
    fingers.set(e.pointerId, now);
    if (!other) {
      if (moved > CLICK_SLOP_PX) options.set(panBy(v, now.x - before.x, now.y - before.y));
      return;
    }
    const was = Math.hypot(before.x - other.x, before.y - other.y);
    const is = Math.hypot(now.x - other.x, now.y - other.y);
    const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
    const zoomed = zoomAt(v, options.size(), middle, is / Math.max(1, was));
    options.set(panBy(zoomed, (now.x - before.x) / 2, (now.y - before.y) / 2));
  }

  function up(e: PointerEvent): void {
    const had = fingers.delete(e.pointerId);
    if (had && fingers.size === 0 && moved <= CLICK_SLOP_PX && e.type === 'pointerup') {
      options.click?.(e);
    }
  }

  function wheel(e: WheelEvent): void {
    const v = options.get();
    if (!v) return;
    e.preventDefault();
    const lines = e.deltaMode === 1 ? e.deltaY * 16 : e.deltaY;
    const rate = e.ctrlKey ? 0.01 : 0.0016;
    options.set(zoomAt(v, options.size(), local(e), Math.exp(-lines * rate)));
  }

  node.addEventListener('pointerdown', down);
  node.addEventListener('pointermove', move);
  node.addEventListener('pointerup', up);
  node.addEventListener('pointercancel', up);
  node.addEventListener('wheel', wheel, { passive: false });
  return {
    destroy(): void {
      node.removeEventListener('pointerdown', down);
      node.removeEventListener('pointermove', move);
      node.removeEventListener('pointerup', up);
      node.removeEventListener('pointercancel', up);
      node.removeEventListener('wheel', wheel);
    },
  };
}
