import { noiseLevel } from '../signal/noiseLevel.ts';
import { pathLengthWithPlay } from '../signal/pathLength.ts';
import { remember } from '../signal/remember.ts';
import type { SampleIndex, Volts } from '../units/quantities.ts';
import type { SensorSeries } from './measure.ts';

/** Reversals of up to this are taken for noise where the noise itself cannot be read off. */
const MOST_PLAY_V: Volts = 0.04;

/** Reversals a sensor's path leaves out: four deviations of its noise or two of its steps, whichever is more, 0.04 V at most. */
const playOf = remember(({ channel, series }: SensorSeries): Volts => {
  const play = Math.max(2 * channel.facts.resolution, 4 * noiseLevel(series.values));
  return Math.min(MOST_PLAY_V, play);
});

/** Length of a sensor's path in volts over its window, reversals of noise and single steps of the instrument left out. */
export const pathOf = remember(
  (sensor: SensorSeries): Volts => pathLengthWithPlay(sensor.series.values, playOf(sensor)),
);

/** The same from one sample up to another, the latter excluded. */
export function pathBetween(sensor: SensorSeries, first: SampleIndex, end: SampleIndex): Volts {
  return pathLengthWithPlay(sensor.series.values.subarray(first, end), playOf(sensor));
}
