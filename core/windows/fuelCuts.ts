import type { Capture } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import { type EngineTrack, engineTrack } from './engineTrack.ts';
import { loopOf } from './fuelStatusCode.ts';
import { at } from './kinds/windowKindRule.ts';
import type { Stretch } from './window.ts';

/** A shorter cut fills no converter and moves no rear sensor. */
const LEAST_S: Seconds = 1;
/** Where neither status nor throttle tell of it, only a stretch longer than a lean half of the control's swing is one. */
const LEAST_UNTOLD_S: Seconds = 2.5;
/** No engine gets its fuel cut near idle. */
const LEAST_RPM = 1050;
/** Speed lost within a second by an engine that coasts without anything else telling of it. */
const FALLS_RPM = 60;
/** Gas needs this long at most from the valves to the front sensor and through it. */
const GAS_S: Seconds = 0.8;
/** What the front sensor reads in air, and the share of the cut in which it must. */
const AIR_V = 0.15;
const AIR_LAMBDA = 1.15;
const IN_AIR = 0.6;

/**
 * Stretches in which the engine gets no fuel. The injectors are in no data list, so this is an inference: the fuel
 * system says that it is open by load or fuel cut with a closed throttle; or, where it says nothing, the throttle is
 * closed, or not recorded, while the engine coasts down from above idle. Where a front sensor was recorded it must read
 * air for most of the stretch; without one, only what status or throttle tell is believed.
 */
export const fuelCuts = remember((capture: Capture): Stretch[] => {
  const track = engineTrack(capture);
  if (!track.of.rpm) return [];
  const front = capture.channels.find(({ role }) => role === 'upstreamO2' || role === 'upstreamLambda') ?? null;
  const closedAt = closedThrottle(track);
  if (!front && closedAt === null && !track.of.fuelStatus) return [];
  const leastS = closedAt === null && !track.of.fuelStatus ? LEAST_UNTOLD_S : LEAST_S;
  const cuts: Stretch[] = [];
  let start = -1;
  for (let k = 0; k <= track.length; k++) {
    const cut = k < track.length && noFuel(track, k, closedAt);
    if (cut && start < 0) start = k;
    if (cut || start < 0) continue;
    const stretch = { startS: start * track.stepS, endS: k * track.stepS };
    if (stretch.endS - stretch.startS >= leastS && (!front || readsAir(front, stretch))) cuts.push(stretch);
    start = -1;
  }
  return cuts;
});

function noFuel(track: EngineTrack, step: number, closedAt: number | null): boolean {
  const rpm = at(track, 'rpm', step);
  if (!(rpm >= LEAST_RPM)) return false;
  const closed = closedAt === null || at(track, 'throttle', step) <= closedAt;
  const status = at(track, 'fuelStatus', step);
  if (Number.isFinite(status)) return loopOf(status) === 'openByLoadOrFuelCut' && closed;
  const before = at(track, 'rpm', Math.max(0, step - Math.round(1 / track.stepS)));
  return closed && rpm < before - (closedAt === null ? FALLS_RPM : FALLS_RPM / 4);
}

/** Whether the front sensor reads air in a stretch, gas on its way left out. */
function readsAir(front: Channel, { startS, endS }: Stretch): boolean {
  const { values } = seriesOf(front, Math.min(startS + GAS_S, (startS + endS) / 2), endS + GAS_S / 2);
  const inAir = values.filter((value) => (front.role === 'upstreamO2' ? value <= AIR_V : value >= AIR_LAMBDA));
  return values.length > 0 && inAir.length >= IN_AIR * values.length;
}

/** Throttle reading below which it is closed: a little above the lowest that was held; null where it tells nothing. */
function closedThrottle(track: EngineTrack): number | null {
  const throttle = track.of.throttle;
  if (!throttle) return null;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const value of throttle) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return highest - lowest < 4 ? null : lowest + Math.min(1.5, 0.12 * (highest - lowest));
}
