import type { Bank } from '../capture/roles.ts';
import type { Seconds } from '../units/quantities.ts';

/** A stretch of a capture, from startS to endS, startS < endS. */
export interface Stretch {
  readonly startS: Seconds;
  readonly endS: Seconds;
}

/**
 * What the engine does in a window. 'hold' is a warmed engine held at a steady raised speed in the bay; 'cruise' the
 * same on the road; 'mixed' is a stretch a person marked that is none of the others.
 */
export const WINDOW_KINDS = ['hold', 'cruise', 'idle', 'snap', 'fuelCut', 'mixed'] as const;
export type WindowKind = (typeof WINDOW_KINDS)[number];

/** How a window came about: offered by the core, an offer accepted, an offer changed afterwards, or made by hand. */
export const WINDOW_ORIGINS = ['suggested', 'accepted', 'changed', 'byHand'] as const;
export type WindowOrigin = (typeof WINDOW_ORIGINS)[number];

/** A window of the core: where, of which bank (null: whole engine, or every bank), what kind, and where from. */
export interface CaptureWindow extends Stretch {
  readonly bank: Bank;
  readonly kind: WindowKind;
  readonly origin: WindowOrigin;
}
