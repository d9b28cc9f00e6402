import type { Series } from '../capture/series.ts';
import { remember } from '../signal/remember.ts';
import { slidingMean } from '../signal/slidingMean.ts';
import { thinned } from '../signal/thinned.ts';
import { type RobustRange, robustRange } from '../statistics/quantile.ts';
import type { Hertz, Seconds } from '../units/quantities.ts';
import type { SensorSeries } from './measure.ts';

/**
 * Span over which the slow part is averaged. Longer than two periods of the slowest closed-loop switching that is met
 * at raised speed (about 0.5 Hz), shorter than the wander of trims (from memory, order of magnitude).
 */
export const SLOW_SPAN_S: Seconds = 5;
/** The fuel control is far slower than this. */
const MOST_HZ: Hertz = 100;

/** A trace taken apart: how far its slow and its fast part swing, each without the outermost 5 % at either end. */
export interface SlowAndFast {
  readonly slow: RobustRange;
  readonly fast: RobustRange;
  /** Both parts over time, at 100 values a second at most: the sliding mean, and what is left without it. */
  readonly slowPart: Series;
  readonly fastPart: Series;
}

/** Slow and fast part of a sensor's trace in its window. */
export const slowAndFast = remember(({ series }: SensorSeries): SlowAndFast => {
  const thin = thinned(series, MOST_HZ);
  const slowPart = { timesS: thin.timesS, values: slidingMean(thin, SLOW_SPAN_S) };
  const fast = thin.values.map((value, i) => value - (slowPart.values[i] ?? value));
  const fastPart = { timesS: thin.timesS, values: fast };
  return { slow: robustRange(slowPart.values), fast: robustRange(fast), slowPart, fastPart };
});

/** Height of a range. */
export function swingOf({ low, high }: RobustRange): number {
  return high - low;
}
