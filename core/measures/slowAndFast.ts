import { remember } from '../signal/remember.ts';
import { slidingMean } from '../signal/slidingMean.ts';
import { type RobustRange, robustRange } from '../statistics/quantile.ts';
import type { Seconds } from '../units/quantities.ts';
import type { SensorSeries } from './measure.ts';

/**
 * Span over which the slow part is averaged. Longer than two periods of the slowest closed-loop switching that is met
 * at raised speed (about 0.5 Hz), shorter than the wander of trims (from memory, order of magnitude).
 */
export const SLOW_SPAN_S: Seconds = 5;

/** A trace taken apart: how far its slow and its fast part swing, each without the outermost 5 % at either end. */
export interface SlowAndFast {
  readonly slow: RobustRange;
  readonly fast: RobustRange;
  /** One value a sample: the sliding mean, and what is left without it. */
  readonly slowValues: Float64Array;
  readonly fastValues: Float64Array;
}

/** Slow and fast part of a sensor's trace in its window. */
export const slowAndFast = remember(({ series }: SensorSeries): SlowAndFast => {
  const slowValues = slidingMean(series, SLOW_SPAN_S);
  const fastValues = series.values.map((value, i) => value - (slowValues[i] ?? value));
  return { slow: robustRange(slowValues), fast: robustRange(fastValues), slowValues, fastValues };
});

/** Height of a range. */
export function swingOf({ low, high }: RobustRange): number {
  return high - low;
}
