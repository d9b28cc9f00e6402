// Follows one pointer from its press to its release. Escape, a pointer that is taken away, or a window that loses the
// pointer give it up.

export interface PointerFollower {
  move(event: PointerEvent): void;
  up(event: PointerEvent): void;
  abandon(): void;
}

/** Begins to follow the pointer of `press` on `element`; ends by itself. */
export function followPointer(element: Element, press: PointerEvent, follower: PointerFollower): void {
  const { pointerId } = press;
  const mine = (event: PointerEvent): boolean => event.pointerId === pointerId;
  const onMove = (event: Event): void => {
    if (event instanceof PointerEvent && mine(event)) follower.move(event);
  };
  const onUp = (event: Event): void => {
    if (!(event instanceof PointerEvent) || !mine(event)) return;
    stop();
    follower.up(event);
  };
  const giveUp = (): void => {
    stop();
    follower.abandon();
  };
  const onCancel = (event: Event): void => {
    if (event instanceof PointerEvent && mine(event)) giveUp();
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    giveUp();
  };
  const stop = (): void => {
    element.removeEventListener('pointermove', onMove);
    element.removeEventListener('pointerup', onUp);
    element.removeEventListener('pointercancel', onCancel);
    window.removeEventListener('keydown', onKey, true);
    window.removeEventListener('blur', giveUp);
    if (element.hasPointerCapture(pointerId)) element.releasePointerCapture(pointerId);
  };
  element.setPointerCapture(pointerId);
  element.addEventListener('pointermove', onMove);
  element.addEventListener('pointerup', onUp);
  element.addEventListener('pointercancel', onCancel);
  window.addEventListener('keydown', onKey, true);
  window.addEventListener('blur', giveUp);
}
