import { type Capture, findChannel } from '../capture/capture.ts';
import type { Channel } from '../capture/channel.ts';
import type { Bank } from '../capture/roles.ts';
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
  /** Of the idle in which the rear sensor read highest. */
  readonly rearHighestV: Volts | null;
  /** Sum of both trims; null unless both of those that the capture has were recorded. */
  readonly trims: Percent | null;
}

/** Values below which a middle is not worth comparing. */
const LEAST_VALUES = 5;

const levelsOf = remember((_: Capture) => new Map<Bank, IdleLevels>());

/** Levels at quiet idle anywhere in the window's capture; worked out once for each bank of a capture. */
export function idleLevels({ capture, bank }: WindowData): IdleLevels {
  const known = levelsOf(capture).get(bank);
  if (known) return known;
  const levels = readLevels(capture, bank);
  levelsOf(capture).set(bank, levels);
  return levels;
}

function readLevels(capture: Capture, bank: Bank): IdleLevels {
  const front = frontChannel(capture, bank);
  const rear = rearChannel(capture, bank);
  const trims = (['stft', 'ltft'] as const)
    .map((role) => findChannel(capture, role, bank) ?? findChannel(capture, role, null))
    .filter((channel) => channel !== null)
    .map((channel) => middleAtIdle(capture, channel));
  return {
    frontV: front?.role === 'upstreamO2' ? middleAtIdle(capture, front) : null,
    rearV: middleAtIdle(capture, rear),
    rearHighestV: highestAtIdle(capture, rear),
    trims: trims.length === 0 || trims.includes(null) ? null : trims.reduce<number>((sum, one) => sum + (one ?? 0), 0),
  };
}

function highestAtIdle(capture: Capture, channel: Channel | null): number | null {
  const middles = valuesAtIdle(capture, channel)
    .filter((values) => values.length >= LEAST_VALUES)
    .map(median);
  return middles.length > 0 ? Math.max(...middles) : null;
}

function middleAtIdle(capture: Capture, channel: Channel | null): number | null {
  const parts = valuesAtIdle(capture, channel);
  const values = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    values.set(part, at);
    at += part.length;
  }
  return values.length >= LEAST_VALUES ? median(values) : null;
}

/** The values of a channel in each quiet idle. */
function valuesAtIdle(capture: Capture, channel: Channel | null): Float64Array[] {
  if (!channel) return [];
  return quietIdle(capture).map(({ startS, endS }) => seriesOf(channel, startS, endS).values);
}
