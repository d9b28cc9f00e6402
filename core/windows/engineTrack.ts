import { type Capture, findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Role } from '../capture/roles.ts';
import { sampleCount, timeAt } from '../capture/timeBase.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';

/** Quantities of the engine that are read off together. */
const TRACKED = ['rpm', 'speed', 'throttle', 'coolant', 'maf', 'load', 'fuelStatus'] as const;
type Tracked = (typeof TRACKED)[number];

/**
 * What the engine was doing, read off at even steps over the whole capture: the one picture from which windows are
 * suggested and steadiness, warmth and fuel cuts are judged, whatever each channel's own rate was. All arrays have
 * `length` values; value k holds at k * stepS. NaN where the channel was silent for too long.
 */
export interface EngineTrack {
  readonly stepS: Seconds;
  readonly length: number;
  /** Null where the capture has no such channel. */
  readonly of: Readonly<Record<Tracked, Float32Array | null>>;
}

const STEP_S = 0.25;
/** A capture longer than this is read off in longer steps, so that the track never grows beyond a quarter million. */
const LONGEST = 250_000;

/** The engine's track of a capture; computed once per capture. */
export const engineTrack = remember((capture: Capture): EngineTrack => {
  const stepS = Math.max(STEP_S, capture.durationS / LONGEST);
  const length = Math.max(1, Math.floor(capture.durationS / stepS) + 1);
  const of: Record<Tracked, Float32Array | null> = {
    rpm: null,
    speed: null,
    throttle: null,
    coolant: null,
    maf: null,
    load: null,
    fuelStatus: null,
  };
  for (const role of TRACKED) {
    const channel = wholeEngineChannel(capture, role);
    of[role] = channel ? readOff(channel, stepS, length) : null;
  }
  return { stepS, length, of };
});

/** The channel of a role for the whole engine, or else the one of bank 1, or of any bank. */
export function wholeEngineChannel(capture: Capture, role: Role): Channel | null {
  return findChannel(capture, role, null) ?? findChannel(capture, role, 1) ?? findChannel(capture, role, 2);
}

/** Each step takes the last finite value before it, if that is not older than a few of the channel's intervals. */
function readOff(channel: Channel, stepS: Seconds, length: number): Float32Array {
  const rate = channel.facts.renewalRateHz > 0 ? channel.facts.renewalRateHz : channel.facts.medianRateHz;
  const oldestS = Math.max(2, rate > 0 ? 6 / rate : 2);
  const out = new Float32Array(length).fill(Number.NaN);
  const count = sampleCount(channel.time);
  let i = 0;
  let value = Number.NaN;
  let takenS = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < length; k++) {
    const now = k * stepS + 1e-9;
    for (; i < count; i++) {
      const t = timeAt(channel.time, i);
      if (t > now) break;
      const sample = channel.values[i] ?? Number.NaN;
      if (!Number.isFinite(sample)) continue;
      value = sample;
      takenS = t;
    }
    if (now - takenS <= oldestS) out[k] = value;
  }
  return out;
}

/** Finite values of one tracked quantity between two moments, both included. Empty where it was not recorded. */
export function trackedBetween(track: EngineTrack, quantity: Tracked, startS: Seconds, endS: Seconds): Float32Array {
  const values = track.of[quantity];
  if (!values) return new Float32Array(0);
  const first = Math.max(0, Math.ceil(startS / track.stepS - 1e-6));
  const end = Math.min(track.length, Math.floor(endS / track.stepS + 1e-6) + 1);
  return values.slice(first, Math.max(first, end)).filter((value) => Number.isFinite(value));
}
