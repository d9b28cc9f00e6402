import { findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import type { WindowData } from '../measures/measure.ts';
import { frontChannel, rearChannel } from '../measures/windowData.ts';
import { remember } from '../signal/remember.ts';
import { median } from '../statistics/quantile.ts';
import type { Percent, Volts } from '../units/quantities.ts';
import { quietIdle } from '../windows/quietIdle.ts';

/** What the sensors and trims of a bank read while the engine idles quietly; null where that was not recorded. */
export interface IdleLevels {
  readonly frontV: Volts | null;
  readonly rearV: Volts | null;
  /** Sum of both trims; null unless both of those that the capture has were recorded. */
  readonly trims: Percent | null;
}

/** Values below which a middle is not worth comparing. */
const LEAST_VALUES = 5;

/** Levels at quiet idle anywhere in the window's capture. */
export const idleLevels = remember(({ capture, bank }: WindowData): IdleLevels => {
  const idles = quietIdle(capture);
  const middle = (channel: Channel | null): number | null => {
    if (!channel) return null;
    const values = idles.flatMap(({ startS, endS }) => Array.from(seriesOf(channel, startS, endS).values));
    return values.length >= LEAST_VALUES ? median(values) : null;
  };
  const front = frontChannel(capture, bank);
  const trims = (['stft', 'ltft'] as const)
    .map((role) => findChannel(capture, role, bank) ?? findChannel(capture, role, null))
    .filter((channel) => channel !== null)
    .map(middle);
  return {
    frontV: front?.role === 'upstreamO2' ? middle(front) : null,
    rearV: middle(rearChannel(capture, bank)),
    trims: trims.length === 0 || trims.includes(null) ? null : trims.reduce<number>((sum, one) => sum + (one ?? 0), 0),
  };
});
