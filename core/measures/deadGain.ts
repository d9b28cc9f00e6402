import type { Seconds, Share } from '../units/quantities.ts';
import { likelySwitching } from './likelySwitching.ts';
import type { WindowData } from './measure.ts';
import { rearLife } from './rearLife.ts';

/** Lag of a usual rear sensor with the gas in its protective tube (from memory, order of magnitude). */
const REAR_LAG_S: Seconds = 0.12;
/** A sensor that has not been seen to move is taken to lag by no more than this. */
const LONGEST_LAG_S: Seconds = 0.8;

/**
 * Share of the front sensor's swing that a usual rear sensor could show if there were no converter at all: a first-order
 * lag makes a fast wave smaller, so a ratio of one half at 2 Hz is as bad as one near one at 0.5 Hz.
 */
export function deadGain(data: WindowData): Share {
  return gainAtLag(data, REAR_LAG_S);
}

/** The same for as slow a rear sensor as this one may be, by the quickest move it was seen to make (rearLife). */
export function slowestDeadGain(data: WindowData): Share {
  const channel = data.downstream?.channel;
  const lagS = channel ? rearLife(channel).lagAtMostS : LONGEST_LAG_S;
  return gainAtLag(data, Math.min(LONGEST_LAG_S, Math.max(REAR_LAG_S, lagS)));
}

function gainAtLag(data: WindowData, lagS: Seconds): Share {
  return 1 / Math.hypot(1, 2 * Math.PI * likelySwitching(data) * lagS);
}
