import { clopperPearson } from '../statistics/exactIntervals.ts';
import { deadGain } from './deadGain.ts';
import type { Measure, SensorSeries } from './measure.ts';
import { measured, missing } from './measureValue.ts';
import { bothVoltages, rangeOf, renewalRate } from './sensors.ts';
import { swingOf } from './slowAndFast.ts';
import { switchesOf, switchRate, whyNotCountable } from './switching.ts';

const LEAST_PER_CYCLE = 4;
const LEAST_CYCLES = 5;
/** A wave has come through if at least this share of what would come through with no converter arrives. */
const HALF = 0.5;

/**
 * Share of front cycles that break through to the rear: over each whole front cycle the rear sensor must move by at
 * least half of what it would with no converter at this frequency. A whole cycle is looked at, so the lag need not be
 * known. Interval after Clopper and Pearson (check 6.10).
 */
export const breakthroughShare: Measure = {
  id: 'breakthroughShare',
  words: 'Front cycles that break through',
  unit: '1',
  digits: 2,
  needs: 'Both sensors as voltages, fast enough to count, four rear values a cycle, five cycles.',
  help: 'Near 0: the converter takes every wave. Near 1: none. In between it stores a little, or rests near full or empty.',
  compute(data) {
    const both = bothVoltages(data);
    if (both.why !== null) return missing(this.id, both.why);
    const not = whyNotCountable(both.front, data);
    if (not) return missing(this.id, not);
    const rate = switchRate(both.front);
    if (rate > 0 && renewalRate(both.rear.channel) < LEAST_PER_CYCLE * rate)
      return missing(this.id, 'The rear sensor brings too few values a front cycle.');
    const limit = HALF * deadGain(data) * swingOf(rangeOf(both.front));
    const { through, cycles } = countThrough(both.front, both.rear, limit);
    if (cycles < LEAST_CYCLES) return missing(this.id, `Only ${cycles} whole front cycles lie in this window.`);
    return measured(this.id, through / cycles, clopperPearson(through, cycles));
  },
};

function countThrough(front: SensorSeries, rear: SensorSeries, limit: number): { through: number; cycles: number } {
  const starts = switchesOf(front).filter(({ rising }) => rising);
  const { timesS, values } = rear.series;
  let through = 0;
  let i = 0;
  for (let k = 0; k + 1 < starts.length; k++) {
    const endS = starts[k + 1]?.timeS ?? 0;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    while (i < timesS.length && (timesS[i] ?? 0) < (starts[k]?.timeS ?? 0)) i++;
    for (; i < timesS.length && (timesS[i] ?? 0) < endS; i++) {
      const value = values[i] ?? 0;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (high - low >= limit) through++;
  }
  return { through, cycles: Math.max(0, starts.length - 1) };
}
