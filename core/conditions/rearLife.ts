import type { Channel } from '../capture/channel.ts';
import { seriesOf } from '../capture/series.ts';
import { timeEdges } from '../signal/edges.ts';
import { remember } from '../signal/remember.ts';
import { robustRange } from '../statistics/quantile.ts';
import type { Seconds, Volts } from '../units/quantities.ts';

/** What a rear sensor has shown of itself over a whole capture. */
export interface RearLife {
  readonly lowV: Volts;
  readonly highV: Volts;
  /** Moves of at least 0.3 V within 3 s. */
  readonly answers: number;
  /** The first of them. */
  readonly firstS: Seconds | null;
  /** Quickest edge between 0.3 and 0.6 V, either way; null where none could be timed. */
  readonly quickestS: Seconds | null;
}

const ANSWER_V = 0.3;
const ANSWER_S = 3;

/**
 * Signs of life of a rear sensor over its whole capture. A move of 0.3 V within 3 s is more than wander or noise, and
 * is what a fuel cut, a snap or a converter that lets waves through brings about. Two samples must agree at the far
 * end, so that a single drop-out is no life.
 */
export const rearLife = remember((channel: Channel): RearLife => {
  const series = seriesOf(channel, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const { timesS, values } = series;
  const range = robustRange(values, 0.002);
  const answers: Seconds[] = [];
  let i = 0;
  for (let k = 1; k < values.length; k++) {
    const now = timesS[k] ?? 0;
    while ((timesS[i] ?? 0) < now - ANSWER_S || i >= k) {
      if (i >= k) break;
      i++;
    }
    const here = Math.min(values[k] ?? 0, values[k - 1] ?? 0);
    const there = Math.max(values[k] ?? 0, values[k - 1] ?? 0);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let j = i; j < k - 1; j += Math.max(1, Math.floor((k - i) / 32))) {
      const value = values[j] ?? 0;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (here - low >= ANSWER_V || high - there >= ANSWER_V) {
      answers.push(now);
      i = k;
      k++;
    }
  }
  const { edges } = timeEdges(series, { low: 0.3, high: 0.6 });
  return {
    lowV: range.low,
    highV: range.high,
    answers: answers.length,
    firstS: answers[0] ?? null,
    quickestS: edges.length > 0 ? Math.min(...edges.map(({ durationS }) => durationS)) : null,
  };
});
