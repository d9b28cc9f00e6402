import type { Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import { type EngineTrack, engineTrack } from './engineTrack.ts';
import { fuelCuts } from './fuelCuts.ts';
import { at } from './kinds/windowKindRule.ts';
import type { Stretch } from './window.ts';

/**
 * Time an idle needs to settle, after the engine came down and after a fuel cut has filled the converter: a good one stays
 * full, and the gas behind it lean, for as long as the little gas of an idle takes to empty it (10 to 30 s, from memory).
 */
const SETTLE_S: Seconds = 3;
const AFTER_CUT_S: Seconds = 20;
/** Sensors warm up in the first seconds of a capture that begins with the engine's start. */
const FROM_S: Seconds = 14;

/**
 * Every stretch of a capture, however short, in which the engine idled quietly: what the sensors read there is compared
 * with what they read at raised speed. In order, not overlapping. Empty without engine speed.
 */
export const quietIdle = remember((capture: Capture): Stretch[] => {
  const track = engineTrack(capture);
  const found: Stretch[] = [];
  let start = -1;
  for (let k = 0; k <= track.length; k++) {
    const idles = k < track.length && isIdle(track, k);
    if (idles && start < 0) start = k;
    if (idles || start < 0) continue;
    const startS = Math.max(FROM_S, start * track.stepS + SETTLE_S);
    const endS = (k - 1) * track.stepS;
    if (endS > startS) found.push({ startS, endS });
    start = -1;
  }
  const cuts = fuelCuts(capture);
  return found.flatMap((stretch) => {
    const cut = cuts.filter(({ endS }) => endS < stretch.endS).pop();
    const startS = Math.max(stretch.startS, cut ? cut.endS + AFTER_CUT_S : 0);
    return startS < stretch.endS ? [{ startS, endS: stretch.endS }] : [];
  });
});

function isIdle(track: EngineTrack, step: number): boolean {
  const rpm = at(track, 'rpm', step);
  return rpm >= 400 && rpm <= 1100 && !(at(track, 'speed', step) > 3);
}
