import type { Capture } from '../../capture/capture.ts';
import type { EngineTrack } from '../engineTrack.ts';
import type { Stretch, WindowKind } from '../window.ts';

/** How one kind of window is found and recognised: one file in this folder, one line in its index. */
export interface WindowKindRule {
  readonly kind: WindowKind;
  /** In words, for tabs and lists: "Hold". */
  readonly words: string;
  /** At most this many are offered for one capture, the longest first. */
  readonly offers: number;
  /** Whether such a stretch is offered without its settling and in pieces. */
  readonly steady: boolean;
  /** Stretches of this kind over the whole capture, in order, not overlapping. */
  find(track: EngineTrack, capture: Capture): Stretch[];
}

/** Value of a tracked quantity at a step, NaN where it was not recorded. */
export function at(track: EngineTrack, quantity: keyof EngineTrack['of'], step: number): number {
  return track.of[quantity]?.[step] ?? Number.NaN;
}
