import type { CaptureWarning } from '../../capture/warnings.ts';

/** A time that comes more usual ticks of the clock later than this lies behind a silence (our choice). */
const TICKS_OF_SILENCE = 3;
/** So many runs of equal times tell the usual tick. */
const RUNS_LOOKED_AT = 4096;

/**
 * Spreads rows that carry the same time evenly up to the next time, as an instrument with a coarse clock leaves them:
 * ten rows stamped 12:00:01 were taken a tenth of a second apart. `timesS` is ascending and is changed. The last run and
 * pairs, before which rows may be missing, are spread with the step of the run before them; rows before a silence over
 * the usual tick of the clock. With `asWritten` they are only counted, and keep their times.
 */
export function spreadEqualTimes(
  timesS: Float64Array,
  rowOf: (index: number) => number | null,
  asWritten: boolean,
): CaptureWarning | null {
  let usual: number | null = null;
  let equal = 0;
  let first = -1;
  let step = 0;
  for (let i = 0; i < timesS.length; ) {
    const value = timesS[i] ?? 0;
    let end = i + 1;
    while (end < timesS.length && timesS[end] === value) end++;
    const run = end - i;
    if (run > 1) {
      usual ??= usualTick(timesS, i);
      const next = timesS[end];
      if (next !== undefined) {
        const tick = next - value > TICKS_OF_SILENCE * usual ? usual : next - value;
        step = Math.min(tick / run, step > 0 && run < 3 ? step : Number.POSITIVE_INFINITY);
      } else if (step === 0) step = 1 / run;
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

/** Median time from a run of equal times, from row `first` on, to the next time; infinite where no time follows. */
function usualTick(timesS: Float64Array, first: number): number {
  const ticks: number[] = [];
  for (let i = first; i < timesS.length && ticks.length < RUNS_LOOKED_AT; ) {
    let end = i + 1;
    while (end < timesS.length && timesS[end] === timesS[i]) end++;
    const next = timesS[end];
    if (end - i > 1 && next !== undefined) ticks.push(next - (timesS[i] ?? 0));
    i = end;
  }
  ticks.sort((a, b) => a - b);
  return ticks[ticks.length >> 1] ?? Number.POSITIVE_INFINITY;
}
