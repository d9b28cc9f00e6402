import type { Channel } from '../../capture/channel.ts';
import { firstAtOrAfter, timeAt } from '../../capture/timeBase.ts';
import type { CursorValue } from '../../capture/traceView.ts';
import type { SampleIndex, Seconds } from '../../units/quantities.ts';
import { answered, noSuchChannel, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** What each channel read at a moment: its last value at or before it, with the time of that sample. */
export const valuesAt: Answer<'valuesAt'> = ({ key, channelIds, timeS }, { held }) => {
  const capture = held.find(key);
  if (capture === null) return notOpen();
  const values: CursorValue[] = [];
  for (const id of channelIds) {
    const channel = capture.channel(id);
    if (channel === null) return noSuchChannel(capture.capture.name);
    values.push(cursorValue(channel, timeS));
  }
  return answered(values);
};

function cursorValue(channel: Channel, timeS: Seconds): CursorValue {
  const index = lastValue(channel, lastAtOrBefore(channel, timeS));
  if (index === null) return { channelId: channel.id, sampleS: null, value: null };
  return { channelId: channel.id, sampleS: timeAt(channel.time, index), value: channel.values[index] ?? null };
}

/** Index of the last sample at or before a moment; -1 where every sample comes later. */
function lastAtOrBefore(channel: Channel, timeS: Seconds): SampleIndex {
  const next = firstAtOrAfter(channel.time, timeS);
  // Samples may share a time: the last of them counts.
  let last = next - 1;
  while (timeAt(channel.time, last + 1) === timeS) last++;
  return last;
}

/** The sample itself, or the nearest before it that has a value: an empty cell of the file is no sample. */
function lastValue(channel: Channel, from: SampleIndex): SampleIndex | null {
  if (channel.facts.finite === 0) return null;
  for (let i = from; i >= 0; i--) if (Number.isFinite(channel.values[i])) return i;
  return null;
}
