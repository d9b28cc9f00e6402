import type { AsWritten } from '../../capture/repairs.ts';
import type { TimeBase } from '../../capture/timeBase.ts';
import type { CaptureWarning } from '../../capture/warnings.ts';
import { mendTimes } from './mendTimes.ts';
import { secondsOfTimes, turnOf } from './secondsOfTimes.ts';
import { timeBaseOf } from './timeBaseOf.ts';
import type { TimePlan } from './timePlan.ts';
import type { StoredTimes } from './timeStore.ts';

/** Times of a file in seconds and in ascending order, not yet counted from the start of the capture. */
export interface PlacedTimes {
  /** First time; NaN where there is none, or where the file has no times. */
  readonly firstS: number;
  /** As MendedTimes.order. */
  readonly order: Uint32Array | null;
  readonly warnings: readonly CaptureWarning[];
  /** The base, counted from `zeroS`, which must not be larger than firstS. To be called once. */
  base(zeroS: number): TimeBase;
}

/**
 * Times as they were stored while reading, in seconds by the plan, with rows put in order, jumps joined and equal times
 * spread but for the repairs in `asWritten`; each repair, made or not, is a warning. `rowOf` gives the line of a row.
 */
export function placeTimes(
  stored: StoredTimes,
  plan: TimePlan,
  asWritten: AsWritten,
  rowOf: (row: number) => number | null,
): PlacedTimes {
  if (plan.kind === 'rate') {
    const length = stored.kind === 'regular' ? stored.length : stored.times.length;
    return regular(0, 1 / plan.rateHz, length, Number.NaN);
  }
  if (stored.kind === 'regular') {
    const [times, over] = plan.kind === 'number' ? [plan.times, plan.over] : [1, 1];
    const startS = (stored.start * times) / over;
    return regular(startS, (stored.step * times) / over, stored.length, startS);
  }
  const seconds = stored.times;
  secondsOfTimes(seconds, plan);
  const { timesS, order, warnings } = mendTimes(seconds, {
    clock: turnOf(plan, seconds),
    coarse: true,
    asWritten,
    rowOf,
  });
  return {
    firstS: timesS[0] ?? Number.NaN,
    order,
    warnings,
    base: (zeroS) => timeBaseOf(timesS, zeroS),
  };
}

function regular(startS: number, stepS: number, length: number, firstS: number): PlacedTimes {
  const base = (zeroS: number): TimeBase => {
    const own = roundStart(startS, Number.isNaN(firstS) ? 0 : zeroS);
    return { kind: 'regular', startS: own, stepS, length };
  };
  return { firstS, order: null, warnings: [], base };
}

/** A difference freed of the rounding that it leaves; see timeBaseOf. */
function roundStart(startS: number, zeroS: number): number {
  const ticks = Math.abs(zeroS) > 1e7 ? 1e6 : 1e9;
  return Math.round((startS - zeroS) * ticks) / ticks;
}
