import { noiseLevel } from '../signal/noiseLevel.ts';
import { pathLengthWithPlay } from '../signal/pathLength.ts';
import { remember } from '../signal/remember.ts';
import { LEAST_FRONT_SWING_V } from './amplitudeRatio.ts';
import type { Measure, SensorSeries } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { frontVoltage, rangeOf, rearVoltage, renewalRate } from './sensors.ts';

/** Reversals of up to this are taken for noise where the noise itself cannot be read off. */
const MOST_PLAY_V = 0.04;

/**
 * Length of a sensor's path in volts, reversals of noise and single steps of the instrument left out: the play is four
 * deviations of the noise or two steps, whichever is more, and 0.04 V at most.
 */
export const pathOf = remember(({ channel, series }: SensorSeries): number => {
  const play = Math.max(2 * channel.facts.resolution, 4 * noiseLevel(series.values));
  return pathLengthWithPlay(series.values, Math.min(MOST_PLAY_V, play));
});

/** Length of the rear trace over length of the front one, in volts only: time is no part of it (checks 3.03, 3.41). */
export const pathRatio: Measure = {
  id: 'pathRatio',
  words: 'Path, rear over front',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, recorded at about the same rate.',
  help: 'How far the rear trace travels up and down compared with the front one. About 0.2 is printed for good converters, near 1 for none.',
  compute(data) {
    const front = frontVoltage(data);
    const rear = rearVoltage(data);
    if (!front.sensor) return missing(this.id, front.why);
    if (!rear.sensor) return missing(this.id, rear.why);
    const range = rangeOf(front.sensor);
    if (range.high - range.low < LEAST_FRONT_SWING_V)
      return missing(this.id, 'The front sensor does not swing in this window.');
    const rates = renewalRate(front.sensor.channel) / renewalRate(rear.sensor.channel);
    if (rates > 2.5 || rates < 0.4)
      return missing(
        this.id,
        'The two sensors were recorded at too different rates to compare the lengths of their traces.',
      );
    return measured(this.id, pathOf(rear.sensor) / pathOf(front.sensor));
  },
};
