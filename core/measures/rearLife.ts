import type { Channel } from '../capture/channel.ts';
import { seriesOf, valuesWhere } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import { median, robustRange } from '../statistics/quantile.ts';
import type { Hertz, Seconds, Volts } from '../units/quantities.ts';
import { renewalRate } from './sensors.ts';

/** What a rear sensor has shown of itself over a whole capture. */
export interface RearLife {
  readonly lowV: Volts;
  readonly highV: Volts;
  /** Its lag is at most this, by the quickest move it made; Infinity where it made none. */
  readonly lagAtMostS: Seconds;
  /** When it made that move, and by how much. */
  readonly atS: Seconds | null;
  readonly moveV: Volts;
}

/** A sensor's whole swing: no move can be larger. */
const WHOLE_SWING_V: Volts = 0.95;
/** Smaller moves may be noise or a single step of the instrument. */
const LEAST_MOVE_V: Volts = 0.15;
const LONGEST_S: Seconds = 1.2;
/** As a capture begins instruments show what they had, and sensors what they wake up from. */
const FROM_S: Seconds = 2;
const MOST_HZ: Hertz = 25;

/**
 * Signs of life of a rear sensor over its whole capture. A first-order lag of time t that heads for the far end of a
 * swing of 0.95 V moves by no more than 0.95 (1 - exp(-L/t)) in a time L; so every move seen bounds the lag from above,
 * t <= -L / ln(1 - move / 0.95), and the quickest move bounds it best. Spikes are taken out by medians of three, and the
 * time of a move is at least what the instrument needs to renew a value.
 */
export const rearLife = remember((channel: Channel): RearLife => {
  const whole = seriesOf(channel, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const range = robustRange(valuesWhere(channel, Number.isFinite), 0.002);
  const rate = renewalRate(channel);
  const started = whole.timesS.findIndex((timeS) => timeS >= FROM_S);
  const from = started < 0 ? whole.timesS.length : started;
  const { timesS, values } = calmed(whole.timesS.subarray(from), whole.values.subarray(from), rate);
  const shortestS = rate > 0 ? 1 / rate : 0;
  let best = { lagAtMostS: Number.POSITIVE_INFINITY, atS: null as Seconds | null, moveV: 0 };
  for (let i = 0; i < values.length; i++) {
    for (let j = i + 1; j < values.length; j++) {
      const tookS = Math.max((timesS[j] ?? 0) - (timesS[i] ?? 0), shortestS);
      if (tookS > LONGEST_S && j > i + 1) break;
      const moveV = Math.abs((values[j] ?? 0) - (values[i] ?? 0));
      if (moveV < LEAST_MOVE_V) continue;
      const lagAtMostS = -tookS / Math.log(1 - Math.min(0.999, moveV / WHOLE_SWING_V));
      if (lagAtMostS < best.lagAtMostS) best = { lagAtMostS, atS: timesS[j] ?? 0, moveV };
    }
  }
  return { lowV: range.low, highV: range.high, ...best };
});

/** At most 25 values a second, each the median of what it stands for, or of itself and its neighbours. */
function calmed(timesS: Float64Array, values: Float64Array, rate: Hertz): { timesS: number[]; values: number[] } {
  const group = Math.max(1, Math.round(rate / MOST_HZ));
  const calm: { timesS: number[]; values: number[] } = { timesS: [], values: [] };
  if (group > 1) {
    for (let i = 0; i + group <= values.length; i += group) {
      calm.timesS.push(timesS[i + (group >> 1)] ?? 0);
      calm.values.push(median(values.subarray(i, i + group)));
    }
    return calm;
  }
  // Slow instruments see a move in one step: a median of three would take it for a spike.
  const spikes = rate > 5;
  for (let i = 0; i < values.length; i++) {
    const here = values[i] ?? 0;
    const before = values[i - 1] ?? here;
    const after = values[i + 1] ?? here;
    calm.timesS.push(timesS[i] ?? 0);
    calm.values.push(spikes ? Math.max(Math.min(before, here), Math.min(Math.max(before, here), after)) : here);
  }
  return calm;
}
