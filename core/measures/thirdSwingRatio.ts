import { findChannel } from '../capture/capture.ts';
import { seriesOf } from '../capture/series.ts';
import type { Measure } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { LEAST_SAMPLES, rearVoltage } from './sensors.ts';
import { slowAndFast, swingOf } from './slowAndFast.ts';

/** A rear sensor that moves less than this sends no waves on to a second brick. */
const LEAST_REAR_V = 0.15;

/**
 * Fast swing of a third sensor, behind a second brick, over that of the rear one. What the first brick lets through is
 * what the second is tested with; a calm rear sensor leaves it untested.
 */
export const thirdSwingRatio: Measure = {
  id: 'thirdSwingRatio',
  words: 'Fast swing, third over rear',
  unit: '1',
  digits: 2,
  needs: 'A third sensor behind a second brick, and a rear sensor that swings.',
  help: 'Tells of the second brick, where the first lets waves through.',
  compute(data) {
    const channel = findChannel(data.capture, 'downstreamO2', data.bank, 3);
    if (channel?.sensor !== 3) return missing(this.id, 'No third sensor was recorded.');
    const { sensor, why } = rearVoltage(data);
    if (!sensor) return missing(this.id, why);
    const third = { channel, series: seriesOf(channel, data.window.startS, data.window.endS) };
    if (third.series.values.length < LEAST_SAMPLES)
      return missing(this.id, 'Too few values of the third sensor lie in this window.');
    const rear = swingOf(slowAndFast(sensor).fast);
    if (rear < LEAST_REAR_V) return missing(this.id, 'The rear sensor is too calm to test a second brick with.');
    return measured(this.id, swingOf(slowAndFast(third).fast) / rear);
  },
};
