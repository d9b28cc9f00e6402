import type { Interval } from '../statistics/exactIntervals.ts';
import type { MeasureValue } from './measure.ts';

/** A measure that has a number. A number that is not finite is a broken promise and becomes a missing value. */
export function measured(id: string, value: number, interval: Interval | null = null): MeasureValue {
  if (!Number.isFinite(value)) return missing(id, 'The values in this window do not give a number.');
  if (!interval) return { id, value, interval: null, missing: null };
  const [low, high] = interval;
  const usable = Number.isFinite(low) && Number.isFinite(high);
  return { id, value, interval: usable ? [Math.min(low, value), Math.max(high, value)] : null, missing: null };
}

/** A measure that the data cannot support, with the reason as a sentence. */
export function missing(id: string, why: string): MeasureValue {
  return { id, value: null, interval: null, missing: why };
}
