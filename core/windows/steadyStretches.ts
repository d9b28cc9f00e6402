import type { Share } from '../units/quantities.ts';
import type { EngineTrack } from './engineTrack.ts';
import type { Stretch } from './window.ts';

/** What makes a stretch of the track steady. */
export interface Steadiness {
  /** Whether step k of the track belongs to this kind of running at all. */
  accepts(track: EngineTrack, step: number): boolean;
  /** The quantity that must keep still. */
  readonly quantity: 'rpm' | 'speed';
  /** How far it may lie to either side of the middle of its range: this much, or this share of it, whichever is more. */
  readonly within: number;
  readonly withinShare: Share;
  readonly leastS: number;
}

/**
 * Stretches in which the engine runs as asked and the quantity keeps still: greedy from the left, each stretch grows as
 * long as the span between its lowest and highest value allows. They do not overlap and come in order.
 */
export function steadyStretches(track: EngineTrack, steadiness: Steadiness): Stretch[] {
  const values = track.of[steadiness.quantity];
  if (!values) return [];
  const stretches: Stretch[] = [];
  let start = -1;
  let low = 0;
  let high = 0;
  const close = (end: number): void => {
    if (start >= 0 && (end - start) * track.stepS >= steadiness.leastS)
      stretches.push({ startS: start * track.stepS, endS: (end - 1) * track.stepS });
    start = -1;
  };
  for (let k = 0; k < track.length; k++) {
    const value = values[k] ?? Number.NaN;
    if (!Number.isFinite(value) || !steadiness.accepts(track, k)) {
      close(k);
      continue;
    }
    const nextLow = start < 0 ? value : Math.min(low, value);
    const nextHigh = start < 0 ? value : Math.max(high, value);
    const room = 2 * Math.max(steadiness.within, steadiness.withinShare * ((nextLow + nextHigh) / 2));
    if (start >= 0 && nextHigh - nextLow > room) {
      close(k);
      start = k;
      low = value;
      high = value;
      continue;
    }
    if (start < 0) start = k;
    low = nextLow;
    high = nextHigh;
  }
  close(track.length);
  return stretches;
}
