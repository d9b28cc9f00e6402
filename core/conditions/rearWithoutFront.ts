import type { WindowData } from '../measures/measure.ts';
import { frontVoltage, rearVoltage, renewalRate } from '../measures/sensors.ts';
import { SLOW_SPAN_S } from '../measures/slowAndFast.ts';
import { spanOf } from '../measures/switching.ts';
import { correlationAt } from '../signal/crossCorrelation.ts';
import { slidingMean } from '../signal/slidingMean.ts';
import { readOffEvenly } from '../signal/valueAt.ts';
import type { Seconds } from '../units/quantities.ts';

/** Longest way from front to rear that is looked at, through gas and sensor. */
const LONGEST_S: Seconds = 1.5;
/** Slower instruments bring samples of the two sensors too far apart to say that they are not alike. */
const LEAST_HZ = 5;
const MOST_HZ = 25;

/**
 * How much of the rear sensor's fast movement follows the front one's: the largest correlation over all delays up to
 * 1.5 s. Near 0 means that the rear moves for a reason of its own: air from a leak, misfire, wiring. Null where the
 * instrument is too slow to tell or a trace is missing.
 */
export function followsFront(data: WindowData): number | null {
  const front = frontVoltage(data).sensor;
  const rear = rearVoltage(data).sensor;
  if (!front || !rear) return null;
  const rate = Math.min(renewalRate(front.channel), renewalRate(rear.channel), MOST_HZ);
  if (rate < LEAST_HZ) return null;
  const stepS = 1 / rate;
  const startS = Math.max(front.series.timesS[0] ?? 0, rear.series.timesS[0] ?? 0);
  const count = Math.floor((Math.min(spanOf(front), spanOf(rear)) - stepS) / stepS);
  if (count < 40) return null;
  const [ahead, behind] = [front, rear].map(({ series }) => {
    const slow = slidingMean(series, SLOW_SPAN_S);
    const fast = series.values.map((value, i) => value - (slow[i] ?? value));
    return readOffEvenly({ timesS: series.timesS, values: fast }, startS, stepS, count).map((v) => v || 0);
  });
  let most = 0;
  for (let shift = 0; ahead && behind && shift * stepS <= LONGEST_S; shift++) {
    const alike = correlationAt(ahead, behind, shift);
    if (alike > most) most = alike;
  }
  return most;
}
