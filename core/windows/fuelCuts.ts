import type { Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import { type EngineTrack, engineTrack } from './engineTrack.ts';
import { loopOf } from './fuelStatusCode.ts';
import { at } from './kinds/windowKindRule.ts';
import type { Stretch } from './window.ts';

const LEAST_S = 1.5;

/**
 * Stretches in which the engine most likely gets no fuel: the fuel system says so (open by load or fuel cut while the
 * throttle is closed), or, where it says nothing, the throttle is at its lowest while the engine turns well above idle
 * and slows down. The injectors themselves are in no data list, so this is an inference, and whoever uses it checks
 * that the front sensor went lean.
 */
export const fuelCuts = remember((capture: Capture): Stretch[] => {
  const track = engineTrack(capture);
  if (!track.of.rpm) return [];
  const closedAt = closedThrottle(track);
  const cuts: Stretch[] = [];
  let start = -1;
  for (let k = 0; k <= track.length; k++) {
    if (k < track.length && noFuel(track, k, closedAt)) {
      if (start < 0) start = k;
      continue;
    }
    if (start >= 0 && (k - start) * track.stepS >= LEAST_S)
      cuts.push({ startS: start * track.stepS, endS: k * track.stepS });
    start = -1;
  }
  return cuts;
});

function noFuel(track: EngineTrack, step: number, closedAt: number): boolean {
  const rpm = at(track, 'rpm', step);
  if (!(rpm >= 1050)) return false;
  const closed = at(track, 'throttle', step) <= closedAt;
  const status = at(track, 'fuelStatus', step);
  if (Number.isFinite(status)) return loopOf(status) === 'openByLoadOrFuelCut' && (closed || closedAt < 0);
  const before = at(track, 'rpm', Math.max(0, step - Math.round(1 / track.stepS)));
  return closed && rpm < before - 15;
}

/** Throttle reading below which it is closed: a little above the lowest that was held; -1 where none was recorded. */
function closedThrottle(track: EngineTrack): number {
  const throttle = track.of.throttle;
  if (!throttle) return -1;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of throttle) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return highest - lowest < 4 ? -1 : lowest + Math.min(1.5, 0.12 * (highest - lowest));
}
