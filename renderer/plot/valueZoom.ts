import type { PaneLayout } from './traceStackProps.ts';

/** A scale by hand from the drawn one, with its extent times `factor`, the value at `share` of the height staying put. */
export function zoomValues(
  range: readonly [number, number],
  share: number,
  factor: number,
): Extract<PaneLayout['scale'], { kind: 'hand' }> {
  const [low, high] = range;
  const held = Math.min(1, Math.max(0, share));
  const extent = (high - low) * factor;
  const anchor = low + (high - low) * held;
  return { kind: 'hand', low: anchor - extent * held, high: anchor + extent * (1 - held) };
}
