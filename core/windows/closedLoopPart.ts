import type { Seconds } from '../units/quantities.ts';
import type { EngineTrack } from './engineTrack.ts';
import { loopOf } from './fuelStatusCode.ts';
import { at } from './kinds/windowKindRule.ts';
import type { Stretch } from './window.ts';

/** A closed part shorter than this is not worth the rest of the stretch. */
const LEAST_S: Seconds = 20;

/**
 * The longest part of a stretch in which the fuel system says that the loop is closed: the control empties the converter
 * after a fuel cut, and enriches under load, in open loop. The whole stretch where the status was not recorded, or where
 * no part of 20 s is closed: then that is what is to be said about it.
 */
export function closedLoopPart(track: EngineTrack, stretch: Stretch): Stretch {
  if (!track.of.fuelStatus) return stretch;
  const last = Math.min(track.length - 1, Math.floor(stretch.endS / track.stepS));
  let best = stretch;
  let most = 0;
  let start = -1;
  for (let k = Math.ceil(stretch.startS / track.stepS); k <= last + 1; k++) {
    const closed = k <= last && loopOf(at(track, 'fuelStatus', k)) === 'closed';
    if (closed && start < 0) start = k;
    if (closed || start < 0) continue;
    if (k - start > most) {
      most = k - start;
      best = { startS: start * track.stepS, endS: (k - 1) * track.stepS };
    }
    start = -1;
  }
  return most * track.stepS >= LEAST_S ? best : stretch;
}
