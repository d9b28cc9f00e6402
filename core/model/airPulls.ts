import type { Channel } from '../capture/channel.ts';
import { timeAt } from '../capture/timeBase.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import type { Seconds } from '../units/quantities.ts';
import type { Stretch } from '../windows/window.ts';
import { plateausOf } from './swing.ts';

/** Shorter than this a front sensor that shows air may be a misfire or a drop-out. */
const LEAST_S: Seconds = 0.5;
/** A hole in it that is no longer than this is a spike. */
const LONGEST_HOLE_S = 0.12;
/** A fuel cut lasts longer than the lean half of the control's own swing. */
const USUAL_TIMES = 1.5;
const SWITCH_V = 0.45;
/** A lambda that no running engine has. */
const AIR_LAMBDA = 1.3;
/** A switching sensor shows air this far below its lean plateau, and below this voltage. */
const BELOW_PLATEAU_V = 0.025;
const AIR_V = 0.07;

/**
 * Stretches in which the front sensor shows plain air: fuel cuts, whatever the data list says of throttle and loop.
 * Each fills the converter, so that the way there and back measures its storage. Remembered for each channel.
 */
export const airPulls = remember((front: Channel): Stretch[] => {
  const isLean = front.role === 'upstreamLambda' ? (value: number) => value > 1 : (value: number) => value < SWITCH_V;
  const usualS = median(stretchesOf(front, isLean).map(({ startS, endS }) => endS - startS));
  const leastS = Math.max(LEAST_S, Number.isFinite(usualS) ? USUAL_TIMES * usualS : 0);
  const isAir = front.role === 'upstreamLambda' ? (value: number) => value > AIR_LAMBDA : airVoltage(front);
  return stretchesOf(front, isAir).filter(({ startS, endS }) => endS - startS >= leastS);
});

/** Stretches from first to last sample for which something holds; short holes belong to them, missing values are passed over. */
function stretchesOf({ time, values }: Channel, holds: (value: number) => boolean): Stretch[] {
  const found: Stretch[] = [];
  let startS = Number.NaN;
  let lastS = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? Number.NaN;
    if (!Number.isFinite(value)) continue;
    const timeS = timeAt(time, i);
    const held = holds(value);
    if (!held && timeS - lastS <= LONGEST_HOLE_S) continue;
    if (!held || Number.isNaN(startS)) {
      if (!Number.isNaN(startS)) found.push({ startS, endS: lastS });
      startS = held ? timeS : Number.NaN;
    }
    if (held) lastS = timeS;
  }
  if (!Number.isNaN(startS)) found.push({ startS, endS: lastS });
  return found;
}

function airVoltage(front: Channel): (volts: number) => boolean {
  const limitV = Math.min(AIR_V, plateausOf(front).leanV - BELOW_PLATEAU_V);
  return (volts) => volts <= limitV;
}
