import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import type { Seconds } from '../units/quantities.ts';
import type { Stretch } from '../windows/window.ts';
import { plateausOf } from './swing.ts';

/** Shorter than this a front sensor that shows air may be a misfire or a drop-out. */
const LEAST_S: Seconds = 0.5;
const LONGEST_HOLE_S = 0.4;
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
  const { timesS, values } = seriesOf(front, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const isAir = front.role === 'upstreamLambda' ? (value: number) => value > AIR_LAMBDA : airVoltage(front);
  const pulls: Stretch[] = [];
  let startS = Number.NaN;
  let lastS = Number.NaN;
  const close = () => {
    if (lastS - startS >= LEAST_S) pulls.push({ startS, endS: lastS });
    startS = Number.NaN;
  };
  for (let i = 0; i < timesS.length; i++) {
    const timeS = timesS[i] ?? 0;
    if (!isAir(values[i] ?? 0)) {
      if (timeS - lastS > LONGEST_HOLE_S) close();
      continue;
    }
    if (Number.isNaN(startS)) startS = timeS;
    lastS = timeS;
  }
  close();
  return pulls;
});

function airVoltage(front: Channel): (volts: number) => boolean {
  const limitV = Math.min(AIR_V, plateausOf(front).leanV - BELOW_PLATEAU_V);
  return (volts) => volts <= limitV;
}
