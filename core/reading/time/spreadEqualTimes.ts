import type { CaptureWarning } from '../../capture/warnings.ts';

/**
 * Spreads rows that carry the same time evenly up to the next time, as an instrument with a coarse clock leaves them:
 * ten rows stamped 12:00:01 were taken a tenth of a second apart. `timesS` is ascending and is changed. The last run and
 * pairs, before which rows may be missing, are spread with the step of the run before them. With `asWritten` they are
 * only counted, and keep their times.
 */
export function spreadEqualTimes(
  timesS: Float64Array,
  rowOf: (index: number) => number | null,
  asWritten: boolean,
): CaptureWarning | null {
  let equal = 0;
  let first = -1;
  let step = 0;
  for (let i = 0; i < timesS.length; ) {
    const value = timesS[i] ?? 0;
    let end = i + 1;
    while (end < timesS.length && timesS[end] === value) end++;
    const run = end - i;
    if (run > 1) {
      const next = timesS[end];
      if (next !== undefined)
        step = Math.min((next - value) / run, step > 0 && run < 3 ? step : Number.POSITIVE_INFINITY);
      else if (step === 0) step = 1 / run;
      if (!asWritten) for (let k = 1; k < run; k++) timesS[i + k] = value + k * step;
      equal += run - 1;
      if (first < 0) first = i + 1;
    } else if (end < timesS.length) step = (timesS[end] ?? 0) - value;
    i = end;
  }
  if (equal === 0) return null;
  const follows = asWritten
    ? 'such rows keep it, so several values stand at one moment'
    : 'such rows were spread evenly up to the next time';
  return {
    id: 'duplicateTimes',
    detail: `${equal} ${equal === 1 ? 'row has' : 'rows have'} the time of the row before; ${follows}.`,
    row: rowOf(first),
    count: equal,
    repaired: !asWritten,
  };
}
