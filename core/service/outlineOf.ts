import type { CaptureOutline, ChannelSummary } from '../bridge/coreMessages.ts';
import type { Channel } from '../capture/channel.ts';
import { sampleCount } from '../capture/timeBase.ts';
import type { HeldCapture } from './heldCaptures.ts';

/** What the window is told of a held capture: everything but the samples. */
export function outlineOf({ key, capture }: HeldCapture): CaptureOutline {
  return { ...capture, key, channels: capture.channels.map(withoutSamples) };
}

function withoutSamples({ values: _values, time, ...rest }: Channel): ChannelSummary {
  return { ...rest, samples: sampleCount(time) };
}
