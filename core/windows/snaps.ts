import type { Capture } from '../capture/capture.ts';
import { remember } from '../signal/remember.ts';
import { type EngineTrack, engineTrack } from './engineTrack.ts';
import { at } from './kinds/windowKindRule.ts';
import type { Stretch } from './window.ts';

/** The engine must gain this much within RISE_S and give most of it back within BACK_S, standing. */
const GAIN_RPM = 900;
const RISE_S = 2;
const BACK_S = 8;

/** Snaps of the throttle while the vehicle stands, each from its start to the moment the engine has come back. */
export const snaps = remember((capture: Capture): Stretch[] => {
  const track = engineTrack(capture);
  if (!track.of.rpm) return [];
  const rise = Math.max(1, Math.round(RISE_S / track.stepS));
  const found: Stretch[] = [];
  for (let k = 0; k + rise < track.length; k++) {
    const from = at(track, 'rpm', k);
    if (!(at(track, 'rpm', k + rise) - from >= GAIN_RPM) || at(track, 'speed', k) > 3) continue;
    const back = comesBack(track, k + rise, from);
    if (back === null) continue;
    found.push({ startS: firstMove(track, k, rise) * track.stepS, endS: back * track.stepS });
    k = back;
  }
  return found;
});

/** Last step before the climb, so that the window's start does not depend on how soon the search saw it. */
function firstMove(track: EngineTrack, k: number, rise: number): number {
  let first = k;
  while (first < k + rise && at(track, 'rpm', first + 1) - at(track, 'rpm', k) < GAIN_RPM / 10) first++;
  return first;
}

/** The step at which two thirds of the gain are lost again, or null where the speed was kept: then it was no snap. */
function comesBack(track: EngineTrack, top: number, from: number): number | null {
  let peak = at(track, 'rpm', top);
  const end = Math.min(track.length, top + Math.round(BACK_S / track.stepS));
  for (let k = top; k < end; k++) {
    const rpm = at(track, 'rpm', k);
    if (rpm > peak) peak = rpm;
    if (rpm < from + (peak - from) / 3) return k;
  }
  return null;
}
