import type { Channel } from '../capture/channel.ts';
import { remember } from '../signal/remember.ts';
import { type RobustRange, robustRange } from '../statistics/quantile.ts';
import type { Hertz, Seconds, Share, Volts } from '../units/quantities.ts';
import type { SensorSeries, WindowData } from './measure.ts';

/** Samples below which a distribution says nothing. */
export const LEAST_SAMPLES = 12;

/** A sensor that can be measured, or the sentence that says why it cannot. */
export type Usable =
  | { readonly sensor: SensorSeries; readonly why: null }
  | { readonly sensor: null; readonly why: string };

/** The front sensor as a switching one: its voltage. A wideband front sensor is refused with the reason. */
export function frontVoltage(data: WindowData): Usable {
  const front = data.upstream;
  if (!front) return refuse('The front oxygen sensor was not recorded.');
  if (front.channel.role === 'upstreamLambda')
    return refuse('The front sensor is a wideband one: it reports lambda and has no switching voltage.');
  return withSamples(front, 'front');
}

/** The rear sensor. */
export function rearVoltage(data: WindowData): Usable {
  return data.downstream ? withSamples(data.downstream, 'rear') : refuse('The rear oxygen sensor was not recorded.');
}

function withSamples(sensor: SensorSeries, which: 'front' | 'rear'): Usable {
  const count = sensor.series.values.length;
  if (count >= LEAST_SAMPLES) return { sensor, why: null };
  return refuse(`Only ${count} values of the ${which} sensor lie in this window; ${LEAST_SAMPLES} are needed.`);
}

function refuse(why: string): Usable {
  return { sensor: null, why };
}

/** Both sensors as voltages, or why not. A front sensor that hardly moves has no swing to compare with. */
export type BothVoltages =
  | { readonly front: SensorSeries; readonly rear: SensorSeries; readonly why: null }
  | { readonly why: string };

/** A front sensor that moves less than this has no swing to compare with. */
const LEAST_FRONT_SWING_V: Volts = 0.1;

/** Front and rear sensor, ready to be compared. */
export function bothVoltages(data: WindowData): BothVoltages {
  const front = frontVoltage(data);
  if (!front.sensor) return { why: front.why };
  const rear = rearVoltage(data);
  if (!rear.sensor) return { why: rear.why };
  const { low, high } = rangeOf(front.sensor);
  if (high - low < LEAST_FRONT_SWING_V) return { why: 'The front sensor does not swing in this window.' };
  return { front: front.sensor, rear: rear.sensor, why: null };
}

/** Share of a sensor's values above the switch point of 0.45 V (check 4.10). */
export function richShare({ series }: SensorSeries): Share {
  let rich = 0;
  for (const value of series.values) if (value > 0.45) rich++;
  return rich / series.values.length;
}

/** How often a channel brings a new value: repeated values are not counted as samples. */
export function renewalRate(channel: Channel): Hertz {
  return channel.facts.renewalRateHz > 0 ? channel.facts.renewalRateHz : channel.facts.medianRateHz;
}

/** Time between two new values of a channel: no moment in it is known better. At most 10 s, also where it never changes. */
export function renewalStep(channel: Channel): Seconds {
  return 1 / Math.max(0.1, renewalRate(channel));
}

/** Range of a sensor's values in the window without the outermost 5 %. */
export const rangeOf = remember((sensor: SensorSeries): RobustRange => robustRange(sensor.series.values));
