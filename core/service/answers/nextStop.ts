import type { Channel } from '../../capture/channel.ts';
import { firstAtOrAfter, sampleCount, timeAt } from '../../capture/timeBase.ts';
import type { Seconds } from '../../units/quantities.ts';
import { nextSwitch } from '../nextSwitch.ts';
import { answered, noSuchChannel, notOpen } from '../serviceProblems.ts';
import { switchBandOf } from '../switchBand.ts';
import type { Answer } from './answer.ts';

/** Where the cursor goes from here: the next sample of a channel, or its next switch. */
export const nextStop: Answer<'nextStop'> = ({ key, channelId, fromS, direction, stop }, { held }) => {
  const capture = held.find(key);
  if (capture === null) return notOpen();
  const channel = capture.channel(channelId);
  if (channel === null) return noSuchChannel(capture.capture.name);
  if (stop === 'sample') return answered(nextSample(channel, fromS, direction));
  const band = switchBandOf(channel);
  return answered(band === null ? null : nextSwitch(channel, band, fromS, direction));
};

/** Time of the nearest sample with a value strictly beyond `fromS`, or null. */
function nextSample({ time, values }: Channel, fromS: Seconds, direction: 1 | -1): Seconds | null {
  const next = firstAtOrAfter(time, fromS);
  const length = sampleCount(time);
  for (let i = direction === 1 ? next : next - 1; i >= 0 && i < length; i += direction) {
    if (Number.isFinite(values[i]) && timeAt(time, i) !== fromS) return timeAt(time, i);
  }
  return null;
}
