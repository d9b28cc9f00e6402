import type { Channel } from '../../capture/channel.ts';
import type { TraceView } from '../../capture/traceView.ts';
import { answered, noSuchChannel, notOpen } from '../serviceProblems.ts';
import type { Answer } from './answer.ts';

/** What is needed to draw channels over a stretch, in the order asked. */
export const views: Answer<'views'> = ({ key, channelIds, startS, endS, buckets }, { held }) => {
  const capture = held.find(key);
  if (capture === null) return notOpen();
  const channels: Channel[] = [];
  for (const id of channelIds) {
    const channel = capture.channel(id);
    if (channel === null) return noSuchChannel(capture.capture.name);
    channels.push(channel);
  }
  return answered(channels.map((channel) => tight(capture.drawer(channel)(startS, endS, buckets))));
};

/** A message carries the whole buffer behind an array, so an array that is a part of a larger one is copied out of it. */
function tight(view: TraceView): TraceView {
  return { ...view, timesS: own(view.timesS), low: own(view.low), high: own(view.high) };
}

function own<A extends Float64Array | Float32Array>(array: A): A;
function own(array: Float64Array | Float32Array): Float64Array | Float32Array {
  return array.byteLength === array.buffer.byteLength ? array : array.slice();
}
