import { type Capture, findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
import { seriesOf } from '../capture/series.ts';
import type { CaptureWindow } from '../windows/window.ts';
import type { SensorSeries, WindowData } from './measure.ts';

/**
 * Cuts a window out of a capture for one bank. A sensor that was not recorded is null; one that has no sample in the
 * window has an empty series. Of several front channels the switching voltage goes before lambda; of several rear ones
 * sensor 2 goes before a third behind a second brick.
 */
export function cutWindow(capture: Capture, window: CaptureWindow, bank: Bank): WindowData {
  const cut = (channel: Channel | null): SensorSeries | null =>
    channel ? { channel, series: seriesOf(channel, window.startS, window.endS) } : null;
  return {
    capture,
    window,
    bank,
    upstream: cut(frontChannel(capture, bank)),
    downstream: cut(rearChannel(capture, bank)),
  };
}

/** The front sensor's channel of a bank, or null. */
export function frontChannel(capture: Capture, bank: Bank): Channel | null {
  return findChannel(capture, 'upstreamO2', bank) ?? findChannel(capture, 'upstreamLambda', bank);
}

/** The channel of the sensor behind the converter of a bank, or null. */
export function rearChannel(capture: Capture, bank: Bank): Channel | null {
  return findChannel(capture, 'downstreamO2', bank, 2) ?? findChannel(capture, 'downstreamO2', bank);
}
